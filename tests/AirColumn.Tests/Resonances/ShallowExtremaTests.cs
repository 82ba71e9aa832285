using System.Numerics;
using AirColumn.Tests.Acoustics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

/// <summary>
/// Up to the cut-on, where the mouth radiates most of the sound and resonances are broad, |Z| still has shallow extrema, and a sharp resonance's may lie
/// many half-widths from it: none that a dense scan sees is missed, at closed and at open blown ends, unless it is so shallow that |Z| hardly
/// turns there.
/// </summary>
public class ShallowExtremaTests
{
    private const int Points = 10_000;
    private const double Shallowest = 1e-3; // of |Z|, from one extremum to the next

    [Theory]
    [Trait("Speed", "Slow")]
    [InlineData(false)]
    [InlineData(true)]
    public void None_is_missed(bool isOpen) =>
        Parallel.For(
            0,
            100,
            seed =>
            {
                var blown = isOpen ? BlownEnd.FreeOpen() : BlownEnd.Closed;
                var column = new Column(
                    RandomBore.From(seed, 4e-3, 0.04, 0.7),
                    TableAir,
                    OneDimensional with
                    {
                        BlownEnd = blown,
                        RelativeTolerance = 1e-9,
                    }
                );
                var top = 0.99 * column.HighestFrequency.Hertz;
                var step = top / Points;
                var found = column
                    .Resonances(Frequency.FromHertz(top))
                    .Select(r => r.Frequency.Hertz)
                    .ToList();
                var missed = Scan(column, step, isOpen)
                    .Where(seen => found.Count > 0 && seen < found.Max())
                    .Where(seen => found.TrueForAll(place => Math.Abs(place - seen) > 2 * step))
                    .ToList();
                Assert.True(
                    missed.Count == 0
                        && found.Zip(found.Skip(1)).All(pair => pair.Second - pair.First > 1e-9 * pair.First),
                    $"seed {seed}: {column.Bore}; missed {string.Join(" ", missed.Select(f => $"{f:F1}"))} of {found.Count}"
                );
            }
        );

    private static List<double> Scan(Column column, double step, bool isOpen)
    {
        var hertz = Enumerable.Range(1, Points).Select(i => i * step).ToArray();
        var (real, imaginary) = (new double[Points], new double[Points]);
        column.Impedance(hertz, real, imaginary);
        var sizes = new double[Points];
        for (var i = 0; i < Points; i++)
        {
            var size = Complex.Abs(new Complex(real[i], imaginary[i]));
            sizes[i] = isOpen ? -size : size;
        }

        // Extrema of both kinds in turn.
        var turns = Enumerable
            .Range(1, Points - 2)
            .Where(i => (sizes[i] - sizes[i - 1]) * (sizes[i + 1] - sizes[i]) <= 0)
            .ToList();
        return
        [
            .. Enumerable
                .Range(1, Math.Max(0, turns.Count - 2))
                .Where(n => sizes[turns[n]] > sizes[turns[n] - 1])
                .Where(n =>
                    Depth(turns[n], turns[n - 1]) > Shallowest && Depth(turns[n], turns[n + 1]) > Shallowest
                )
                .Select(n => hertz[turns[n]]),
        ];

        double Depth(int i, int other) => Math.Abs(sizes[i] / sizes[other] - 1);
    }
}
