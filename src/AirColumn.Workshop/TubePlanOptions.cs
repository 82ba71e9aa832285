using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>The choices of a <see cref="TubePlan"/> that are neither parts, note nor air.</summary>
public sealed record TubePlanOptions
{
    // A choice: the 32 cents of common practice and a quarter of that as a margin.
    private readonly double trimmingCents = 40;
    private readonly Length measuringTolerance = Length.FromMillimeters(2);

    /// <summary>
    /// How many cents flat of the note the first cut is to leave the first resonance: 0 to 200. The played note is
    /// said to lie 11 to 32 cents above the first resonance computed for cold air (common practice). The default of 40 is a choice, with a margin.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range or not a number.</exception>
    public double TrimmingCents
    {
        get => trimmingCents;
        init => trimmingCents = Require.InRange(value, 0, 200, "cents", nameof(TrimmingCents));
    }

    /// <summary>The error of measuring parts and cut together: 0 to 100 mm; 2 mm by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range.</exception>
    public Length MeasuringTolerance
    {
        get => measuringTolerance;
        init => measuringTolerance = Caliper.Tolerance(value, nameof(MeasuringTolerance));
    }
}
