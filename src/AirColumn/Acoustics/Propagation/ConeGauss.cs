using System.Runtime.Intrinsics;

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

    /// <summary>Four points for what is not a power, and their weights.</summary>
    public static ReadOnlySpan<double> FewPlaces =>
        [-0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526];

    public static ReadOnlySpan<double> FewWeights =>
        [0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538];

    /// <summary>The first four moments, two and two; only the mean where the radius stays.</summary>
    public readonly void Moments(bool isStraight, out Vector128<double> low, out Vector128<double> high)
    {
        if (isStraight)
        {
            (low, high) = (Vector128.CreateScalar(p2), Vector128<double>.Zero);
            return;
        }

        // Even and odd sums of mirrored points, times (2n + 1)/2·Pₙ.
        var (outer, inner, middle) = (
            0.5 * OuterWeight * (p0 + p4),
            0.5 * InnerWeight * (p1 + p3),
            0.5 * MiddleWeight * p2
        );
        var (outerOdd, innerOdd) = (0.5 * OuterWeight * (p4 - p0), 0.5 * InnerWeight * (p3 - p1));
        low = Vector128.Create(outer + inner + middle, 3 * (Outer * outerOdd + Inner * innerOdd));
        high = Vector128.Create(
            5 * (Second(Outer) * outer + Second(Inner) * inner - 0.5 * middle),
            7 * (Third(Outer) * outerOdd + Third(Inner) * innerOdd)
        );
    }

    /// <summary>Goes on to the next power.</summary>
    public void Next() => (p0, p1, p2, p3, p4) = (p0 * i0, p1 * i1, p2 * i2, p3 * i3, p4 * i4);

    private static double Second(double t) => 1.5 * t * t - 0.5;

    private static double Third(double t) => (2.5 * t * t - 1.5) * t;
}
