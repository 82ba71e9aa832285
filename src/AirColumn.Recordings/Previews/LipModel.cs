using UnitsNet;

namespace AirColumn.Recordings.Previews;

/// <summary>
/// Lips as one mass on a damped spring that the breath blows open (an outward-striking valve of one degree of freedom). Immutable,
/// equal by value.
/// </summary>
/// <remarks>
/// <para>
/// ḧ + (ω/Q)ḣ + ω²(h − h₀) = (pₘ − p)/μ, U = w·h·√(2|pₘ − p|/ρ) in the direction of the pressure drop while h is above 0; U = 0 while the
/// lips are closed (sources: cullen2000, velut2017; fletcher1993 for valves in general). ω is <see cref="PreviewOptions.LipFrequency"/>.
/// </para>
/// <para>
/// The defaults are the values of these two papers for a trombone player's lips, h₀ = 0.5 mm, w = 12 mm, Q = 7, 1/μ = 0.11 m²/kg,
/// written from memory. Lips on a wide tube without a mouthpiece were not measured there.
/// </para>
/// </remarks>
public sealed record LipModel
{
    private readonly Length openingAtRest = Length.FromMillimeters(0.5);
    private readonly Length width = Length.FromMillimeters(12);
    private readonly double qualityFactor = 7;
    private readonly AreaDensity massPerArea = AreaDensity.FromKilogramsPerSquareMeter(1 / 0.11);

    /// <summary>h₀, the gap between the lips without pressure: 0.01 to 5 mm; 0.5 mm by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range.</exception>
    public Length OpeningAtRest
    {
        get => openingAtRest;
        init
        {
            Require.InRange(value.Millimeters, 0.01, 5, "mm", nameof(OpeningAtRest));
            openingAtRest = value;
        }
    }

    /// <summary>w, the width of the gap: 1 to 60 mm; 12 mm by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range.</exception>
    public Length Width
    {
        get => width;
        init
        {
            Require.InRange(value.Millimeters, 1, 60, "mm", nameof(Width));
            width = value;
        }
    }

    /// <summary>Q of the lips' own resonance: 1 to 50; 7 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range or not a number.</exception>
    public double QualityFactor
    {
        get => qualityFactor;
        init => qualityFactor = Require.InRange(value, 1, 50, "", nameof(QualityFactor));
    }

    /// <summary>μ, the mass of the lips that moves, per area: 1 to 100 kg/m²; 9.1 kg/m² by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range.</exception>
    public AreaDensity MassPerArea
    {
        get => massPerArea;
        init
        {
            Require.InRange(value.KilogramsPerSquareMeter, 1, 100, "kg/m²", nameof(MassPerArea));
            massPerArea = value;
        }
    }

    /// <summary>Its numbers in SI units.</summary>
    internal LipConstants Constants =>
        new(OpeningAtRest.Meters, Width.Meters, QualityFactor, MassPerArea.KilogramsPerSquareMeter);
}
