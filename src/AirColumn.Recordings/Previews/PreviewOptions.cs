using UnitsNet;

namespace AirColumn.Recordings.Previews;

/// <summary>Options of a preview: the note, how it is blown, and the form of the sound. Immutable, equal by value.</summary>
public sealed record PreviewOptions
{
    /// <summary>The highest blowing pressure, Pa.</summary>
    internal const double HighestPascal = 25_000;

    private readonly int register = 1;
    private readonly Duration duration = Duration.FromSeconds(3);
    private readonly int sampleRate = 48_000;
    private readonly Pressure? blowingPressure;
    private readonly Frequency? lipFrequency;
    private readonly Pressure? fullScale;
    private readonly LipModel lips = new();

    /// <summary>The number of the resonance that carries the note, 1 to 10: 1 is the drone, 2 the first overblown note.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range.</exception>
    public int Register
    {
        get => register;
        init => register = (int)Require.InRange(value, 1, 10, "", nameof(Register));
    }

    /// <summary>The duration of the sound, including attack and release: 1 to 30 s; 3 s by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range.</exception>
    public Duration Duration
    {
        get => duration;
        init
        {
            Require.InRange(value.Seconds, 1, 30, "s", nameof(Duration));
            duration = value;
        }
    }

    /// <summary>Samples per second, also of the computation: 32 000 to 192 000; 48 000 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range.</exception>
    public int SampleRate
    {
        get => sampleRate;
        init => sampleRate = (int)Require.InRange(value, 32_000, 192_000, "Hz", nameof(SampleRate));
    }

    /// <summary>
    /// Pressure in the mouth above the pressure of the room: 10 Pa to 25 kPa, the highest that was measured in players (fletcher1999).
    /// Default: 1 kPa (a
    /// medium loudness, our choice), or twice the threshold of the note if that is more, up to the limit.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range.</exception>
    public Pressure? BlowingPressure
    {
        get => blowingPressure;
        init
        {
            if (value is { } pressure)
            {
                Require.InRange(pressure.Pascals, 10, HighestPascal, "Pa", nameof(BlowingPressure));
            }

            blowingPressure = value;
        }
    }

    /// <summary>
    /// The lips' own frequency, which a player sets by tension: 5 Hz to 5 kHz. Default: chosen by the rule of <see cref="DronePreview"/>.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range.</exception>
    public Frequency? LipFrequency
    {
        get => lipFrequency;
        init
        {
            if (value is { } frequency)
            {
                Require.InRange(frequency.Hertz, 5, 5000, "Hz", nameof(LipFrequency));
            }

            lipFrequency = value;
        }
    }

    /// <summary>
    /// The sound pressure, 1 m from the far end, that a sample of 1 stands for: 0.01 to 1000 Pa. Default: 2 Pa for the drone and 10 Pa for
    /// overblown notes. It is the same for all shapes, so the loudness of two previews can be compared.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside that range.</exception>
    public Pressure? FullScale
    {
        get => fullScale;
        init
        {
            if (value is { } pressure)
            {
                Require.InRange(pressure.Pascals, 0.01, 1000, "Pa", nameof(FullScale));
            }

            fullScale = value;
        }
    }

    /// <summary>The lips.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public LipModel Lips
    {
        get => lips;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            lips = value;
        }
    }
}
