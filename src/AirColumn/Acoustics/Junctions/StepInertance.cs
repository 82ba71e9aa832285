using AirColumn.Acoustics.Interpolation;

namespace AirColumn.Acoustics.Junctions;

/// <summary>
/// The air mass that an abrupt concentric change of radius adds in series: M = ρ·l/(πa₁²), a₁ the smaller radius
/// (sources: karal1953, kergomard1987). Static limit, valid well below the cut-on of the wider side.
/// </summary>
internal static class StepInertance
{
    /// <summary>The limit of l/a₁ for a vanishing ratio of radii: a pipe in a baffle (king1936).</summary>
    private const double BaffleLimit = 0.8216742364;

    private static readonly RationalInterpolant LengthOverRadius = Interpolant();

    // Exact static values by mode matching with the edge singularity built in, to 1e-8.
    private static ReadOnlySpan<double> RadiusRatio =>
        [
            0.02,
            0.05,
            0.10,
            0.15,
            0.20,
            0.25,
            0.30,
            0.35,
            0.40,
            0.45,
            0.50,
            0.55,
            0.60,
            0.65,
            0.70,
            0.75,
            0.80,
            0.85,
            0.90,
            0.95,
            0.98,
        ];

    private static ReadOnlySpan<double> Table =>
        [
            0.799539576,
            0.766361548,
            0.711220300,
            0.656423408,
            0.602146713,
            0.548570476,
            0.495880953,
            0.444272138,
            0.393947759,
            0.345123641,
            0.298030593,
            0.252918063,
            0.210058919,
            0.169755915,
            0.132350830,
            0.098238024,
            0.067885847,
            0.041873465,
            0.020962673,
            0.006271182,
            0.001227322,
        ];

    /// <summary>l/a₁ for α = a₁/a₂, the smaller radius over the larger, 0 to 1; to 6e-5 between the tabulated values.</summary>
    public static double LengthRatio(double alpha) => LengthOverRadius.At(alpha);

    /// <summary>The acoustic mass, kg/m⁴, where radii a and b (m) meet in gas of density ρ (kg/m³).</summary>
    public static double Between(double a, double b, double density)
    {
        var smaller = Math.Min(a, b);
        return density * LengthRatio(smaller / Math.Max(a, b)) / (Math.PI * smaller);
    }

    private static RationalInterpolant Interpolant() =>
        new([0, .. RadiusRatio, 1], [BaffleLimit, .. Table, 0], 5);
}
