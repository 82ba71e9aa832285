using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// A column over a band of frequencies so narrow that what each stretch does to the waves is a polynomial of low degree in the
/// square root of frequency, to rounding.
/// </summary>
/// <remarks>
/// Sixteen Chebyshev nodes of the band are what two vectors hold. Table: reflection at the far end; then for each stretch, from
/// there, W, b, c of [W, b; c, 1] — or all four entries, for one that may stop the wave; or, of a whole block, the waves at the blown
/// end and nothing else. Real and imaginary part in turn, the constant first. Loss functions are smooth in √f and phases in f, so that √f serves both.
/// </remarks>
internal sealed class WaveBlock
{
    private const int Nodes = 2 * ComplexLanes.Count;
    private const int HighestDegree = 14;

    // Coefficients below this leave the polynomial as it is in double precision: all values are of the order of 1.
    private const double Floor = 1.5e-16;

    // Below this coefficients may be rounding of the values.
    private const double LeastNoise = 2e-14;
    private const double MostNoise = 1e-12;
    private const double Safety = 2;

    // What there are kernels for.
    private static readonly (int Wave, int Echo)[] Degrees = [(6, 5), (8, 7), (10, 9), (12, 11), (14, 14)];

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

    private WaveBlock(double low, double high)
    {
        Low = low;
        High = high;
        var (from, to) = (Math.Sqrt(low), Math.Sqrt(high));
        Scale = 2 / (to - from);
        Shift = -(to + from) / (to - from);
    }

    /// <summary>Hz; the low end belongs to it, the high end to the next.</summary>
    public double Low { get; }

    public double High { get; }

    /// <summary>The variable of the polynomials is Scale·√f + Shift, −1 to 1.</summary>
    public double Scale { get; }

    public double Shift { get; }

    /// <summary>ρc/S at the blown end.</summary>
    public double Impedance { get; private init; }

    /// <summary>Degree of W and of all entries of a general stretch.</summary>
    public int WaveDegree { get; private init; }

    /// <summary>Degree of b and c.</summary>
    public int EchoDegree { get; private init; }

    public double[] Table { get; private init; } = [];

    /// <summary>For each stretch whether it has all four entries.</summary>
    public bool[] IsGeneral { get; private init; } = [];

    /// <summary>Its halves, where it was too wide.</summary>
    public (WaveBlock Lower, WaveBlock Upper)? Halves { get; private init; }

    /// <summary>Whether no polynomial serves: to be answered frequency by frequency.</summary>
    public bool IsDirect { get; private init; }

    /// <summary>Whether the table has the waves at the blown end themselves, p⁻ and p⁺, and no stretches.</summary>
    public bool IsWhole { get; private init; }

    /// <summary>Where it is whole, by what the waves of the series it was made from are multiplied in it.</summary>
    public double WaveScale { get; private init; }

    /// <summary>Likewise the least modulus of p⁺ in the table.</summary>
    public double LeastOn { get; private init; }

    /// <summary>Of a column.</summary>
    /// <param name="column">The column.</param>
    /// <param name="low">Hz.</param>
    /// <param name="high">Hz.</param>
    /// <param name="depth">How often it may be halved.</param>
    /// <param name="series">For each stretch a series that holds the band, or null; none where there are no such series.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static WaveBlock Compile(
        WaveColumn column,
        double low,
        double high,
        int depth,
        ReadOnlySpan<StretchSeries?> series
    )
    {
        var corner = Array.Find(
            column.Corners,
            hertz => hertz > low * (1 + 1e-9) && hertz < high * (1 - 1e-9)
        );
        if (corner > 0)
        {
            return Halved(column, low, corner, high, depth, series);
        }

        var block = new WaveBlock(low, high);
        var stretches = column.Stretches;
        var functions = 2 + stretches.Sum(stretch => stretch.IsGeneral ? 8 : 6);
        var values = new double[functions * Nodes];
        for (var half = 0; half < 2; half++)
        {
            var first = half * ComplexLanes.Count;
            // √f at the nodes, then ω.
            var places = Vector512.LoadUnsafe(ref NodePlaces[first]);
            var root = (places - Vector512.Create(block.Shift)) * (1 / block.Scale);
            var frequencies = new FrequencyLanes((2 * Math.PI) * (root * root));
            var row = 0;
            Put(column.Load.ReflectionAt(frequencies.Omega), values, ref row, first);
            for (var i = 0; i < stretches.Length; i++)
            {
                var stretch = stretches[i];
                var m =
                    series.Length > 0 && series[i] is { } wide
                        ? wide.At(root)
                        : stretch.At(frequencies, column.Tolerance);
                Put(m.A, values, ref row, first);
                Put(m.B, values, ref row, first);
                Put(m.C, values, ref row, first);
                if (stretch.IsGeneral)
                {
                    Put(m.D, values, ref row, first);
                }
            }
        }

        var fits = Project(values);
        var (wave, echo) = (2, 2);
        var isGeneral = new bool[stretches.Length];
        var n = 0;
        var hasConverged = Count(fits, ref n, 2, ref wave);
        for (var i = 0; i < stretches.Length; i++)
        {
            isGeneral[i] = stretches[i].IsGeneral;
            hasConverged &= isGeneral[i]
                ? Count(fits, ref n, 8, ref wave)
                : Count(fits, ref n, 2, ref wave) && Count(fits, ref n, 4, ref echo);
        }

        if (!hasConverged)
        {
            if (depth == 0)
            {
                return new WaveBlock(low, high) { IsDirect = true };
            }

            return Halved(column, low, (low + high) / 2, high, depth - 1, series);
        }

        (wave, echo) = Array.Find(Degrees, pair => pair.Wave >= wave && pair.Echo >= echo);
        var table = new List<double>(functions * (wave + 1));
        n = 0;
        Store(fits, ref n, 2, wave, table);
        foreach (var general in isGeneral)
        {
            if (general)
            {
                Store(fits, ref n, 8, wave, table);
            }
            else
            {
                Store(fits, ref n, 2, wave, table);
                Store(fits, ref n, 4, echo, table);
            }
        }

        return new WaveBlock(low, high)
        {
            Impedance = column.Impedance,
            WaveDegree = wave,
            EchoDegree = echo,
            IsGeneral = isGeneral,
            Table = [.. table],
        };
    }

    /// <summary>From the waves at the blown end as a series has them; see <see cref="IsWhole"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static WaveBlock Whole(WaveSegment series, double low, double high)
    {
        var block = new WaveBlock(low, high);
        var values = new double[4 * Nodes];
        var largest = Vector512<double>.Zero;
        for (var half = 0; half < 2; half++)
        {
            var first = half * ComplexLanes.Count;
            var places = Vector512.LoadUnsafe(ref NodePlaces[first]);
            var root = (places - Vector512.Create(block.Shift)) * (1 / block.Scale);
            var (back, on) = series.WavesAt(root * root);
            largest = Vector512.Max(largest, on.Norm);
            var row = 0;
            Put(back, values, ref row, first);
            Put(on, values, ref row, first);
        }

        // |p⁻| is not larger: of the order of 1, as in other blocks.
        var scale = 1 / Math.Sqrt(ComplexLanes.Largest(largest));
        if (!double.IsNormal(scale))
        {
            return new WaveBlock(low, high) { IsDirect = true };
        }

        foreach (ref var value in values.AsSpan())
        {
            value *= scale;
        }

        var fits = Project(values);
        var (wave, n) = (2, 0);
        if (!Count(fits, ref n, 4, ref wave))
        {
            return new WaveBlock(low, high) { IsDirect = true };
        }

        (wave, var echo) = Array.Find(Degrees, pair => pair.Wave >= wave);
        var table = new List<double>(4 * (wave + 1));
        n = 0;
        Store(fits, ref n, 4, wave, table);
        return new WaveBlock(low, high)
        {
            Impedance = series.Impedance,
            WaveDegree = wave,
            EchoDegree = echo,
            Table = [.. table],
            IsWhole = true,
            WaveScale = scale,
            LeastOn = Least(CollectionsMarshal.AsSpan(table)[(2 * (wave + 1))..], wave),
        };
    }

    // The least modulus of a complex polynomial over −1 to 1: between points close together, then between closer ones around the least of
    // those. Behind a large step p⁺ may dip within a small part of a block.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double Least(ReadOnlySpan<double> table, int degree)
    {
        const int Samples = 8 * ComplexLanes.Count;
        var eight = Vector512.Create(0.0, 1, 2, 3, 4, 5, 6, 7);
        var (from, step, least) = (-1.0, 2.0 / (Samples - 1), double.PositiveInfinity);
        for (var pass = 0; pass < 2; pass++)
        {
            var place = 0;
            for (var first = 0; first < Samples; first += ComplexLanes.Count)
            {
                var t = Vector512.Clamp(
                    Vector512.Create(from + first * step) + step * eight,
                    Vector512.Create(-1.0),
                    Vector512.Create(1.0)
                );
                var (re, im) = (Vector512<double>.Zero, Vector512<double>.Zero);
                for (var n = degree; n >= 0; n--)
                {
                    re = Vector512.FusedMultiplyAdd(re, t, Vector512.Create(table[n]));
                    im = Vector512.FusedMultiplyAdd(im, t, Vector512.Create(table[degree + 1 + n]));
                }

                var norm = re * re + im * im;
                for (var lane = 0; lane < ComplexLanes.Count; lane++)
                {
                    if (norm.GetElement(lane) < least)
                    {
                        (least, place) = (norm.GetElement(lane), first + lane);
                    }
                }
            }

            (from, step) = (from + (place - 1) * step, 2 * step / (Samples - 1));
        }

        return Math.Sqrt(least);
    }

    private static WaveBlock Halved(
        WaveColumn column,
        double low,
        double middle,
        double high,
        int depth,
        ReadOnlySpan<StretchSeries?> series
    ) =>
        new(low, high)
        {
            Halves = (
                Compile(column, low, middle, depth, series),
                Compile(column, middle, high, depth, series)
            ),
        };

    /// <summary>The part that holds a frequency.</summary>
    public WaveBlock At(double hertz)
    {
        var block = this;
        while (block.Halves is var (lower, upper))
        {
            block = hertz < lower.High ? lower : upper;
        }

        return block;
    }

    private static void Put(in ComplexLanes z, double[] values, ref int row, int first)
    {
        z.Re.StoreUnsafe(ref values[row * Nodes + first]);
        z.Im.StoreUnsafe(ref values[(row + 1) * Nodes + first]);
        row += 2;
    }

    // Chebyshev coefficients of every row of values.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double[] Project(double[] values)
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

    // The degree that some rows need; false where even the highest leaves something out.
    private static bool Count(double[] fits, ref int row, int count, ref int degree)
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

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Store(double[] fits, ref int row, int count, int degree, List<double> table)
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
