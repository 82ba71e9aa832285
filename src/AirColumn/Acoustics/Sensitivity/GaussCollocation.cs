using MathNet.Numerics.Integration;

namespace AirColumn.Acoustics.Sensitivity;

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

    /// <summary>[i·Points + j]: the integral from 1 back to place i of the polynomial that is 1 at place j and 0 at the others.</summary>
    public static ReadOnlySpan<double> FromTheEnd => Integrals;

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
