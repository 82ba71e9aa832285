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
    private const double WorstTurn = 4.8; // radians, see LeftOut

    private static readonly int Lanes = Vector512<double>.Count;

    private static readonly double[] Places = new double[Points];

    // [i·8 + m]: weight of point i in Legendre coefficient m.
    private static readonly double[] Weights = new double[Points * Lanes];

    private readonly double unit; // s at the narrower end over √ω
    private readonly int terms; // the highest power that counts
    private readonly double[] coefficients; // [n·16 + m]: Re, behind eight of them Im

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

    /// <summary>A step from one radius to another, m, for angular frequencies from the lowest to the highest.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    [SkipLocalsInit]
    public ThinStep(
        SectionElement element,
        ThinSeries series,
        double length,
        double near,
        double far,
        double lowest,
        double highest
    )
    {
        Length = length;
        var gas = element.Gas;
        var narrow = Math.Min(near, far);
        unit = narrow * Math.Sqrt(gas.Density / gas.Viscosity);
        // −h²μk² over ω², and −h²(a'/a)² with 1/ω² = x⁴·unit⁴.
        var wave = -length * length * element.Frame / (gas.SpeedOfSound * gas.SpeedOfSound);
        var slope = (far - near) / narrow * unit * unit;
        var bend = -slope * slope;
        terms = series.Terms(unit * Math.Sqrt(lowest), highest * highest, Math.Abs(wave), Math.Abs(bend));
        coefficients = GC.AllocateUninitializedArray<double>((terms + 1) * 2 * Lanes);
        Span<Vector512<double>> moments = stackalloc Vector512<double>[Orders + 1];
        moments = moments[..(terms + 1)];
        Powers(near / narrow, far / narrow, moments);
        for (var n = 0; n < moments.Length; n++)
        {
            var value = wave * series.Wave[n] * moments[n];
            if (n >= 4)
            {
                // w⁴ = −x⁴.
                value -= bend * series.Bend[n - 4] * moments[n - 2];
            }

            var turn = ThinSeries.Turns[n];
            (turn.Real * value).StoreUnsafe(ref coefficients[2 * n * Lanes]);
            (turn.Imaginary * value).StoreUnsafe(ref coefficients[(2 * n + 1) * Lanes]);
        }

        Rest = RestBetween(lowest, highest);
    }

    /// <summary>m.</summary>
    public double Length { get; }

    /// <summary>How far it may be off between its lowest and its highest frequency.</summary>
    public double Rest { get; }

    /// <summary>The Legendre coefficients.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void At(in FrequencyLanes frequencies, Span<ComplexLanes> c)
    {
        var x = Vector512<double>.One / (unit * frequencies.Root);
        var zero = Vector512<double>.Zero;
        var (re0, re1, re2, re3, re4) = (zero, zero, zero, zero, zero);
        var (im0, im1, im2, im3, im4) = (zero, zero, zero, zero, zero);
        for (var n = terms; n >= 0; n--)
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

    // Greatest at an end, or where the turn, which grows as ω nearly, is that of the greatest rest of c₅.
    private double RestBetween(double lowest, double highest)
    {
        var (atLowest, turn) = RestAt(lowest);
        var (atHighest, turnAtHighest) = RestAt(highest);
        var rest = Math.Max(atLowest, atHighest);
        return turn < WorstTurn && turnAtHighest > WorstTurn
            ? Math.Max(rest, RestAt(highest * WorstTurn / turnAtHighest).LeftOut)
            : rest;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private (double LeftOut, double Turn) RestAt(double omega)
    {
        var x = Vector512.Create(1 / (unit * Math.Sqrt(omega)));
        var (re, im) = (Vector512<double>.Zero, Vector512<double>.Zero);
        for (var n = terms; n >= 0; n--)
        {
            ref var k = ref coefficients[2 * n * Lanes];
            re = Vector512.FusedMultiplyAdd(re, x, Vector512.LoadUnsafe(ref k));
            im = Vector512.FusedMultiplyAdd(im, x, Vector512.LoadUnsafe(ref Unsafe.Add(ref k, Lanes)));
        }

        var sizes = omega * omega * Vector512.Sqrt(re * re + im * im);
        return (LeftOut(sizes), Math.Sqrt(sizes[0]));
    }

    // From moduli, what is left out: c₅ adds the fifth spherical Bessel function of half the phase; of the second order what is not in
    // Perturbation; of the third what c₁ does.
    private static double LeftOut(Vector512<double> c)
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
