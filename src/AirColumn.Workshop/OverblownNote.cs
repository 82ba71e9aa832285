using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>A resonance above the first, on which the tube can be overblown.</summary>
public sealed record OverblownNote
{
    internal OverblownNote(int resonance, Frequency frequency, PitchReading nearest, double centsAboveFirst)
    {
        Resonance = resonance;
        Frequency = frequency;
        Nearest = nearest;
        CentsAboveFirst = centsAboveFirst;
    }

    // What a tuning names, Hz; only absurd tubes have resonances beyond.
    private const double LowestNamed = 1;
    private const double HighestNamed = 100_000;

    /// <summary>Whether a tuning can name it.</summary>
    internal static bool HasName(Frequency frequency) =>
        frequency.Hertz is >= LowestNamed and <= HighestNamed;

    /// <summary>Those above the first that have a name.</summary>
    internal static IEnumerable<OverblownNote> Of(ResonanceList resonances, Tuning tuning) =>
        resonances
            .Select((found, index) => (found, number: index + 1))
            .Skip(1)
            .Where(item => HasName(item.found.Frequency))
            .Select(item => new OverblownNote(
                item.number,
                item.found.Frequency,
                item.found.Nearest(tuning),
                Cents.Between(resonances[0].Frequency, item.found.Frequency)
            ));

    /// <summary>The number of the resonance: 2 is the first overblown note.</summary>
    public int Resonance { get; }

    /// <summary>Its frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>The nearest note of the plan's tuning, and the distance from it.</summary>
    public PitchReading Nearest { get; }

    /// <summary>The interval above the first resonance in cents: 1200 is an octave, 1900 a twelfth.</summary>
    public double CentsAboveFirst { get; }

    /// <summary>The interval above the first resonance to the nearest semitone, in words: "twelfth", "2 octaves + major third".</summary>
    public string Interval => IntervalWords.Nearest(CentsAboveFirst);

    /// <summary>The interval from one frequency up to another, to the nearest semitone, in words.</summary>
    /// <param name="from">The lower frequency: above 0.</param>
    /// <param name="to">The higher frequency.</param>
    /// <returns>The name of the interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="from"/> is not above 0, or <paramref name="to"/> is below <paramref name="from"/>.
    /// </exception>
    public static string IntervalOf(Frequency from, Frequency to)
    {
        Require.Positive(from.Hertz, "Hz", nameof(from));
        Require.InRange(to.Hertz, from.Hertz, double.MaxValue, "Hz", nameof(to));
        return IntervalWords.Nearest(Cents.Between(from, to));
    }
}
