using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>Blocks of the waves at the blown end themselves, from a series of these: <see cref="WaveBlock.IsWhole"/>.</summary>
internal static class WholeBlock
{
    /// <summary>A part of what a series holds; direct where its polynomials are not enough.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static WaveBlock Of(WaveSegment series, double low, double high)
    {
        var block = new WaveBlock(low, high);
        var fits = new BlockFit(4);
        var largest = Vector512<double>.Zero;
        for (var half = 0; half < 2; half++)
        {
            var root = BlockFit.RootsAt(block, half);
            var (back, on) = series.WavesAt(root * root);
            largest = Vector512.Max(largest, on.Norm);
            fits.Put(half, back);
            fits.Put(half, on);
        }

        // |p⁻| is not larger: of the order of 1, as in other blocks.
        var scale = 1 / Math.Sqrt(ComplexLanes.Largest(largest));
        if (!double.IsNormal(scale))
        {
            return new WaveBlock(low, high) { IsDirect = true };
        }

        fits.Scale(scale);
        fits.Project();
        var wave = 2;
        if (!fits.Count(4, ref wave))
        {
            return new WaveBlock(low, high) { IsDirect = true };
        }

        (wave, var echo) = Array.Find(BlockFit.Degrees, pair => pair.Wave >= wave);
        var table = new double[4 * (wave + 1)];
        fits.Store(4, wave, table);
        return new WaveBlock(low, high)
        {
            Impedance = series.Impedance,
            WaveDegree = wave,
            EchoDegree = echo,
            Table = table,
            IsWhole = true,
            WaveScale = scale,
            LeastOn = Least(table.AsSpan(2 * (wave + 1)), wave),
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
}
