using MathNet.Numerics;

namespace AirColumn.Acoustics.Junctions;

/// <summary>The zeros of J₁, wavenumbers of the radial modes between rigid walls times the radius, without the first, 0.</summary>
internal static class RadialZeros
{
    /// <summary>How many are listed.</summary>
    public const int Count = 40;

    /// <summary>3.83, 7.02, 10.17, …</summary>
    public static readonly double[] Gamma = [.. Enumerable.Range(1, Count).Select(Zero)];

    /// <summary>J₀ there.</summary>
    public static readonly double[] J0 = [.. Gamma.Select(gamma => SpecialFunctions.BesselJ(0, gamma))];

    // McMahon's expansion (DLMF 10.21.19), then Newton's method.
    private static double Zero(int number)
    {
        var beta = (number + 0.25) * Math.PI;
        var zero = beta - 3 / (8 * beta) + 3 / (128 * beta * beta * beta);
        for (var i = 0; i < 4; i++)
        {
            var value = SpecialFunctions.BesselJ(1, zero);
            zero -= value / (SpecialFunctions.BesselJ(0, zero) - value / zero);
        }

        return zero;
    }
}
