namespace AirColumn.Acoustics.Losses;

/// <summary>
/// The loss functions where the boundary layer is thin, as series in w = 1/(√j·s) from the quotient of the Hankel series (DLMF
/// 10.17.5): coefficients of w, w², …
/// </summary>
internal static class LargeArgument
{
    /// <summary>Of F = 2w·H₁/H₀ with H(ν) = Σ aₖ(ν)·(−w)ᵏ.</summary>
    public static double[] Shunt(int orders)
    {
        var (numerator, denominator) = (Hankel(4, orders), Hankel(0, orders));
        var ratio = new double[orders];
        for (var k = 0; k < orders; k++)
        {
            var rest = numerator[k];
            for (var i = 0; i < k; i++)
            {
                rest -= ratio[i] / 2 * denominator[k - i];
            }

            ratio[k] = 2 * rest;
        }

        return ratio;
    }

    /// <summary>Of F/(1 − F) = F + F·(that), term by term.</summary>
    public static double[] Series(int orders)
    {
        var f = Shunt(orders);
        var quotient = new double[orders];
        for (var k = 0; k < orders; k++)
        {
            quotient[k] = f[k];
            for (var i = 0; i < k; i++)
            {
                quotient[k] += f[i] * quotient[k - 1 - i];
            }
        }

        return quotient;
    }

    private static double[] Hankel(double fourNuSquared, int orders)
    {
        var a = new double[orders];
        a[0] = 1;
        for (var k = 1; k < orders; k++)
        {
            var odd = 2 * k - 1;
            a[k] = -a[k - 1] * (fourNuSquared - odd * odd) / (8 * k);
        }

        return a;
    }
}
