using System.Numerics;

namespace AirColumn.Tests.Oracle;

/// <summary>
/// F(x) = 2J₁(x)/(x·J₀(x)) at x = s·√(−j), the boundary-layer function of a circular duct, and 1 − F, which cancels
/// when formed from F at small s (source: zwikker1949, ch. II; tijdeman1975).
/// </summary>
internal static class BesselRatio
{
    // Where the growing Hankel function alone gives the ratio to the last digit: exp(−√2·s) is below 1e-17.
    private const double AsymptoticFrom = 28;

    private static readonly Complex RootOfMinusJ = new(Math.Sqrt(0.5), -Math.Sqrt(0.5));

    /// <summary>F and 1 − F for s &gt; 0; to about 1e-15 relative each.</summary>
    public static (Complex F, Complex OneMinusF) At(double s)
    {
        var x = s * RootOfMinusJ;
        if (s > AsymptoticFrom)
        {
            var f = 2 * AsymptoticRatio(x) / x;
            return (f, 1 - f);
        }

        var (first, second) = RatiosByRecurrence(x, s);
        return (2 * first / x, -first * second);
    }

    // J₁/J₀ and J₂/J₁ by the continued fraction of J(n)/J(n−1) = 1/(2n/x − J(n+1)/J(n)), run backwards, which is
    // the stable direction (DLMF 10.10.1). 1 − F = −J₂/J₀ then needs no subtraction.
    private static (Complex First, Complex Second) RatiosByRecurrence(Complex x, double s)
    {
        var start = 16 + (int)(1.5 * s);
        var twoOverX = 2 / x;
        var ratio = Complex.Zero;
        for (var n = start; n > 2; n--)
        {
            ratio = 1 / (n * twoOverX - ratio);
        }

        var second = 1 / (2 * twoOverX - ratio);
        return (1 / (twoOverX - second), second);
    }

    // In the lower half plane J(n) is the Hankel function of the first kind over two, up to exp(−2·|Im x|);
    // its ratio by the large-argument series (DLMF 10.17.5): H₁/H₀ = −j·Σ aₖ(1)(j/x)ᵏ / Σ aₖ(0)(j/x)ᵏ.
    private static Complex AsymptoticRatio(Complex x)
    {
        var step = Complex.ImaginaryOne / x;
        var (sum0, sum1) = (Complex.One, Complex.One);
        var (term0, term1) = (Complex.One, Complex.One);
        for (var k = 1; k <= 20; k++)
        {
            var odd = (2 * k - 1) * (2 * k - 1);
            term0 *= step * ((0.0 - odd) / (8 * k));
            term1 *= step * ((4.0 - odd) / (8 * k));
            sum0 += term0;
            sum1 += term1;
            if (Math.Abs(term0.Real) + Math.Abs(term0.Imaginary) < 1e-18)
            {
                break;
            }
        }

        return -Complex.ImaginaryOne * sum1 / sum0;
    }
}
