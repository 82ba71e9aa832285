using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>A note that is held for a while in a recording. Immutable.</summary>
/// <remarks>
/// The frequency depends on the recorder's clock: a clock error of 50 parts in a million, which is usual, adds an error of 0.09 cent that is
/// not included here.
/// </remarks>
public sealed record SoundedNote
{
    internal SoundedNote() { }

    /// <summary>The time in the recording at which the note begins.</summary>
    public required Duration From { get; init; }

    /// <summary>The time for which the note is held.</summary>
    public required Duration Duration { get; init; }

    /// <summary>The fundamental: its mean over the part that was measured, at most the steadiest 20 s.</summary>
    public required Frequency Fundamental { get; init; }

    /// <summary>
    /// Other fundamentals that the same sound may have: an octave or a twelfth away if periods differ a little from each other, or a second
    /// note. The likeliest is <see cref="Fundamental"/>. Empty if there is no doubt.
    /// </summary>
    public required IReadOnlyList<Frequency> Alternatives { get; init; }

    /// <summary>Warnings about this note: a doubtful octave, a glide, other sound nearly as strong.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>
    /// Standard uncertainty of <see cref="Fundamental"/>, cents: from noise, from disagreement between the partials, from the ends and gaps of the
    /// measured part, and from a steady glide, because the pitch may lie anywhere in the range of the glide. Wandering and vibrato about the
    /// mean are not included; <see cref="SpreadCents"/> states them.
    /// </summary>
    public required double StandardUncertaintyCents { get; init; }

    /// <summary>The drift of the pitch, cents per second; positive is rising.</summary>
    public required double DriftCentsPerSecond { get; init; }

    /// <summary>Standard deviation of the pitch about the drift, cents: vibrato, wandering, and noise from one window to the next.</summary>
    public required double SpreadCents { get; init; }

    /// <summary>
    /// Harmonics-to-noise ratio, dB: the power of all partials over the power of all sound between them, up to 4 kHz. Hiss above that is not counted.
    /// </summary>
    public required double HarmonicsToNoiseDecibels { get; init; }

    /// <summary>The partials below 4 kHz that stand out of the noise, in order.</summary>
    public required IReadOnlyList<NotePartial> Partials { get; init; }

    /// <summary>The spectral envelope: the level in each third of an octave, partials and noise together.</summary>
    public required IReadOnlyList<BandLevel> Bands { get; init; }

    /// <summary>The pitch over the measured part, a point every 4 to 25 ms.</summary>
    public required IReadOnlyList<PitchPoint> Pitch { get; init; }

    /// <summary>Half the 95 % range of the fundamental, cents.</summary>
    public double PlusMinusCents => 1.96 * StandardUncertaintyCents;

    /// <summary>The nearest note of a tuning, and the distance from it.</summary>
    /// <param name="tuning">The tuning.</param>
    /// <returns>The note and the distance from it.</returns>
    public PitchReading Nearest(Tuning tuning)
    {
        ArgumentNullException.ThrowIfNull(tuning);
        return tuning.Nearest(Fundamental);
    }

    /// <summary>Frequency, uncertainty and time, in the invariant culture.</summary>
    /// <returns>Frequency, uncertainty and time, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"{Fundamental.Hertz:0.###} Hz ± {PlusMinusCents:0.##} cents for {Duration.Seconds:0.#} s"
        );
}
