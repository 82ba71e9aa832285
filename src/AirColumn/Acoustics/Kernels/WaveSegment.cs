using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// The waves (p⁻, p⁺)·a at the blown end over a few resonances, as Chebyshev series in √f: for a fixed wave at the far end both
/// are smooth in frequency whatever resonates, since neither is divided by the other.
/// </summary>
internal sealed class WaveSegment
{
    public const int FewestNodes = 32;
    private const int MostNodes = 128;

    private readonly double scale;
    private readonly double shift;
    private readonly double impedance; // ρc/S
    private readonly double rest; // how far each wave may be off
    private readonly double[] coefficients; // of Re p⁻, Im p⁻, Re p⁺, Im p⁺, one after the other

    private WaveSegment(double low, double high, double impedance, double[] coefficients, double rest)
    {
        (this.impedance, this.rest) = (impedance, rest);
        (Low, High, this.coefficients) = (low, high, coefficients);
        (scale, shift) = Variable(low, high);
    }

    /// <summary>Hz.</summary>
    public double Low { get; }

    public double High { get; }

    /// <summary>Fits the waves so that nothing above <paramref name="allowed"/> is left out; null if too many nodes are needed.</summary>
    public static WaveSegment? Fit(
        WaveColumn column,
        double low,
        double high,
        double tolerance,
        double allowed
    )
    {
        for (var n = FewestNodes; n <= MostNodes; n *= 2)
        {
            var values = Values(column, low, high, n, tolerance);
            var coefficients = new double[4 * n];
            var (largest, tail) = (0.0, 0.0);
            for (var row = 0; row < 4; row++)
            {
                var c = ChebyshevFit.Coefficients(values.AsSpan(row * n, n));
                c.CopyTo(coefficients, row * n);
                largest = Math.Max(largest, c.Max(Math.Abs));
                tail = Math.Max(tail, c[^4..].Max(Math.Abs));
            }

            if (tail <= allowed * largest)
            {
                // The tail four times over, and the rounding of a sum of n.
                var rest = 4 * tail + 1e-16 * n * largest;
                return new WaveSegment(low, high, column.Impedance, coefficients, rest);
            }
        }

        return null;
    }

    /// <summary>Whether it holds a frequency.</summary>
    public bool Holds(double hertz) => hertz >= Low && hertz <= High;

    /// <summary>
    /// Pressure and flow at the blown end, with the air outside it, at a frequency in it: up to a factor that is smooth in frequency.
    /// </summary>
    public (Complex Pressure, Complex Flow) At(double hertz)
    {
        var n = coefficients.Length / 4;
        var t = scale * Math.Sqrt(hertz) + shift;
        // Four series side by side.
        var (next, afterNext) = (Vector256<double>.Zero, Vector256<double>.Zero);
        var twice = Vector256.Create(2 * t);
        for (var k = n - 1; k > 0; k--)
        {
            var c = Coefficient(k, n);
            (next, afterNext) = (Vector256.FusedMultiplyAdd(twice, next, c - afterNext), next);
        }

        var value = Vector256.FusedMultiplyAdd(Vector256.Create(t), next, Coefficient(0, n) - afterNext);
        var (back, on) = (new Complex(value[0], value[1]), new Complex(value[2], value[3]));
        return (on + back, (on - back) / impedance);
    }

    /// <summary>Z at frequencies in it, and how far any may be off, relative.</summary>
    public double Impedances(ReadOnlySpan<double> hertz, Span<double> real, Span<double> imaginary)
    {
        var worst = Vector512<double>.Zero;
        Span<double> some = stackalloc double[3 * ComplexLanes.Count];
        for (var i = 0; i < hertz.Length; i += ComplexLanes.Count)
        {
            var count = Math.Min(ComplexLanes.Count, hertz.Length - i);
            some[..ComplexLanes.Count].Fill(hertz[i + count - 1]);
            hertz.Slice(i, count).CopyTo(some);
            Eight(some, ref worst);
            some.Slice(ComplexLanes.Count, count).CopyTo(real[i..]);
            some.Slice(2 * ComplexLanes.Count, count).CopyTo(imaginary[i..]);
        }

        return Enumerable.Range(0, ComplexLanes.Count).Max(lane => worst.GetElement(lane));
    }

    // Frequencies in, Re and Im of Z out behind them.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Eight(Span<double> some, ref Vector512<double> worst)
    {
        var n = coefficients.Length / 4;
        ref var c = ref coefficients[0];
        var t = Vector512.FusedMultiplyAdd(
            Vector512.Sqrt(Vector512.LoadUnsafe(ref some[0])),
            Vector512.Create(scale),
            Vector512.Create(shift)
        );
        var twice = t + t;
        var zero = Vector512<double>.Zero;
        var (a, b, d, e) = (zero, zero, zero, zero);
        var (aAfter, bAfter, dAfter, eAfter) = (zero, zero, zero, zero);
        for (var k = n - 1; k > 0; k--)
        {
            var aNext = Vector512.FusedMultiplyAdd(twice, a, Vector512.Create(Unsafe.Add(ref c, k)) - aAfter);
            var bNext = Vector512.FusedMultiplyAdd(
                twice,
                b,
                Vector512.Create(Unsafe.Add(ref c, n + k)) - bAfter
            );
            var dNext = Vector512.FusedMultiplyAdd(
                twice,
                d,
                Vector512.Create(Unsafe.Add(ref c, 2 * n + k)) - dAfter
            );
            var eNext = Vector512.FusedMultiplyAdd(
                twice,
                e,
                Vector512.Create(Unsafe.Add(ref c, 3 * n + k)) - eAfter
            );
            (aAfter, bAfter, dAfter, eAfter) = (a, b, d, e);
            (a, b, d, e) = (aNext, bNext, dNext, eNext);
        }

        var back = new ComplexLanes(
            Vector512.FusedMultiplyAdd(t, a, Vector512.Create(c) - aAfter),
            Vector512.FusedMultiplyAdd(t, b, Vector512.Create(Unsafe.Add(ref c, n)) - bAfter)
        );
        var on = new ComplexLanes(
            Vector512.FusedMultiplyAdd(t, d, Vector512.Create(Unsafe.Add(ref c, 2 * n)) - dAfter),
            Vector512.FusedMultiplyAdd(t, e, Vector512.Create(Unsafe.Add(ref c, 3 * n)) - eAfter)
        );
        var (p, u) = (on + back, on - back);
        var z = impedance * (p / u);
        z.Re.StoreUnsafe(ref some[ComplexLanes.Count]);
        z.Im.StoreUnsafe(ref some[2 * ComplexLanes.Count]);
        // Of p and u, each the sum of two waves.
        var one = Vector512<double>.One;
        var off = (one / Vector512.Sqrt(p.Norm) + one / Vector512.Sqrt(u.Norm)) * (2 * rest);
        worst = Vector512.Max(worst, off);
    }

    private Vector256<double> Coefficient(int k, int n) =>
        Vector256.Create(
            coefficients[k],
            coefficients[n + k],
            coefficients[2 * n + k],
            coefficients[3 * n + k]
        );

    private static double[] Values(WaveColumn column, double low, double high, int n, double tolerance)
    {
        var (scale, shift) = Variable(low, high);
        var values = new double[4 * n];
        Span<double> omega = stackalloc double[ComplexLanes.Count];
        for (var i = 0; i < n; i += ComplexLanes.Count)
        {
            for (var lane = 0; lane < omega.Length; lane++)
            {
                var root = (Math.Cos(Math.PI * (i + lane + 0.5) / n) - shift) / scale;
                omega[lane] = 2 * Math.PI * root * root;
            }

            var (back, on) = column.Waves(new FrequencyLanes(Vector512.Create<double>(omega)), tolerance);
            // Forth over half of the way: p⁻ and p⁺ then turn by kL each, one to either side, instead of one by 2kL.
            var (sin, cos) = Vector512.SinCos(column.Delay * Vector512.Create<double>(omega));
            var turn = new ComplexLanes(cos, sin);
            (back, on) = (turn * back, turn * on);
            back.Re.StoreUnsafe(ref values[i]);
            back.Im.StoreUnsafe(ref values[n + i]);
            on.Re.StoreUnsafe(ref values[2 * n + i]);
            on.Im.StoreUnsafe(ref values[3 * n + i]);
        }

        return values;
    }

    private static (double Scale, double Shift) Variable(double low, double high)
    {
        var (from, to) = (Math.Sqrt(low), Math.Sqrt(high));
        return (2 / (to - from), -(to + from) / (to - from));
    }
}
