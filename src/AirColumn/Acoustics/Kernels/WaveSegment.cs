using System.Numerics;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// The waves (p⁻, p⁺)·a at the blown end over a few resonances, as Chebyshev series in √f: for a fixed wave at the far end both
/// are smooth in frequency whatever resonates, since neither is divided by the other.
/// </summary>
internal sealed class WaveSegment
{
    private const int FewestNodes = 32;
    private const int MostNodes = 128;

    private readonly double scale;
    private readonly double shift;
    private readonly double impedance; // ρc/S
    private readonly double[] coefficients; // of Re p⁻, Im p⁻, Re p⁺, Im p⁺, one after the other

    private WaveSegment(double low, double high, double impedance, double[] coefficients)
    {
        this.impedance = impedance;
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
                return new WaveSegment(low, high, column.Impedance, coefficients);
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
