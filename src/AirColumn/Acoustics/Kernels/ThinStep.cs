using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Elements;
using MathNet.Numerics.Integration;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// A step of a cone with thin boundary layers: the Legendre coefficients of −h²Q (see <see cref="ConeLanes"/>) as ω² times polynomials in
/// x = 1/s at its narrower end. Q being a series in 1/a, its Legendre coefficients are those of a⁻ⁿ, which the walls alone decide.
/// </summary>
internal sealed class ThinStep
{
    /// <summary>How many Legendre coefficients are made.</summary>
    public const int Moments = 5;

    private const int Orders = ThinSeries.Orders;
    private const int Points = 12;

    private static readonly int Lanes = Vector512<double>.Count;

    private static readonly double[] Places = new double[Points];

    // [i·8 + m]: weight of point i in Legendre coefficient m.
    private static readonly double[] Weights = new double[Points * Lanes];

    private readonly double unit; // s at the narrower end over √ω
    private readonly double[] coefficients = new double[(Orders + 1) * 2 * Lanes]; // [n·16 + m]: Re, behind eight of them Im
    private readonly double[] sizes = new double[Orders + 1]; // about the largest modulus of each power

    static ThinStep()
    {
        var rule = new GaussLegendreRule(0, 1, Points);
        for (var i = 0; i < Points; i++)
        {
            Places[i] = rule.GetAbscissa(i);
            var t = 2 * Places[i] - 1;
            var (before, now) = (0.0, 1.0);
            for (var m = 0; m < Lanes; m++)
            {
                Weights[i * Lanes + m] = (2 * m + 1) * rule.GetWeight(i) * now;
                (before, now) = (now, ((2 * m + 1) * t * now - m * before) / (m + 1));
            }
        }
    }

    public ThinStep(SectionElement element, ThinSeries series, double length, double near, double far)
    {
        (Length, NearRadius, FarRadius) = (length, near, far);
        var gas = element.Gas;
        var narrow = Math.Min(near, far);
        unit = narrow * Math.Sqrt(gas.Density / gas.Viscosity);
        Span<Vector512<double>> moments = stackalloc Vector512<double>[Orders + 1];
        Powers(near / narrow, far / narrow, moments);
        // −h²μk² over ω², and −h²(a'/a)² with 1/ω² = x⁴·unit⁴.
        var wave = -length * length * element.Frame / (gas.SpeedOfSound * gas.SpeedOfSound);
        var slope = (far - near) / narrow * unit * unit;
        var bend = -slope * slope;
        for (var n = 0; n <= Orders; n++)
        {
            var value = wave * series.Wave[n] * moments[n];
            sizes[n] = Math.Abs(value[0]);
            if (n >= 4)
            {
                // w⁴ = −x⁴.
                var bent = bend * series.Bend[n - 4] * moments[n - 2];
                sizes[n] += Math.Abs(bent[0]);
                value -= bent;
            }

            var turn = ThinSeries.Turns[n];
            (turn.Real * value).StoreUnsafe(ref coefficients[2 * n * Lanes]);
            (turn.Imaginary * value).StoreUnsafe(ref coefficients[(2 * n + 1) * Lanes]);
        }
    }

    /// <summary>m.</summary>
    public double Length { get; }

    public double NearRadius { get; }

    public double FarRadius { get; }

    /// <summary>How far the step may be off at either of two angular frequencies and all between.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Rest(double lowest, double highest)
    {
        var (x, y) = (
            Vector512.Create(1 / (unit * Math.Sqrt(lowest))),
            Vector512.Create(1 / (unit * Math.Sqrt(highest)))
        );
        var zero = Vector512<double>.Zero;
        var (a, b, c, d) = (zero, zero, zero, zero);
        for (var n = Terms(lowest, highest); n >= 0; n--)
        {
            var re = Vector512.LoadUnsafe(ref coefficients[2 * n * Lanes]);
            var im = Vector512.LoadUnsafe(ref coefficients[(2 * n + 1) * Lanes]);
            a = Vector512.FusedMultiplyAdd(a, x, re);
            b = Vector512.FusedMultiplyAdd(b, x, im);
            c = Vector512.FusedMultiplyAdd(c, y, re);
            d = Vector512.FusedMultiplyAdd(d, y, im);
        }

        return Math.Max(
            Rest(lowest * lowest * Vector512.Sqrt(a * a + b * b)),
            Rest(highest * highest * Vector512.Sqrt(c * c + d * d))
        );
    }

    /// <summary>The Legendre coefficients.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void At(in FrequencyLanes frequencies, Span<ComplexLanes> c)
    {
        var x = Vector512<double>.One / (unit * frequencies.Root);
        var zero = Vector512<double>.Zero;
        var (re0, re1, re2, re3, re4) = (zero, zero, zero, zero, zero);
        var (im0, im1, im2, im3, im4) = (zero, zero, zero, zero, zero);
        for (var n = Terms(frequencies.Lowest, frequencies.Highest); n >= 0; n--)
        {
            ref var k = ref coefficients[2 * n * Lanes];
            re0 = Vector512.FusedMultiplyAdd(re0, x, Vector512.Create(k));
            re1 = Vector512.FusedMultiplyAdd(re1, x, Vector512.Create(Unsafe.Add(ref k, 1)));
            re2 = Vector512.FusedMultiplyAdd(re2, x, Vector512.Create(Unsafe.Add(ref k, 2)));
            re3 = Vector512.FusedMultiplyAdd(re3, x, Vector512.Create(Unsafe.Add(ref k, 3)));
            re4 = Vector512.FusedMultiplyAdd(re4, x, Vector512.Create(Unsafe.Add(ref k, 4)));
            im0 = Vector512.FusedMultiplyAdd(im0, x, Vector512.Create(Unsafe.Add(ref k, 8)));
            im1 = Vector512.FusedMultiplyAdd(im1, x, Vector512.Create(Unsafe.Add(ref k, 9)));
            im2 = Vector512.FusedMultiplyAdd(im2, x, Vector512.Create(Unsafe.Add(ref k, 10)));
            im3 = Vector512.FusedMultiplyAdd(im3, x, Vector512.Create(Unsafe.Add(ref k, 11)));
            im4 = Vector512.FusedMultiplyAdd(im4, x, Vector512.Create(Unsafe.Add(ref k, 12)));
        }

        var square = frequencies.Omega * frequencies.Omega;
        c[0] = new ComplexLanes(square * re0, square * im0);
        c[1] = new ComplexLanes(square * re1, square * im1);
        c[2] = new ComplexLanes(square * re2, square * im2);
        c[3] = new ComplexLanes(square * re3, square * im3);
        c[4] = new ComplexLanes(square * re4, square * im4);
    }

    // The highest power that counts; x is greatest at the one end and ω² at the other.
    private int Terms(double lowest, double highest)
    {
        var inverse = unit * Math.Sqrt(lowest);
        var power = ThinSeries.LastPower(inverse);
        var square = highest * highest;
        var n = Orders;
        while (n > 1 && power * square * sizes[n] < ThinSeries.Rounding)
        {
            n--;
            power *= inverse;
        }

        return n;
    }

    // From moduli, what is left out: c₅ adds the fifth spherical Bessel function of half the phase; of the second order what is not in
    // Perturbation; of the third what c₁ does.
    private static double Rest(Vector512<double> c)
    {
        var turn = Math.Sqrt(c[0]);
        var fast = Math.Max(1, turn);
        var cubed = c[1] / fast;
        return 1.2 * c[5] * Math.Min(turn * turn * turn * turn / 20790, 0.6 / (fast * fast))
            + 0.004 * (c[1] * c[4] + c[2] * c[3]) / (fast * fast)
            + 0.004 * cubed * cubed * cubed * Math.Min(1, 0.1 + turn * turn / 16);
    }

    // Legendre coefficients of a⁰, a⁻¹, a⁻² … over the power of the narrower end.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Powers(double near, double far, Span<Vector512<double>> moments)
    {
        moments.Clear();
        for (var i = 0; i < Points; i++)
        {
            var inverse = 1 / (near + (far - near) * Places[i]);
            var value = Vector512.LoadUnsafe(ref Weights[i * Lanes]);
            for (var n = 0; n < moments.Length; n++)
            {
                moments[n] += value;
                value *= inverse;
            }
        }
    }
}
