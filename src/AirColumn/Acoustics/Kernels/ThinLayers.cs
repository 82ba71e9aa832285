using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Losses;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// The loss functions where boundary layers are thin, s of 32 and more: series in 1/s of as many terms as count there (DLMF
/// 10.17.5), and what D = s·d/ds makes of them.
/// </summary>
internal static class ThinLayers
{
    private const int Orders = 18;

    // From s = 32·√2ⁿ on so many terms leave out less than 1e-17.
    private static readonly int[] Needed = Terms();

    // Of ε, Dε, (D² + D)ε and F in turn, Re and Im of each, from the first order up.
    private static readonly double[] Coefficients = Series();

    /// <summary>ε = F/(1 − F), Dε and (D² + D)ε at one argument, F at another.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void At(
        Vector512<double> viscous,
        double lowest,
        double rootPrandtl,
        out ComplexLanes series,
        out ComplexLanes slope,
        out ComplexLanes bend,
        out ComplexLanes shunt
    )
    {
        var x = Vector512<double>.One / viscous;
        var y = x * (1 / rootPrandtl);
        var step = (int)(2 * Math.Log2(lowest * Math.Min(1, rootPrandtl) / 32));
        var last = Needed[Math.Min(step, Needed.Length - 1)] - 1;
        ref var c = ref Coefficients[8 * last];
        var (a, b) = (Vector512.Create(c), Vector512.Create(Unsafe.Add(ref c, 1)));
        var (d, e) = (Vector512.Create(Unsafe.Add(ref c, 2)), Vector512.Create(Unsafe.Add(ref c, 3)));
        var (f, g) = (Vector512.Create(Unsafe.Add(ref c, 4)), Vector512.Create(Unsafe.Add(ref c, 5)));
        var (h, i) = (Vector512.Create(Unsafe.Add(ref c, 6)), Vector512.Create(Unsafe.Add(ref c, 7)));
        for (var k = last - 1; k >= 0; k--)
        {
            c = ref Coefficients[8 * k];
            a = Vector512.FusedMultiplyAdd(a, x, Vector512.Create(c));
            b = Vector512.FusedMultiplyAdd(b, x, Vector512.Create(Unsafe.Add(ref c, 1)));
            d = Vector512.FusedMultiplyAdd(d, x, Vector512.Create(Unsafe.Add(ref c, 2)));
            e = Vector512.FusedMultiplyAdd(e, x, Vector512.Create(Unsafe.Add(ref c, 3)));
            f = Vector512.FusedMultiplyAdd(f, x, Vector512.Create(Unsafe.Add(ref c, 4)));
            g = Vector512.FusedMultiplyAdd(g, x, Vector512.Create(Unsafe.Add(ref c, 5)));
            h = Vector512.FusedMultiplyAdd(h, y, Vector512.Create(Unsafe.Add(ref c, 6)));
            i = Vector512.FusedMultiplyAdd(i, y, Vector512.Create(Unsafe.Add(ref c, 7)));
        }

        series = new ComplexLanes(a * x, b * x);
        slope = new ComplexLanes(d * x, e * x);
        bend = new ComplexLanes(f * x, g * x);
        shunt = new ComplexLanes(h * y, i * y);
    }

    private static double[] Series()
    {
        var (shunt, series) = (LargeArgument.Shunt(Orders), LargeArgument.Series(Orders));
        var c = new double[8 * Orders];
        for (var k = 1; k <= Orders; k++)
        {
            // wᵏ, w = 1/(√j·s).
            var turn = Complex.FromPolarCoordinates(1, -Math.PI / 4 * (k % 8));
            double[] values = [series[k - 1], -k * series[k - 1], (k * k - k) * series[k - 1], shunt[k - 1]];
            for (var n = 0; n < 4; n++)
            {
                c[8 * (k - 1) + 2 * n] = values[n] * turn.Real;
                c[8 * (k - 1) + 2 * n + 1] = values[n] * turn.Imaginary;
            }
        }

        return c;
    }

    private static int[] Terms()
    {
        var series = LargeArgument.Series(Orders);
        var needed = new int[20];
        for (var n = 0; n < needed.Length; n++)
        {
            var s = 32 * Math.Pow(2, n / 2.0);
            var count = Orders;
            // Against the first term; times k² in the bend.
            while (count > 2 && count * count * Math.Abs(series[count - 1]) * Math.Pow(s, 1 - count) < 1e-17)
            {
                count--;
            }

            needed[n] = count;
        }

        return needed;
    }
}
