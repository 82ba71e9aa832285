using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using AirColumn.Acoustics.Vectors;
using MathNet.Numerics.Integration;

namespace AirColumn.Acoustics.Propagation;

/// <summary>
/// Collocation at six Gauss points, of order 12 (source: hairer2006). Being symplectic, its discrete solution has its exact discrete
/// gradient in the same points: no quadrature error comes on top.
/// </summary>
internal static class GaussCollocation
{
    public const int Points = 6;

    /// <summary>Where in a step, 0 to 1.</summary>
    public static readonly double[] Places = new double[Points];

    public static readonly double[] Weights = new double[Points];

    /// <summary>What the values at the places give to the polynomial through them at 0; mirrored, at 1.</summary>
    public static readonly double[] AtEnd = new double[Points];

    // [i·Points + j]: the integral from 1 back to place i of the polynomial that is 1 at place j and 0 at the others.
    private static readonly double[] Integrals = new double[Points * Points];

    static GaussCollocation()
    {
        // The rule itself integrates those polynomials from 0 to a place, of fifth degree, exactly.
        var rule = new GaussLegendreRule(0, 1, Points);
        for (var i = 0; i < Points; i++)
        {
            (Places[i], Weights[i]) = (rule.GetAbscissa(i), rule.GetWeight(i));
        }

        for (var i = 0; i < Points; i++)
        {
            AtEnd[i] = Lagrange(i, 0);
            for (var j = 0; j < Points; j++)
            {
                var integral = 0.0;
                for (var n = 0; n < Points; n++)
                {
                    integral += Weights[n] * Lagrange(j, Places[i] * Places[n]);
                }

                // The points lie mirrored: the last is the first from the end.
                Integrals[(Points - 1 - i) * Points + Points - 1 - j] = Places[i] * integral;
            }
        }
    }

    /// <summary>
    /// Pressure and flow over a step, from the side of the far end: dp/dy = Z'·U, dU/dy = Y'·p, y towards the blown end. Each round adds
    /// two terms of the exponential series of the turn.
    /// </summary>
    /// <param name="series">Z' times the step at the points.</param>
    /// <param name="shunt">Y' times the step at the points.</param>
    /// <param name="p">Pressure before and after.</param>
    /// <param name="u">Flow before and after.</param>
    /// <param name="pressure">Receives the pressure at the points.</param>
    /// <param name="flow">Receives the flow at the points.</param>
    /// <param name="rounds">See <see cref="Rounds"/>.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Step(
        ReadOnlySpan<ComplexVector> series,
        ReadOnlySpan<ComplexVector> shunt,
        ref ComplexVector p,
        ref ComplexVector u,
        Span<ComplexVector> pressure,
        Span<ComplexVector> flow,
        int rounds
    )
    {
        pressure.Fill(p);
        for (var round = 0; round < rounds; round++)
        {
            Integrate(shunt, pressure, u, flow);
            Integrate(series, flow, p, pressure);
        }

        for (var i = 0; i < Points; i++)
        {
            p = ComplexVector.MultiplyAdd(Weights[i] * series[i], flow[i], p);
            u = ComplexVector.MultiplyAdd(Weights[i] * shunt[i], pressure[i], u);
        }
    }

    /// <summary>How many rounds leave out less than is allowed of a step over which the wave turns by so many radians.</summary>
    public static int Rounds(double turn, double allowed)
    {
        var (rounds, term) = (1, turn * turn / 2);
        while (term > allowed)
        {
            rounds++;
            term *= turn * turn / (2 * rounds * (2 * rounds - 1));
        }

        return rounds;
    }

    // The integral of slope·value from the side of the far end, where it is start.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Integrate(
        ReadOnlySpan<ComplexVector> slope,
        ReadOnlySpan<ComplexVector> value,
        in ComplexVector start,
        Span<ComplexVector> integral
    )
    {
        var rise0 = slope[0] * value[0];
        var rise1 = slope[1] * value[1];
        var rise2 = slope[2] * value[2];
        var rise3 = slope[3] * value[3];
        var rise4 = slope[4] * value[4];
        var rise5 = slope[5] * value[5];
        ref var weight = ref MemoryMarshal.GetArrayDataReference(Integrals);
        for (var i = 0; i < Points; i++)
        {
            var w = Vector.Create(weight);
            var re = RealVectors.MultiplyAdd(w, rise0.Re, start.Re);
            var im = RealVectors.MultiplyAdd(w, rise0.Im, start.Im);
            w = Vector.Create(Unsafe.Add(ref weight, 1));
            var (re1, im1) = (w * rise1.Re, w * rise1.Im);
            w = Vector.Create(Unsafe.Add(ref weight, 2));
            re = RealVectors.MultiplyAdd(w, rise2.Re, re);
            im = RealVectors.MultiplyAdd(w, rise2.Im, im);
            w = Vector.Create(Unsafe.Add(ref weight, 3));
            re1 = RealVectors.MultiplyAdd(w, rise3.Re, re1);
            im1 = RealVectors.MultiplyAdd(w, rise3.Im, im1);
            w = Vector.Create(Unsafe.Add(ref weight, 4));
            re = RealVectors.MultiplyAdd(w, rise4.Re, re);
            im = RealVectors.MultiplyAdd(w, rise4.Im, im);
            w = Vector.Create(Unsafe.Add(ref weight, 5));
            re1 = RealVectors.MultiplyAdd(w, rise5.Re, re1);
            im1 = RealVectors.MultiplyAdd(w, rise5.Im, im1);
            integral[i] = new ComplexVector(re + re1, im + im1);
            weight = ref Unsafe.Add(ref weight, Points);
        }
    }

    private static double Lagrange(int j, double x)
    {
        var value = 1.0;
        for (var i = 0; i < Points; i++)
        {
            value *= i == j ? 1 : (x - Places[i]) / (Places[j] - Places[i]);
        }

        return value;
    }
}
