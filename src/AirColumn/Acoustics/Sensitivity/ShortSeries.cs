using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Kernels;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>A Chebyshev series over a part of its range, by sixteen terms.</summary>
internal sealed class ShortSeries
{
    public const int Terms = 2 * ComplexLanes.Count;

    private readonly int terms;
    private readonly double[] weights; // [k·Terms + j]: what Tₖ of the whole range gives to term j

    /// <summary>Prepares it.</summary>
    /// <param name="terms">Of the series over the whole range, −1 to 1.</param>
    /// <param name="middle">Of the part.</param>
    /// <param name="half">Half its width.</param>
    public ShortSeries(int terms, double middle, double half)
    {
        this.terms = terms;
        weights = new double[terms * Terms];
        Span<double> places = stackalloc double[Terms];
        Span<double> before = stackalloc double[Terms];
        Span<double> now = stackalloc double[Terms];
        for (var i = 0; i < Terms; i++)
        {
            places[i] = middle + half * Math.Cos(Math.PI * (i + 0.5) / Terms);
            (before[i], now[i]) = (places[i], 1); // T₋₁ = T₁
        }

        for (var k = 0; k < terms; k++)
        {
            ChebyshevFit.Coefficients(now, weights.AsSpan(k * Terms, Terms));
            for (var i = 0; i < Terms; i++)
            {
                (before[i], now[i]) = (now[i], 2 * places[i] * now[i] - before[i]);
            }
        }
    }

    /// <summary>The same of series one after the other, and the largest of the last terms of any, over its largest.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Of(double[] series, int count, double[] shorter)
    {
        var leftOut = 0.0;
        for (var row = 0; row < count; row++)
        {
            var (low, high) = (Vector512<double>.Zero, Vector512<double>.Zero);
            for (var k = 0; k < terms; k++)
            {
                var c = Vector512.Create(series[row * terms + k]);
                low = Vector512.FusedMultiplyAdd(c, Vector512.LoadUnsafe(ref weights[k * Terms]), low);
                high = Vector512.FusedMultiplyAdd(
                    c,
                    Vector512.LoadUnsafe(ref weights[k * Terms + ComplexLanes.Count]),
                    high
                );
            }

            low.StoreUnsafe(ref shorter[row * Terms]);
            high.StoreUnsafe(ref shorter[row * Terms + ComplexLanes.Count]);
            var largest = ComplexLanes.Largest(Vector512.Max(Vector512.Abs(low), Vector512.Abs(high)));
            var tail = Math.Max(
                Math.Abs(shorter[row * Terms + Terms - 1]),
                Math.Abs(shorter[row * Terms + Terms - 2])
            );
            leftOut = largest == 0 ? leftOut : Math.Max(leftOut, tail / largest);
        }

        return leftOut;
    }
}
