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
    private const int More = 16; // where those were too few
    private const int MostNodes = 160;
    private const double MostAmplitude = 1e150; // squares stay finite
    private const double BlockTurn = 0.9; // radians to either side of its middle, for which the highest degree of a block is enough

    private readonly double rest; // how far each wave may be off
    private readonly double[] coefficients; // of Re p⁻, Im p⁻, Re p⁺, Im p⁺, one after the other
    private readonly WaveBlock?[] blocks; // of equal width in √f; made when first asked for

    private WaveSegment(WaveColumn column, double low, double high, double[] coefficients, double rest)
    {
        (Impedance, this.rest) = (column.Impedance, rest);
        (Low, High, this.coefficients) = (low, high, coefficients);
        (Scale, Shift) = Variable(low, high);
        blocks = new WaveBlock?[Math.Max(1, (int)Math.Ceiling(Turns(column, low, high) / BlockTurn))];
    }

    /// <summary>ρc/S at the blown end.</summary>
    public double Impedance { get; }

    /// <summary>Hz.</summary>
    public double Low { get; }

    public double High { get; }

    /// <summary>The variable of its series is Scale·√f + Shift, −1 to 1.</summary>
    public double Scale { get; }

    public double Shift { get; }

    /// <summary>Fits the waves so that nothing above <paramref name="allowed"/> is left out; null if too many nodes are needed.</summary>
    public static WaveSegment? Fit(
        WaveColumn column,
        double low,
        double high,
        double tolerance,
        double allowed
    )
    {
        for (var n = FewestNodes(column, low, high, allowed); n <= MostNodes; n += More)
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

            if (!(largest < MostAmplitude))
            {
                return null;
            }

            if (tail <= allowed * largest)
            {
                // The tail four times over, and the rounding of a sum of n.
                var rest = 4 * tail + 1e-16 * n * largest;
                return new WaveSegment(column, low, high, coefficients, rest);
            }
        }

        return null;
    }

    /// <summary>How many nodes a fit takes at least.</summary>
    public static int FewestNodes(WaveColumn column, double low, double high, double allowed) =>
        NodesFor(Turns(column, low, high), allowed);

    /// <summary>
    /// How many nodes a wave takes that turns by so many radians for each unit of the variable: its Chebyshev coefficients are Bessel functions
    /// Jₖ(x), about (x/2)ᵏ·exp(−x²/4k)/k!, of which the last four are to be below what is allowed.
    /// </summary>
    public static int NodesFor(double turns, double allowed)
    {
        var (k, log, least) = (0, 0.0, Math.Log(allowed));
        while (log - turns * turns / (4 * Math.Max(k, 1)) > least || k < turns)
        {
            k++;
            log += Math.Log(turns / 2 / k);
        }

        return ComplexLanes.Count * (int)Math.Ceiling((k + 4.0) / ComplexLanes.Count);
    }

    /// <summary>Radians by which the waves turn for each unit of the variable, which runs from −1 to 1, where they do so fastest.</summary>
    public static double Turns(WaveColumn column, double low, double high) => Turns(column.Delay, low, high);

    /// <summary>The same of what sound takes so long to pass, s.</summary>
    public static double Turns(double delay, double low, double high)
    {
        var root = Math.Sqrt(high);
        return 2 * Math.PI * delay * root * (root - Math.Sqrt(low));
    }

    /// <summary>Whether it holds a frequency.</summary>
    public bool Holds(double hertz) => hertz >= Low && hertz <= High;

    /// <summary>
    /// Pressure and flow at the blown end, with the air outside it, at frequencies in it: up to a factor that is smooth in frequency.
    /// </summary>
    public void At(ReadOnlySpan<double> hertz, Span<Complex> pressures, Span<Complex> flows)
    {
        Span<double> some = stackalloc double[ComplexLanes.Count];
        for (var i = 0; i < hertz.Length; i += ComplexLanes.Count)
        {
            var count = Math.Min(ComplexLanes.Count, hertz.Length - i);
            some.Fill(hertz[i + count - 1]);
            hertz.Slice(i, count).CopyTo(some);
            var (back, on) = WavesAt(Vector512.Create<double>(some));
            var (p, u) = (on + back, (1 / Impedance) * (on - back));
            for (var lane = 0; lane < count; lane++)
            {
                (pressures[i + lane], flows[i + lane]) = (p.Lane(lane), u.Lane(lane));
            }
        }
    }

    /// <summary>
    /// Chebyshev series of the pressure at the blown end and of the flow there times <see cref="Impedance"/>, up to a factor that is smooth in
    /// frequency: real and imaginary parts in turn.
    /// </summary>
    public (double[] Pressure, double[] Flow) Series()
    {
        var n = coefficients.Length / 4;
        var (pressure, flow) = (new double[2 * n], new double[2 * n]);
        for (var k = 0; k < n; k++)
        {
            for (var part = 0; part < 2; part++)
            {
                var (back, on) = (coefficients[part * n + k], coefficients[(2 + part) * n + k]);
                (pressure[2 * k + part], flow[2 * k + part]) = (on + back, on - back);
            }
        }

        return (pressure, flow);
    }

    /// <summary>Z at frequencies in it, fastest in rising order, and how far any may be off, relative.</summary>
    public double Impedances(ReadOnlySpan<double> hertz, Span<double> real, Span<double> imaginary)
    {
        var worst = 0.0;
        var i = 0;
        while (i < hertz.Length)
        {
            var block = BlockAt(hertz[i]);
            var end = i + 1;
            while (end < hertz.Length && hertz[end] >= block.Low && hertz[end] < block.High)
            {
                end++;
            }

            var re = real[i..end];
            var im = imaginary[i..end];
            if (block.IsDirect)
            {
                worst = Math.Max(worst, OneByOne(hertz[i..end], re, im));
            }
            else
            {
                WaveKernel.Run(block, hertz[i..end], re, im);
                worst = Math.Max(worst, rest * block.WaveScale / block.LeastOn * Magnification(re, im));
            }

            i = end;
        }

        return worst;
    }

    // The part of it that holds a frequency, in which polynomials of the waves are of low degree.
    private WaveBlock BlockAt(double hertz)
    {
        var place = (Math.Sqrt(hertz) - Math.Sqrt(Low)) / (Math.Sqrt(High) - Math.Sqrt(Low));
        var index = Math.Clamp((int)(place * blocks.Length), 0, blocks.Length - 1);
        // Rounding of the root may be one off.
        index += hertz < EndOf(index) ? -1 : 0;
        index += hertz >= EndOf(index + 1) ? 1 : 0;
        index = Math.Clamp(index, 0, blocks.Length - 1);
        var block = Volatile.Read(ref blocks[index]);
        if (block is null)
        {
            block = WholeBlock.Of(this, EndOf(index), EndOf(index + 1));
            Volatile.Write(ref blocks[index], block);
        }

        return block;
    }

    private double EndOf(int index)
    {
        var (from, to) = (Math.Sqrt(Low), Math.Sqrt(High));
        var root = from + (to - from) * index / blocks.Length;
        return root * root;
    }

    // What an error of either wave over |p⁺| may become in Z. With z = Z over the impedance of the waves p = 2z/(z + 1)·p⁺ and
    // u = 2/(z + 1)·p⁺, each the sum of two waves, so that it is |z + 1|·(1 + 1/|z|).
    private double Magnification(ReadOnlySpan<double> real, ReadOnlySpan<double> imaginary)
    {
        var (least, most) = (double.PositiveInfinity, 0.0);
        for (var i = 0; i < real.Length; i++)
        {
            var square = Math.FusedMultiplyAdd(real[i], real[i], imaginary[i] * imaginary[i]);
            least = Math.Min(least, square);
            most = Math.Max(most, square);
        }

        return Math.Sqrt(most) / Impedance + 2 + Impedance / Math.Sqrt(least);
    }

    private double OneByOne(ReadOnlySpan<double> hertz, Span<double> real, Span<double> imaginary)
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

        return ComplexLanes.Largest(worst);
    }

    // Frequencies in, Re and Im of Z out behind them.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Eight(Span<double> some, ref Vector512<double> worst)
    {
        var (back, on) = WavesAt(Vector512.LoadUnsafe(ref some[0]));
        var (p, u) = (on + back, on - back);
        var z = Impedance * (p / u);
        z.Re.StoreUnsafe(ref some[ComplexLanes.Count]);
        z.Im.StoreUnsafe(ref some[2 * ComplexLanes.Count]);
        // Of p and u, each the sum of two waves.
        var one = Vector512<double>.One;
        var off = (one / Vector512.Sqrt(p.Norm) + one / Vector512.Sqrt(u.Norm)) * (2 * rest);
        worst = Vector512.Max(worst, off);
    }

    /// <summary>(p⁻, p⁺)·a at the blown end at eight frequencies in it, Hz.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (ComplexLanes Back, ComplexLanes On) WavesAt(Vector512<double> hertz)
    {
        var n = coefficients.Length / 4;
        ref var c = ref coefficients[0];
        var t = Vector512.FusedMultiplyAdd(
            Vector512.Sqrt(hertz),
            Vector512.Create(Scale),
            Vector512.Create(Shift)
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
        return (back, on);
    }

    private static double[] Values(WaveColumn column, double low, double high, int n, double tolerance)
    {
        var values = new double[4 * n];
        for (var i = 0; i < n; i += ComplexLanes.Count)
        {
            var (back, on) = column.Waves(FrequencyLanes.AtNodes(low, high, n, i), tolerance);
            back.Re.StoreUnsafe(ref values[i]);
            back.Im.StoreUnsafe(ref values[n + i]);
            on.Re.StoreUnsafe(ref values[2 * n + i]);
            on.Im.StoreUnsafe(ref values[3 * n + i]);
        }

        return values;
    }

    /// <summary>The variable of a series, −1 to 1: Scale·√f + Shift.</summary>
    public static (double Scale, double Shift) Variable(double low, double high)
    {
        var (from, to) = (Math.Sqrt(low), Math.Sqrt(high));
        return (2 / (to - from), -(to + from) / (to - from));
    }
}
