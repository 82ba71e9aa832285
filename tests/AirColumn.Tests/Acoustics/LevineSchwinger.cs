using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace AirColumn.Tests.Acoustics;

/// <summary>
/// The integrals of levine1948 (as stated in the header of radiation-unflanged.csv) by Gauss-Legendre quadrature with
/// Bessel functions of a general-purpose library: a check of the interpolation between tabulated values.
/// </summary>
internal static class LevineSchwinger
{
    // |R| = exp{−(2ka/π)·∫₀^ka atan(−J₁/N₁)/(x√(k²a² − x²)) dx}; x = ka·sin θ takes the root away.
    public static double Modulus(double ka)
    {
        var integral = OverQuarterTurn(theta =>
        {
            var x = ka * Math.Sin(theta);
            return Math.Atan2(SpecialFunctions.BesselJ(1, x), -SpecialFunctions.BesselY(1, x)) / x;
        });
        return Math.Exp(-2 * ka / Math.PI * integral);
    }

    // l/a = (1/π)·{∫₀^ka ln[πJ₁√(J₁² + N₁²)]/(x√(k²a² − x²)) dx + ∫₀^∞ ln[1/(2I₁K₁)]/(x√(x² + k²a²)) dx}; x = eᵘ in the second.
    public static double EndCorrection(double ka)
    {
        var near = OverQuarterTurn(theta =>
        {
            var x = ka * Math.Sin(theta);
            var (j, n) = (SpecialFunctions.BesselJ(1, x), SpecialFunctions.BesselY(1, x));
            return Math.Log(Math.PI * j * Math.Sqrt(j * j + n * n)) / x;
        });
        var far = Panels(
            -18,
            34,
            104,
            u =>
            {
                var x = Math.Exp(u);
                return -Math.Log(TwiceI1K1(x)) / Math.Sqrt(x * x + ka * ka);
            }
        );
        return (near + far) / Math.PI;
    }

    // 2·I₁·K₁, beyond 40 by its asymptotic series (DLMF 10.40.6), where I₁ would overflow in time.
    private static double TwiceI1K1(double x)
    {
        if (x < 40)
        {
            return 2 * SpecialFunctions.BesselI1(x) * SpecialFunctions.BesselK1(x);
        }

        var y = 1 / (4 * x * x);
        return (1 - 1.5 * y * (1 + 3.75 * y)) / x;
    }

    private static double OverQuarterTurn(Func<double, double> f) => Panels(0, Math.PI / 2, 24, f);

    private static double Panels(double from, double to, int count, Func<double, double> f)
    {
        var width = (to - from) / count;
        return Enumerable
            .Range(0, count)
            .Sum(i => GaussLegendreRule.Integrate(f, from + i * width, from + (i + 1) * width, 20));
    }
}
