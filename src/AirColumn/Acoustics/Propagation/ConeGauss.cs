using System.Runtime.CompilerServices;

namespace AirColumn.Acoustics.Propagation;

/// <summary>
/// Legendre moments over a step of the powers 0, 1, 2, … of one over a radius that changes evenly, by five Gauss points
/// (abramowitz1964, table 25.4).
/// </summary>
internal struct ConeGauss
{
    private const double Outer = 0.9061798459386640;
    private const double Inner = 0.5384693101056831;
    private const double OuterWeight = 0.2369268850561891;
    private const double InnerWeight = 0.4786286704993665;
    private const double MiddleWeight = 0.5688888888888889;

    private readonly double i0;
    private readonly double i1;
    private readonly double i2;
    private readonly double i3;
    private readonly double i4;
    private double p0 = 1;
    private double p1 = 1;
    private double p2 = 1;
    private double p3 = 1;
    private double p4 = 1;

    /// <summary>Of a radius that goes from middle − half to middle + half.</summary>
    public ConeGauss(double middle, double half)
    {
        (i0, i1, i2) = (1 / (middle - half * Outer), 1 / (middle - half * Inner), 1 / middle);
        (i3, i4) = (1 / (middle + half * Inner), 1 / (middle + half * Outer));
    }

    /// <summary>The points, −1 to 1, for what is not a power.</summary>
    public static ReadOnlySpan<double> Places => [-Outer, -Inner, 0, Inner, Outer];

    /// <summary>Their weights, 2 in sum.</summary>
    public static ReadOnlySpan<double> Weights =>
        [OuterWeight, InnerWeight, MiddleWeight, InnerWeight, OuterWeight];

    /// <summary>Legendre's P₄.</summary>
    public static double Fourth(double t) => 0.125 * (35 * t * t * t * t - 30 * t * t + 3);

    /// <summary>The first five moments; only the mean where the radius stays.</summary>
    /// <param name="isStraight">Whether it stays.</param>
    /// <param name="moments">The first of those that receive them, (2n + 1)/2·∫Pₙ dt.</param>
    public readonly void Moments(bool isStraight, ref double moments)
    {
        if (isStraight)
        {
            moments = p2;
            return;
        }

        // Even and odd sums of mirrored points.
        var (outer, inner, middle) = (
            0.5 * OuterWeight * (p0 + p4),
            0.5 * InnerWeight * (p1 + p3),
            0.5 * MiddleWeight * p2
        );
        var (outerOdd, innerOdd) = (0.5 * OuterWeight * (p4 - p0), 0.5 * InnerWeight * (p3 - p1));
        moments = outer + inner + middle;
        Unsafe.Add(ref moments, 1) = 3 * (Outer * outerOdd + Inner * innerOdd);
        Unsafe.Add(ref moments, 2) = 5 * (Second(Outer) * outer + Second(Inner) * inner - 0.5 * middle);
        Unsafe.Add(ref moments, 3) = 7 * (Third(Outer) * outerOdd + Third(Inner) * innerOdd);
        Unsafe.Add(ref moments, 4) = 9 * (Fourth(Outer) * outer + Fourth(Inner) * inner + 0.375 * middle);
    }

    /// <summary>Goes on to the next power.</summary>
    public void Next() => (p0, p1, p2, p3, p4) = (p0 * i0, p1 * i1, p2 * i2, p3 * i3, p4 * i4);

    private static double Second(double t) => 1.5 * t * t - 0.5;

    private static double Third(double t) => (2.5 * t * t - 1.5) * t;
}
