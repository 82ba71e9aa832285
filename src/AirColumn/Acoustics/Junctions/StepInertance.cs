using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Junctions;

/// <summary>
/// The air mass that an abrupt concentric change of radius adds in series (sources: karal1953, kergomard1987): l/a₁ with
/// M = ρ·l/(πa₁²), a₁ the smaller radius. Exact for a step by itself, below the cut-on of the wider side.
/// </summary>
/// <remarks>
/// Field solutions in the plane of the step, to 2e-9. In the angle arccos(1 − 2α) the values are smooth at both ends, where a step
/// vanishes and where it becomes a baffle. Recomputed by dotnet run -c Release --project benchmarks/AirColumn.Tables -- steps
/// <para>
/// The mass grows with frequency as the modes of the wider side reach further: its first radial mode, whose share of the
/// static mass is tabulated too, grows as 1/√(1 − (ka₂/3.83)²); what that leaves is 2 % of the mass at most up to ka₂ = 2.
/// </para>
/// </remarks>
internal sealed class StepInertance : GrowingMass
{
    private const int Degree = 6;

    private static readonly RationalInterpolant LengthOverRadius = Interpolant(
        BaffledTable.LowFrequencyEndCorrection,
        Length
    );
    private static readonly RationalInterpolant FirstMode = Interpolant(0, FirstModeLength);

    /// <summary>Where radii <paramref name="a"/> and <paramref name="b"/> (m) meet in a gas of density ρ (kg/m³) and c (m/s).</summary>
    public StepInertance(double a, double b, double density, double speedOfSound)
        : base(
            density / (Math.PI * Math.Min(a, b)) * LengthRatio(Ratio(a, b)),
            (
                density / (Math.PI * Math.Min(a, b)) * FirstModeRatio(Ratio(a, b)),
                ThinEnd.CutOnKa * speedOfSound / Math.Max(a, b)
            )
        ) { }

    // Ratios of radii (1 − cos θ)/2, θ = iπ/24.
    private static ReadOnlySpan<double> Length =>
        [
            0.816939735,
            0.802818303,
            0.779560826,
            0.747599687,
            0.707565534,
            0.660302626,
            0.606876779,
            0.548570476,
            0.486861143,
            0.423380520,
            0.359855201,
            0.298030593,
            0.239582538,
            0.186022601,
            0.138604253,
            0.098238024,
            0.065423849,
            0.040208459,
            0.022174803,
            0.010469445,
            0.003873027,
            0.000919426,
            0.000073793,
        ];

    private static ReadOnlySpan<double> FirstModeLength =>
        [
            0.006881452,
            0.027376754,
            0.060861475,
            0.105755933,
            0.158909969,
            0.215147225,
            0.267347593,
            0.307380381,
            0.327899148,
            0.324522913,
            0.297510831,
            0.252033621,
            0.196711746,
            0.140968019,
            0.092364398,
            0.055024850,
            0.029562375,
            0.014138531,
            0.005887094,
            0.002048591,
            0.000548252,
            0.000092549,
            0.000005095,
        ];

    /// <summary>l/a₁ at low frequency for α = a₁/a₂, the smaller radius over the larger, 0 to 1; to 1e-6.</summary>
    public static double LengthRatio(double alpha) => LengthOverRadius.At(Angle(alpha));

    /// <summary>The part of it that belongs to the first radial mode of the wider side.</summary>
    public static double FirstModeRatio(double alpha) => FirstMode.At(Angle(alpha));

    private static double Ratio(double a, double b) => Math.Min(a, b) / Math.Max(a, b);

    private static double Angle(double alpha) => Math.Acos(1 - 2 * alpha);

    private static RationalInterpolant Interpolant(double baffle, ReadOnlySpan<double> table)
    {
        var angles = new double[table.Length + 2];
        for (var i = 0; i < angles.Length; i++)
        {
            angles[i] = Math.PI * i / (angles.Length - 1);
        }

        return new RationalInterpolant(angles, [baffle, .. table, 0], Degree);
    }
}
