using System.Numerics;
using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Junctions;

/// <summary>
/// The air mass that an abrupt concentric change of radius adds in series (sources: karal1953, kergomard1987): l/a₁ with
/// M = ρ·l/(πa₁²), a₁ the smaller radius. Exact for a step by itself, below the cut-on of the wider side.
/// </summary>
/// <remarks>
/// Mode matching with the singularity of the edge, (1 − (r/a₁)²)^(−1/3), built in; to 1e-7. In the angle
/// arccos(1 − 2α) the values are smooth at both ends, where a step vanishes and where it becomes a baffle.
/// <para>
/// The mass grows with frequency as the modes of the wider side reach further: its first radial mode, whose share of the
/// static mass is tabulated too, grows as 1/√(1 − (ka₂/3.83)²); what that leaves is 2 % of the mass at most up to ka₂ = 2.
/// </para>
/// </remarks>
internal sealed class StepInertance
{
    /// <summary>The limit of l/a₁ for a vanishing ratio of radii: a pipe in a baffle (king1936).</summary>
    private const double BaffleLimit = 0.8216742364;

    private const int Degree = 6;

    // Where the first radial mode is about to propagate the mass is held: there one-dimensional theory is at its end.
    private const double HighestShareOfCutOn = 0.9;

    private static readonly RationalInterpolant LengthOverRadius = Interpolant(BaffleLimit, Length);
    private static readonly RationalInterpolant FirstMode = Interpolant(0, FirstModeLength);

    private readonly double staticMass;
    private readonly double firstMode;
    private readonly double cutOn; // ω

    /// <summary>Where radii <paramref name="a"/> and <paramref name="b"/> (m) meet in a gas of density ρ (kg/m³) and c (m/s).</summary>
    public StepInertance(double a, double b, double density, double speedOfSound)
    {
        var (smaller, larger) = (Math.Min(a, b), Math.Max(a, b));
        var unit = density / (Math.PI * smaller);
        staticMass = unit * LengthRatio(smaller / larger);
        firstMode = unit * FirstModeRatio(smaller / larger);
        cutOn = ThinEnd.CutOnKa * speedOfSound / larger;
    }

    // Ratios of radii (1 − cos θ)/2, θ = iπ/24.
    private static ReadOnlySpan<double> Length =>
        [
            0.81693974,
            0.80281831,
            0.77956083,
            0.74759969,
            0.70756554,
            0.66030263,
            0.60687679,
            0.54857048,
            0.48686115,
            0.42338053,
            0.35985521,
            0.29803060,
            0.23958255,
            0.18602261,
            0.13860426,
            0.09823804,
            0.06542387,
            0.04020848,
            0.02217483,
            0.01046949,
            0.00387309,
            0.00091955,
            0.00007422,
        ];

    private static ReadOnlySpan<double> FirstModeLength =>
        [
            0.0068815,
            0.0273768,
            0.0608615,
            0.1057559,
            0.1589100,
            0.2151472,
            0.2673476,
            0.3073804,
            0.3278991,
            0.3245229,
            0.2975108,
            0.2520336,
            0.1967117,
            0.1409680,
            0.0923644,
            0.0550248,
            0.0295624,
            0.0141385,
            0.0058871,
            0.0020486,
            0.0005483,
            0.0000926,
            0.0000051,
        ];

    /// <summary>l/a₁ at low frequency for α = a₁/a₂, the smaller radius over the larger, 0 to 1; to 1e-6.</summary>
    public static double LengthRatio(double alpha) => LengthOverRadius.At(Angle(alpha));

    /// <summary>The part of it that belongs to the first radial mode of the wider side.</summary>
    public static double FirstModeRatio(double alpha) => FirstMode.At(Angle(alpha));

    /// <summary>ω from which the mass is held.</summary>
    public double HeldFrom => HighestShareOfCutOn * cutOn;

    /// <summary>The acoustic mass, kg/m⁴, at ω, rad/s.</summary>
    public double At(double omega)
    {
        var share = Math.Min(omega / cutOn, HighestShareOfCutOn);
        // 1/√(1 − share²) − 1 without cancellation.
        var root = Math.Sqrt(1 - share * share);
        return staticMass + firstMode * share * share / (root * (1 + root));
    }

    /// <summary>The same at some ω.</summary>
    public RealVector At(RealVector omega)
    {
        var share = Vector.Min(omega * (1 / cutOn), Vector.Create(HighestShareOfCutOn));
        var square = share * share;
        var root = Vector.SquareRoot(RealVector.One - square);
        return Vector.Create(staticMass) + firstMode * square / (root * (RealVector.One + root));
    }

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
