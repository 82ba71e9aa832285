using System.Numerics;

namespace AirColumn.Acoustics.Radiation;

/// <summary>
/// Published approximations to the radiation of open ends, as functions of ka. Coefficients from memory, confirmed by the
/// tests: each is as near to the exact values as its authors say.
/// </summary>
internal static class PublishedEnds
{
    /// <summary>Thin edge (norris1989): 0.5 % in |R|, 0.012 a in l up to ka = 3, more above.</summary>
    public static EndReflection NorrisThin(double ka) => new(Math.Log(Thin(ka)), ThinCorrection(ka));

    /// <summary>Baffle (norris1989; dalmont2001): 1 % in |R|, 0.011 a in l up to ka = 3.</summary>
    public static EndReflection NorrisBaffled(double ka)
    {
        var x = 0.77 * ka;
        return new(
            Math.Log((1 + 0.323 * ka - 0.077 * ka * ka) / (1 + 0.323 * ka + 0.923 * ka * ka)),
            0.8216 / (1 + x * x / (1 + x))
        );
    }

    /// <summary>Thin edge (dalmont2001, after norris1989): 0.5 % in |R|, 0.008 a in l up to ka = 1.5.</summary>
    public static EndReflection DalmontThin(double ka)
    {
        var sine = Math.Sin(2 * ka);
        return new(Math.Log(Thin(ka)), ThinCorrection(ka) - 0.02 * sine * sine);
    }

    /// <summary>A rim (dalmont2001) without the waves diffracted at its outer edge; valid at low kb.</summary>
    public static EndReflection DalmontRim(double ka, double outerOverInner)
    {
        var ratio = 1 / outerOverInner;
        var (thin, baffled) = (DalmontThin(ka), NorrisBaffled(ka));
        return thin with
        {
            EndCorrection =
                baffled.EndCorrection
                + ratio * (thin.EndCorrection - baffled.EndCorrection)
                + 0.057 * ratio * (1 - Math.Pow(ratio, 5)),
        };
    }

    /// <summary>
    /// R = −(1 + n₁jka)/(1 + d₁jka + d₂(jka)²), causal (silva2009): thin edge 0.167, 1.393, 0.457; baffle 0.182, 1.825, 0.649.
    /// </summary>
    public static EndReflection Silva(double ka, double n1, double d1, double d2)
    {
        var x = new Complex(0, ka);
        return OfReflection(-(1 + n1 * x) / (1 + x * (d1 + d2 * x)), ka);
    }

    /// <summary>Thin edge up to ka = 1.5 (causse1984): 0.3 % in |R|, 0.003 a in l.</summary>
    public static EndReflection CausseThin(double ka)
    {
        var (square, log) = (ka * ka, Math.Log(ka));
        var z = new Complex(
            square * (0.25 + square * (0.0127 + 0.082 * log - 0.023 * square)),
            ka * (0.6133 + square * (-0.036 + 0.034 * log - 0.0187 * square))
        );
        return OfReflection((z - 1) / (z + 1), ka);
    }

    private static EndReflection OfReflection(Complex reflection, double ka) =>
        new(Math.Log(reflection.Magnitude), -(-reflection).Phase / (2 * ka));

    private static double Thin(double ka) =>
        (1 + 0.2 * ka - 0.084 * ka * ka) / (1 + 0.2 * ka + 0.416 * ka * ka);

    private static double ThinCorrection(double ka) => 0.6133 * (1 + 0.044 * ka * ka) / (1 + 0.19 * ka * ka);
}
