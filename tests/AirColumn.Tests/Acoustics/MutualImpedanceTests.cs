using AirColumn.Acoustics.Radiation;
using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace AirColumn.Tests.Acoustics;

/// <summary>What two holes in a long tube hear of each other at low frequency, against the sum over circular modes.</summary>
public class MutualImpedanceTests
{
    // Of the pressure of a point source in free space: how near the fit comes, farthest off at large distances, where little is heard.
    private const double FitError = 0.0145;

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.75)]
    [InlineData(1)]
    [InlineData(1.5)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(8)]
    public void The_excess_near_a_tube_is_the_static_sum_over_circular_modes(double radii)
    {
        const double Radius = 0.012;
        var heard = MutualImpedance.OfHoles(radii * Radius, Radius);
        Assert.Equal(StaticField(radii) * radii - 1, heard.Excess * radii * Radius, FitError);
    }

    /// <summary>
    /// 4π·r·φ on the wall of a rigid cylinder of radius r, z radii along it from a point source of unit flow in the wall (morse1948): of each
    /// circular mode K_m(x)/(−x·K_m'(x)). ∫cos(xz)/√(m² + x²) = K₀(mz) is taken out, so that integral and sum converge.
    /// </summary>
    private static double StaticField(double z)
    {
        const double Highest = 400;
        const double Far = 40; // mz, beyond which e^(−mz) is nothing
        var sum = SpecialFunctions.BesselK(0, z);
        for (var m = 1; m * z < Far; m++)
        {
            sum += 2 * SpecialFunctions.BesselK(0, m * z);
        }

        // Panels of half a unit or about a third of a period, whichever is less.
        var panel = Math.Min(0.5, 2 / z);
        for (var x = 0.0; x < Highest; x += panel)
        {
            sum += GaussLegendreRule.Integrate(Rest, x, x + panel, 8);
        }

        return 2 / Math.PI * sum;

        double Rest(double x)
        {
            // K₁/K₀, then K_m/K_{m−1}, upwards, which is stable.
            var ratio = SpecialFunctions.BesselKScaled(1, x) / SpecialFunctions.BesselKScaled(0, x);
            var all = 1 / (x * ratio) - 1 / Math.Sqrt(1 + x * x);
            for (var m = 1; m * z < Far; m++)
            {
                all += 2 * (1 / (x / ratio + m) - 1 / Math.Sqrt(m * m + x * x));
                ratio = 1 / ratio + 2 * m / x;
            }

            return Math.Cos(x * z) * all;
        }
    }
}
