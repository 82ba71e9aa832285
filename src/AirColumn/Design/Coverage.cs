using MathNet.Numerics;
using MathNet.Numerics.RootFinding;

namespace AirColumn;

/// <summary>How many standard deviations hold 95 % of a sum of independent errors, some uniform, some normal.</summary>
internal static class Coverage
{
    /// <summary>Of a normal distribution.</summary>
    public static readonly double OfNormal = Math.Sqrt(2) * SpecialFunctions.ErfInv(0.95);

    private const int Steps = 4000;
    private const double Highest = 60; // of t·σ: what lies beyond is worth less than 1e-3 of a standard deviation

    /// <summary>
    /// The factor for uniform errors of these standard deviations and a normal one, by their characteristic function: the distribution
    /// is F(x) = ½ + (1/π)·∫ φ(t)·sin(tx)/t dt over t &gt; 0, since it is symmetric (source: gilpelaez1951).
    /// </summary>
    public static double Factor(IReadOnlyList<double> uniform, double normal)
    {
        var sigma = Math.Sqrt(uniform.Sum(s => s * s) + normal * normal);
        if (sigma == 0)
        {
            return OfNormal;
        }

        var largest = uniform.DefaultIfEmpty().Max() / sigma;
        if (largest > 0.999)
        {
            // As good as one alone.
            return 0.95 * Math.Sqrt(3);
        }

        var step = Highest / Steps;
        var weights = new double[Steps];
        for (var i = 0; i < Steps; i++)
        {
            // Midpoints: the integrand is even and falls off, so that equal steps converge fast.
            var t = (i + 0.5) * step;
            var value = Math.Exp(-0.5 * t * t * normal * normal / (sigma * sigma));
            foreach (var s in uniform)
            {
                value *= Trig.Sinc(t * Math.Sqrt(3) * s / sigma / Math.PI);
            }

            weights[i] = value * step / (Math.PI * t);
        }

        return Brent.FindRoot(Beyond, 1, 3, 1e-9, 100);

        double Beyond(double x)
        {
            var sum = 0.5;
            for (var i = 0; i < Steps; i++)
            {
                sum += weights[i] * Math.Sin((i + 0.5) * step * x);
            }

            return sum - 0.975;
        }
    }
}
