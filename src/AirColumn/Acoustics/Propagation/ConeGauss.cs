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

    private static readonly Vector128<double> Outer01 = Vector128.Create(1, 3 * Outer) * (0.5 * OuterWeight);
    private static readonly Vector128<double> Inner01 = Vector128.Create(1, 3 * Inner) * (0.5 * InnerWeight);
    private static readonly Vector128<double> Middle01 = Vector128.CreateScalar(0.5 * MiddleWeight);
    private static readonly Vector128<double> Outer23 =
        Vector128.Create(5 * Second(Outer), 7 * Third(Outer)) * (0.5 * OuterWeight);
    private static readonly Vector128<double> Inner23 =
        Vector128.Create(5 * Second(Inner), 7 * Third(Inner)) * (0.5 * InnerWeight);
    private static readonly Vector128<double> Middle23 = Vector128.CreateScalar(-1.25 * MiddleWeight);
    private static readonly Vector128<double> Outer4 = Vector128.CreateScalar(
        4.5 * Fourth(Outer) * OuterWeight
    );
    private static readonly Vector128<double> Inner4 = Vector128.CreateScalar(
        4.5 * Fourth(Inner) * InnerWeight
    );
    private static readonly Vector128<double> Middle4 = Vector128.CreateScalar(4.5 * 0.375 * MiddleWeight);

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

    /// <summary>The first five moments, (2n + 1)/2·∫Pₙ dt; only the mean where the radius stays.</summary>
    public readonly GaussMoments Moments(bool isStraight)
    {
        if (isStraight)
        {
            return new GaussMoments(Vector128.CreateScalar(p2), default, default);
        }

        // Sums of mirrored points for the even ones, differences for the odd ones.
        var outer = Vector128.Create(p0 + p4, p4 - p0);
        var inner = Vector128.Create(p1 + p3, p3 - p1);
        var middle = Vector128.CreateScalar(p2);
        return new GaussMoments(
            Outer01 * outer + Inner01 * inner + Middle01 * middle,
            Outer23 * outer + Inner23 * inner + Middle23 * middle,
            Outer4 * outer + Inner4 * inner + Middle4 * middle
        );
    }

    /// <summary>Goes on to the next power.</summary>
    public void Next() => (p0, p1, p2, p3, p4) = (p0 * i0, p1 * i1, p2 * i2, p3 * i3, p4 * i4);

    private static double Second(double t) => 1.5 * t * t - 0.5;

    private static double Third(double t) => (2.5 * t * t - 1.5) * t;
}

/// <summary>Five moments, two and two, and none.</summary>
internal readonly record struct GaussMoments(
    Vector128<double> First,
    Vector128<double> Second,
    Vector128<double> Third
);
