namespace AirColumn.Acoustics.Losses;

/// <summary>
/// The loss functions where the boundary layer is thin, as series in w = 1/(√j·s): real coefficients of w⁰, w¹, … from the quotient
/// of the Hankel series (DLMF 10.17.5). Slopes are exact: D wⁿ = −n·wⁿ.
/// </summary>
internal sealed class LossSeries
{
    /// <summary>How many terms; at s = 25 the next is below 1e-15.</summary>
    public const int Orders = 18;

    /// <summary>Of F(s).</summary>
    public static readonly double[] OfF = Quotient();

    public LossSeries(WallLosses model, double excess, double rootPrandtl)
    {
        H = new double[Orders];
        var t = new double[Orders];
        var large = 1.0; // of 1/(1 + 2w)
        for (var n = 0; n < Orders; n++)
        {
            var unit = n == 0 ? 1 : 0;
            var (viscous, thermal) = model switch
            {
                WallLosses.Full => (unit - OfF[n], OfF[n]),
                WallLosses.LargeTube => (large, n == 1 ? 2.0 : 0),
                _ => (unit, 0),
            };
            large *= -2;
            H[n] = viscous;
            t[n] = unit + excess * thermal * Math.Pow(rootPrandtl, -n);
        }

        Wave = Divide(t, H);
        var first = Divide(Slope(H), H);
        var second = Divide(Slope(Slope(H)), H);
        var square = Multiply(first, first);
        (Lean, Bend) = (new double[Orders], new double[Orders]);
        for (var n = 0; n < Orders; n++)
        {
            Lean[n] = (n == 0 ? 1 : 0) + 0.5 * first[n];
            Bend[n] = 0.5 * first[n] - 0.25 * square[n] + 0.5 * second[n];
        }
    }

    /// <summary>How many terms count from a value of s on.</summary>
    public static int TermsFrom(double s) =>
        s switch
        {
            > 400 => 7,
            > 120 => 9,
            > 50 => 12,
            _ => Orders,
        };

    /// <summary>H.</summary>
    public double[] H { get; }

    /// <summary>T/H.</summary>
    public double[] Wave { get; }

    /// <summary>1 + DH/2H.</summary>
    public double[] Lean { get; }

    /// <summary>DH/2H − (DH/2H)² + D²H/2H.</summary>
    public double[] Bend { get; }

    // F = 2w·H₁/H₀ with H(ν) = Σ aₖ(ν)·(−w)ᵏ.
    private static double[] Quotient()
    {
        var ratio = Divide(Hankel(4), Hankel(0));
        var f = new double[Orders];
        for (var n = 1; n < Orders; n++)
        {
            f[n] = 2 * ratio[n - 1];
        }

        return f;
    }

    private static double[] Hankel(double fourNuSquared)
    {
        var a = new double[Orders];
        a[0] = 1;
        for (var k = 1; k < Orders; k++)
        {
            var odd = 2 * k - 1;
            a[k] = -a[k - 1] * (fourNuSquared - odd * odd) / (8 * k);
        }

        return a;
    }

    private static double[] Slope(double[] a)
    {
        var slope = new double[Orders];
        for (var n = 0; n < Orders; n++)
        {
            slope[n] = -n * a[n];
        }

        return slope;
    }

    private static double[] Multiply(double[] a, double[] b)
    {
        var product = new double[Orders];
        for (var i = 0; i < Orders; i++)
        {
            for (var j = 0; i + j < Orders; j++)
            {
                product[i + j] += a[i] * b[j];
            }
        }

        return product;
    }

    private static double[] Divide(double[] a, double[] b)
    {
        var quotient = new double[Orders];
        for (var n = 0; n < Orders; n++)
        {
            quotient[n] = a[n];
            for (var i = 0; i < n; i++)
            {
                quotient[n] -= quotient[i] * b[n - i];
            }

            quotient[n] /= b[0];
        }

        return quotient;
    }
}
