using System.Runtime.CompilerServices;
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
    public WaveBlock(double low, double high)
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
    public double Impedance { get; init; }

    /// <summary>Degree of W and of all entries of a general stretch.</summary>
    public int WaveDegree { get; init; }

    /// <summary>Degree of b and c.</summary>
    public int EchoDegree { get; init; }

    public double[] Table { get; init; } = [];

    /// <summary>For each stretch whether it has all four entries.</summary>
    public bool[] IsGeneral { get; init; } = [];

    /// <summary>Its halves, where it was too wide.</summary>
    public (WaveBlock Lower, WaveBlock Upper)? Halves { get; init; }

    /// <summary>Whether no polynomial serves: to be answered frequency by frequency.</summary>
    public bool IsDirect { get; init; }

    /// <summary>Whether the table has the waves at the blown end themselves, p⁻ and p⁺, and no stretches.</summary>
    public bool IsWhole { get; init; }

    /// <summary>Where it is whole, by what the waves of the series it was made from are multiplied in it.</summary>
    public double WaveScale { get; init; }

    /// <summary>Likewise the least modulus of p⁺ in the table.</summary>
    public double LeastOn { get; init; }

    /// <summary>Of a column.</summary>
    /// <param name="column">The column.</param>
    /// <param name="low">Hz.</param>
    /// <param name="high">Hz.</param>
    /// <param name="depth">How often it may be halved.</param>
    /// <param name="series">Series of stretches that hold the band; null where there are none.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static WaveBlock Compile(WaveColumn column, double low, double high, int depth, BandSeries? series)
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
        var fits = new BlockFit(functions);
        Span<Vector512<double>> polynomials = stackalloc Vector512<double>[series?.Terms ?? 0];
        for (var half = 0; half < 2; half++)
        {
            var root = BlockFit.RootsAt(block, half);
            var frequencies = new FrequencyLanes(
                (2 * Math.PI) * (root * root),
                2 * Math.PI * low,
                2 * Math.PI * high
            );
            series?.Polynomials(root, polynomials);
            fits.Put(half, column.Load.ReflectionAt(frequencies.Omega));
            for (var i = 0; i < stretches.Length; i++)
            {
                var stretch = stretches[i];
                var m = series?[i] is { } wide
                    ? wide.At(polynomials)
                    : stretch.At(frequencies, column.Tolerance);
                fits.Put(half, m.A);
                fits.Put(half, m.B);
                fits.Put(half, m.C);
                if (stretch.IsGeneral)
                {
                    fits.Put(half, m.D);
                }
            }
        }

        fits.Project();
        var (wave, echo) = (2, 2);
        var isGeneral = Array.ConvertAll(stretches, stretch => stretch.IsGeneral);
        var hasConverged = fits.Count(2, ref wave);
        foreach (var general in isGeneral)
        {
            hasConverged &= general
                ? fits.Count(8, ref wave)
                : fits.Count(2, ref wave) && fits.Count(4, ref echo);
        }

        if (!hasConverged)
        {
            if (depth == 0)
            {
                return new WaveBlock(low, high) { IsDirect = true };
            }

            return Halved(column, low, (low + high) / 2, high, depth - 1, series);
        }

        (wave, echo) = Array.Find(BlockFit.Degrees, pair => pair.Wave >= wave && pair.Echo >= echo);
        var size = (2 + isGeneral.Sum(general => general ? 8 : 2)) * (wave + 1);
        var table = new double[size + isGeneral.Sum(general => general ? 0 : 4) * (echo + 1)];
        fits.Store(2, wave, table);
        foreach (var general in isGeneral)
        {
            if (general)
            {
                fits.Store(8, wave, table);
            }
            else
            {
                fits.Store(2, wave, table);
                fits.Store(4, echo, table);
            }
        }

        return new WaveBlock(low, high)
        {
            Impedance = column.Impedance,
            WaveDegree = wave,
            EchoDegree = echo,
            IsGeneral = isGeneral,
            Table = table,
        };
    }

    private static WaveBlock Halved(
        WaveColumn column,
        double low,
        double middle,
        double high,
        int depth,
        BandSeries? series
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
}
