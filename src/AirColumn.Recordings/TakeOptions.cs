using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>Options for listening to a recording. Immutable.</summary>
public sealed record TakeOptions
{
    private readonly Frequency lowest = Frequency.FromHertz(38);
    private readonly Frequency highest = Frequency.FromHertz(1200);
    private readonly Duration shortest = Duration.FromSeconds(0.5);
    private readonly int? channel;
    private readonly IReadOnlyList<Frequency> resonances = [];

    /// <summary>The lowest pitch looked for: 25 to 500 Hz; 38 Hz by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is out of range.</exception>
    public Frequency Lowest
    {
        get => lowest;
        init
        {
            Require.InRange(value.Hertz, 25, 500, "Hz", nameof(Lowest));
            lowest = value;
        }
    }

    /// <summary>The highest pitch looked for: 60 to 1300 Hz; 1200 Hz by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is out of range.</exception>
    public Frequency Highest
    {
        get => highest;
        init
        {
            Require.InRange(value.Hertz, 60, 1300, "Hz", nameof(Highest));
            highest = value;
        }
    }

    /// <summary>The least time that a note must be held to count: 0.3 to 60 s; 0.5 s by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is out of range.</exception>
    public Duration Shortest
    {
        get => shortest;
        init
        {
            Require.InRange(value.Seconds, 0.3, 60, "s", nameof(Shortest));
            shortest = value;
        }
    }

    /// <summary>The channel to listen to: 0 is the first. Default: the loudest.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The channel is negative.</exception>
    public int? Channel
    {
        get => channel;
        init =>
            channel = value is { } number
                ? (int)Require.InRange(number, 0, ushort.MaxValue, "", nameof(Channel))
                : null;
    }

    /// <summary>
    /// The resonances of the tube, if known: they decide the octave of a note if it is in doubt. None by default; each frequency above 0.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is not above 0.</exception>
    public IReadOnlyList<Frequency> Resonances
    {
        get => resonances;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Resonances));
            foreach (var resonance in value)
            {
                Require.Positive(resonance.Hertz, "Hz", nameof(Resonances));
            }

            resonances = [.. value];
        }
    }
}
