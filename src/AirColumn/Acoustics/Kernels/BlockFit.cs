using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// Polynomials of low degree through the values of functions at sixteen Chebyshev nodes of a block, and the degree they need. Values are put
/// in, half of the nodes after the other; then degrees are counted and polynomials stored, each in the same order.
/// </summary>
internal ref struct BlockFit
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

    // [row·Nodes + node], real and imaginary parts of each function in rows; then the coefficients of each row.
    private readonly double[] rows;
    private int put;
    private int half;
    private int counted;
    private int stored;
    private int written;

    /// <summary>Room for some real functions.</summary>
    public BlockFit(int functions) => rows = GC.AllocateUninitializedArray<double>(functions * Nodes);

    /// <summary>√f at half of the nodes of a block.</summary>
    public static Vector512<double> RootsAt(WaveBlock block, int half) =>
        (Vector512.LoadUnsafe(ref NodePlaces[half * ComplexLanes.Count]) - Vector512.Create(block.Shift))
        * (1 / block.Scale);

    /// <summary>Values of the next function at half of the nodes.</summary>
    public void Put(int into, in ComplexLanes z)
    {
        (put, half) = into == half ? (put, half) : (0, into);
        z.Re.StoreUnsafe(ref rows[put * Nodes + half * ComplexLanes.Count]);
        z.Im.StoreUnsafe(ref rows[(put + 1) * Nodes + half * ComplexLanes.Count]);
        put += 2;
    }

    /// <summary>All values times a number.</summary>
    public readonly void Scale(double factor)
    {
        foreach (ref var value in rows.AsSpan())
        {
            value *= factor;
        }
    }

    /// <summary>Makes Chebyshev coefficients of the values.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public readonly void Project()
    {
        for (var row = 0; row < rows.Length; row += Nodes)
        {
            // About one of them, so that rounding counts against what varies.
            var level = rows[row];
            var low = Vector512<double>.Zero;
            var high = Vector512<double>.Zero;
            for (var i = 1; i < Nodes; i++)
            {
                var value = Vector512.Create(rows[row + i] - level);
                low = Vector512.FusedMultiplyAdd(value, Vector512.LoadUnsafe(ref Projection[i * Nodes]), low);
                high = Vector512.FusedMultiplyAdd(
                    value,
                    Vector512.LoadUnsafe(ref Projection[i * Nodes + 8]),
                    high
                );
            }

            low.StoreUnsafe(ref rows[row]);
            high.StoreUnsafe(ref rows[row + 8]);
            rows[row] += level;
        }
    }

    /// <summary>The degree that the next rows need; false where even the highest leaves something out.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool Count(int count, ref int degree)
    {
        var (low, high) = (Vector512<double>.Zero, Vector512<double>.Zero);
        for (var i = 0; i < count; i++, counted++)
        {
            low = Vector512.Max(low, Vector512.Abs(Vector512.LoadUnsafe(ref rows[counted * Nodes])));
            high = Vector512.Max(high, Vector512.Abs(Vector512.LoadUnsafe(ref rows[counted * Nodes + 8])));
        }

        Span<double> largest = stackalloc double[Nodes];
        low.CopyTo(largest);
        high.CopyTo(largest[8..]);
        // The rounding of the values is a floor that no longer falls.
        var tail = Greatest(largest[^4..]);
        var noise =
            tail is > LeastNoise / 3 and < MostNoise && tail > 0.05 * Greatest(largest[^7..^4])
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

    /// <summary>Appends the next rows to a table in powers of the variable, the constant first.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Store(int count, int degree, Span<double> table)
    {
        Span<double> powers = stackalloc double[Nodes];
        for (var i = 0; i < count; i++, stored++)
        {
            var low = Vector512<double>.Zero;
            var high = Vector512<double>.Zero;
            for (var k = 0; k <= degree; k++)
            {
                var c = Vector512.Create(rows[stored * Nodes + k]);
                low = Vector512.FusedMultiplyAdd(c, Vector512.LoadUnsafe(ref Powers[k * Nodes]), low);
                high = Vector512.FusedMultiplyAdd(c, Vector512.LoadUnsafe(ref Powers[k * Nodes + 8]), high);
            }

            low.StoreUnsafe(ref powers[0]);
            high.StoreUnsafe(ref powers[8]);
            powers[..(degree + 1)].CopyTo(table[written..]);
            written += degree + 1;
        }
    }

    private static double Greatest(ReadOnlySpan<double> values)
    {
        var greatest = 0.0;
        foreach (var value in values)
        {
            greatest = Math.Max(greatest, value);
        }

        return greatest;
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
