using UnitsNet;

namespace AirColumn;

/// <summary>
/// A rule that gives each pitch its frequency: a reference for A4 and a temperament. Two tunings are equal when their references and their
/// temperaments are equal.
/// </summary>
/// <remarks>
/// f = f_A·2^((n − 69)/12 + (d − d_A)/1200), where f_A is the reference, n the MIDI note number of the pitch,
/// and d and d_A the offsets in cents of the pitch and of A in the temperament. So A4 is exactly on the
/// reference in every temperament.
/// </remarks>
public sealed record Tuning
{
    private const int NumberOfA4 = 69;
    private readonly double referenceHertz;

    /// <summary>A tuning.</summary>
    /// <param name="reference">The frequency of A4, 1 to 10 000 Hz.</param>
    /// <param name="temperament">The temperament.</param>
    /// <exception cref="ArgumentNullException"><paramref name="temperament"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The reference is not from 1 to 10 000 Hz.</exception>
    public Tuning(Frequency reference, Temperament temperament)
    {
        ArgumentNullException.ThrowIfNull(temperament);
        referenceHertz = Require.InRange(reference.Hertz, 1, 10_000, "Hz", nameof(reference));
        Temperament = temperament;
    }

    /// <summary>A4 = 440 Hz (iso16), equal temperament.</summary>
    public static Tuning Concert { get; } = new(Frequency.FromHertz(440), Temperament.Equal);

    /// <summary>The frequency of A4.</summary>
    public Frequency Reference => Frequency.FromHertz(referenceHertz);

    /// <summary>The temperament.</summary>
    public Temperament Temperament { get; }

    /// <summary>This temperament on another reference.</summary>
    /// <param name="reference">The frequency of A4, 1 to 10 000 Hz.</param>
    /// <returns>The other tuning.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The reference is not from 1 to 10 000 Hz.</exception>
    public Tuning WithReference(Frequency reference) => new(reference, Temperament);

    /// <summary>The frequency of a pitch.</summary>
    /// <param name="pitch">Any pitch.</param>
    /// <returns>The frequency.</returns>
    public Frequency FrequencyOf(Pitch pitch) => Frequency.FromHertz(HertzAt(pitch.Number));

    /// <summary>
    /// The pitch of this tuning that is the fewest cents away, and how far the frequency is from it.
    /// </summary>
    /// <param name="frequency">The frequency, 1 to 100 000 Hz.</param>
    /// <param name="spelling">The spelling of the pitch: sharps or flats.</param>
    /// <returns>The pitch and the distance from it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The frequency is not from 1 to 100 000 Hz, or the spelling is neither sharps nor flats.
    /// </exception>
    public PitchReading Nearest(Frequency frequency, PitchSpelling spelling = PitchSpelling.Sharps)
    {
        var hertz = Require.InRange(frequency.Hertz, 1, 100_000, "Hz", nameof(frequency));
        var equal = NumberOfA4 + (int)Math.Round(Cents.Between(referenceHertz, hertz) / 100);

        // Neighbours are at most 300 cents apart, so the nearest pitch is at most 150 cents away; offsets, that
        // of A included, put it at most 200 cents off its equal place. So it is at most 4 numbers off.
        var number = Enumerable.Range(equal - 4, 9).MinBy(candidate => Distance(candidate, hertz));
        return new PitchReading(Pitch.FromNumber(number, spelling), Cents.Between(HertzAt(number), hertz));
    }

    /// <summary>Text such as "A4 = 440 Hz, equal temperament", the same in every culture.</summary>
    /// <returns>The reference and the temperament, as text.</returns>
    public override string ToString() =>
        $"A4 = {Require.Show(referenceHertz, "Hz")}, {Temperament} temperament";

    private double HertzAt(int number)
    {
        var offset = Temperament.OffsetAt(number) - Temperament.OffsetAt(NumberOfA4);
        return referenceHertz * Math.Pow(2, ((number - NumberOfA4) / 12.0) + (offset / 1200));
    }

    private double Distance(int number, double hertz) => Math.Abs(Cents.Between(HertzAt(number), hertz));
}
