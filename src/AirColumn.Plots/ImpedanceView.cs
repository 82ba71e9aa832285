using UnitsNet;

namespace AirColumn.Plots;

/// <summary>The range, tuning and notes that a picture of an impedance shows. Immutable.</summary>
public sealed record ImpedanceView
{
    /// <summary>The tuning that names notes. Default: A4 = 440 Hz, equal temperament.</summary>
    public Tuning Tuning { get; init; } = Tuning.Concert;

    /// <summary>
    /// The lowest frequency, above 0; null to choose it by the resonances. A curve is never shown below its first frequency.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not a finite number above 0.</exception>
    public Frequency? From
    {
        get;
        init => field = Checked(value, nameof(From));
    }

    /// <summary>
    /// The highest frequency, above 0; null to choose it by the resonances. A curve is never shown above its last frequency.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not a finite number above 0.</exception>
    public Frequency? To
    {
        get;
        init => field = Checked(value, nameof(To));
    }

    /// <summary>True if the phase is shown below the magnitude.</summary>
    public bool HasPhase { get; init; } = true;

    /// <summary>The pitches at which lines are drawn; null for the pitch nearest to each resonance, empty for none.</summary>
    public IReadOnlyList<Pitch>? Notes { get; init; }

    private static Frequency? Checked(Frequency? value, string parameter)
    {
        if (value is { } frequency)
        {
            Require.Positive(frequency.Hertz, "Hz", parameter);
        }

        return value;
    }
}
