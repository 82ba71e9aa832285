using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>Polynomials of low degree through the values of functions at sixteen Chebyshev nodes of a block, and the degree they need.</summary>
internal static class BlockFit
{
    /// <summary>What two vectors hold.</summary>
    public const int Nodes = 2 * ComplexLanes.Count;
    private const int HighestDegree = 14;

    // Coefficients below this leave the polynomial as it is in double precision: all values are of the order of 1.
    private const double Floor = 1.5e-16;

    // Below this coefficients may be rounding of the values.
    private const double LeastNoise = 2e-14;
    private const double MostNoise = 1e-12;
    private const double Safety = 2;

    /// <summary>What there are kernels for.</summary>
    public static readonly (int Wave, int Echo)[] Degrees = [(6, 5), (8, 7), (10, 9), (12, 11), (14, 14)];

    // [i·Nodes + k]: what value i gives to Chebyshev coefficient k.
    private static readonly double[] Projection = Square((i, k) => ChebyshevFit.Weight(Nodes, k, i));

    // [k·Nodes + n]: the coefficient of tⁿ in Tₖ.
    private static readonly double[] Powers = Square(
        (k, n) => ChebyshevFit.Polynomial(k) is var t && n < t.Length ? t[n] : 0
    );

    private static readonly double[] NodePlaces =
    [
        .. Enumerable.Range(0, Nodes).Select(i => Math.Cos(Math.PI * (i + 0.5) / Nodes)),
    ];

    /// <summary>√f at half of the nodes of a block, from one of them on.</summary>
    public static Vector512<double> RootsAt(WaveBlock block, int first) =>
        (Vector512.LoadUnsafe(ref NodePlaces[first]) - Vector512.Create(block.Shift)) * (1 / block.Scale);

    /// <summary>Values of a function at half of the nodes, its real part into one row and its imaginary part into the next.</summary>
    public static void Put(in ComplexLanes z, double[] values, ref int row, int first)
    {
        z.Re.StoreUnsafe(ref values[row * Nodes + first]);
        z.Im.StoreUnsafe(ref values[(row + 1) * Nodes + first]);
        row += 2;
    }

    /// <summary>Chebyshev coefficients of every row of values.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double[] Project(double[] values)
    {
        var fits = new double[values.Length];
        for (var row = 0; row < values.Length; row += Nodes)
        {
            // About one of them, so that rounding counts against what varies.
            var level = values[row];
            var low = Vector512<double>.Zero;
            var high = Vector512<double>.Zero;
            for (var i = 1; i < Nodes; i++)
            {
                var value = Vector512.Create(values[row + i] - level);
                low = Vector512.FusedMultiplyAdd(value, Vector512.LoadUnsafe(ref Projection[i * Nodes]), low);
                high = Vector512.FusedMultiplyAdd(
                    value,
                    Vector512.LoadUnsafe(ref Projection[i * Nodes + 8]),
                    high
                );
            }

            low.StoreUnsafe(ref fits[row]);
            high.StoreUnsafe(ref fits[row + 8]);
            fits[row] += level;
        }

        return fits;
    }

    /// <summary>The degree that some rows need; false where even the highest leaves something out.</summary>
    public static bool Count(double[] fits, ref int row, int count, ref int degree)
    {
        Span<double> largest = stackalloc double[Nodes];
        largest.Clear();
        for (var i = 0; i < count; i++, row++)
        {
            for (var k = 0; k < Nodes; k++)
            {
                largest[k] = Math.Max(largest[k], Math.Abs(fits[row * Nodes + k]));
            }
        }

        // The rounding of the values is a floor that no longer falls.
        var tail = largest[^4..].ToArray().Max();
        var noise =
            tail is > LeastNoise / 3 and < MostNoise && tail > 0.05 * largest[^7..^4].ToArray().Max()
                ? 3 * tail
                : LeastNoise;
        // Once they have fallen into the rounding of the values, what they would be if they went on falling.
        var (before, now) = (Math.Max(largest[0], 1e-30), largest[1]);
        var needed = 1;
        for (var k = 2; k < Nodes; k++)
        {
            var next = largest[k];
            if (next < noise)
            {
                next = Math.Min(next, Safety * now * now / before);
            }

            // What is no number does not fall.
            if (!(next <= Floor))
            {
                needed = k;
            }

            (before, now) = (Math.Max(now, 1e-30), next);
        }

        degree = Math.Max(degree, needed);
        return needed <= HighestDegree;
    }

    /// <summary>Adds some rows to a table in powers of the variable, the constant first.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Store(double[] fits, ref int row, int count, int degree, List<double> table)
    {
        Span<double> powers = stackalloc double[Nodes];
        for (var i = 0; i < count; i++, row++)
        {
            var low = Vector512<double>.Zero;
            var high = Vector512<double>.Zero;
            for (var k = 0; k <= degree; k++)
            {
                var c = Vector512.Create(fits[row * Nodes + k]);
                low = Vector512.FusedMultiplyAdd(c, Vector512.LoadUnsafe(ref Powers[k * Nodes]), low);
                high = Vector512.FusedMultiplyAdd(c, Vector512.LoadUnsafe(ref Powers[k * Nodes + 8]), high);
            }

            low.StoreUnsafe(ref powers[0]);
            high.StoreUnsafe(ref powers[8]);
            table.AddRange(powers[..(degree + 1)]);
        }
    }

    private static double[] Square(Func<int, int, double> entry)
    {
        var table = new double[Nodes * Nodes];
        for (var row = 0; row < Nodes; row++)
        {
            for (var column = 0; column < Nodes; column++)
            {
                table[row * Nodes + column] = entry(row, column);
            }
        }

        return table;
    }
}
