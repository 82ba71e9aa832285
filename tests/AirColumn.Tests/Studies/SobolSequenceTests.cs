using System.Numerics;
using AirColumn.Studies;

namespace AirColumn.Tests.Studies;

public class SobolSequenceTests
{
    private const double Unit = 1.0 / (1UL << SobolSequence.Bits);

    // The output of the authors' program for ten points of three dimensions, on the page of their direction numbers (joe2008).
    [Fact]
    public void First_points_are_the_published_ones()
    {
        double[][] published =
        [
            [0, 0, 0],
            [0.5, 0.5, 0.5],
            [0.75, 0.25, 0.25],
            [0.25, 0.75, 0.75],
            [0.375, 0.375, 0.625],
            [0.875, 0.875, 0.125],
            [0.625, 0.125, 0.875],
            [0.125, 0.625, 0.375],
            [0.1875, 0.3125, 0.9375],
            [0.6875, 0.8125, 0.4375],
        ];
        Assert.All(
            published,
            (point, i) =>
                Assert.Equal(point, Enumerable.Range(0, 3).Select(d => SobolSequence.At(i, d) * Unit))
        );
    }

    // What makes it a sequence of Sobol': of the first 2^m points, each coordinate has one in each of 2^m equal intervals.
    [Fact]
    public void Every_coordinate_visits_every_interval_once()
    {
        const int M = 12;
        for (var dimension = 0; dimension < SobolSequence.Dimensions; dimension++)
        {
            var intervals = Enumerable
                .Range(0, 1 << M)
                .Select(i => (int)(SobolSequence.At(i, dimension) >> (SobolSequence.Bits - M)));
            Assert.Equal(Enumerable.Range(0, 1 << M), intervals.Order());
        }
    }

    // Property A of sobol1967, which these direction numbers were chosen to have: of the first 2^d points, each of the 2^d equal boxes of d
    // dimensions has one.
    [Theory]
    [InlineData(4)]
    [InlineData(8)]
    [InlineData(14)]
    public void Every_box_has_a_point(int dimensions)
    {
        var boxes = Enumerable
            .Range(0, 1 << dimensions)
            .Select(i =>
                Enumerable
                    .Range(0, dimensions)
                    .Aggregate(
                        0,
                        (box, d) => 2 * box + (int)(SobolSequence.At(i, d) >> (SobolSequence.Bits - 1))
                    )
            );
        Assert.Equal(1 << dimensions, boxes.Distinct().Count());
    }

    // The same for all dimensions, where the points are too many to count: their first digits are a linear map, of full rank.
    [Fact]
    public void No_box_of_all_dimensions_has_two()
    {
        const int D = SobolSequence.Dimensions;
        // Of the point 2^i + 2^(i-1) + …, whose Gray code is a single digit: the first digits of its coordinates.
        var columns = Enumerable
            .Range(0, D)
            .Select(i => (Index: i, Point: Inverse(1L << i)))
            .Select(one =>
                Enumerable
                    .Range(0, D)
                    .Aggregate(
                        0UL,
                        (bits, d) => bits | (SobolSequence.At(one.Point, d) >> (SobolSequence.Bits - 1) << d)
                    )
            )
            .ToList();
        Assert.Equal(D, Rank(columns));
    }

    private static long Inverse(long gray)
    {
        var index = 0L;
        for (; gray != 0; gray >>= 1)
        {
            index ^= gray;
        }

        return index;
    }

    private static int Rank(List<ulong> rows)
    {
        var rank = 0;
        while (rows.Count > 0)
        {
            var pivot = rows[^1];
            rows.RemoveAt(rows.Count - 1);
            if (pivot == 0)
            {
                continue;
            }

            rank++;
            var digit = BitOperations.Log2(pivot);
            for (var i = 0; i < rows.Count; i++)
            {
                rows[i] ^= ((rows[i] >> digit) & 1) * pivot;
            }
        }

        return rank;
    }
}
