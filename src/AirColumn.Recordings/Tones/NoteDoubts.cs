using UnitsNet;

namespace AirColumn.Recordings.Tones;

/// <summary>What is doubtful about a note, in sentences.</summary>
internal static class NoteDoubts
{
    // Harmonics over all else, as power: 6 dB.
    private const double LeastToNoise = 4;

    // Harmonics of one note differ by less even in a noisy room, cents.
    private const double MostApart = 0.35;

    // A glide that shows in the uncertainty but is no reason to play again, cents.
    private const double LeastGlide = 10;

    public static IEnumerable<string> Of(
        MeanPitch mean,
        PhaseTrack track,
        OctaveChoice octave,
        IReadOnlyList<Frequency> others
    )
    {
        if (others.Count > 0)
        {
            var also = string.Join(
                " or ",
                others.Select(other => FormattableString.Invariant($"{other.Hertz:0.00} Hz"))
            );
            yield return octave.IsTwoNotes
                ? FormattableString.Invariant(
                    $"Two notes may sound at once, or one note in another octave: {mean.Hertz:0.00} Hz is the stronger, but the note may be {also}. Play the drone alone."
                )
                : FormattableString.Invariant(
                    $"The octave is in doubt: the note is {mean.Hertz:0.00} Hz, or {also}, because one period differs from the next. Play it clean, without growling."
                );
        }

        if (track.ToNoise < LeastToNoise)
        {
            yield return FormattableString.Invariant(
                $"Other sound is nearly as strong as the note of {mean.Hertz:0.00} Hz, only {10 * Math.Log10(track.ToNoise):0} dB below it: the pitch may be wrong. Record in a quieter room, nearer to the tube."
            );
        }

        if (1200 * Math.Log2(1 + mean.Disagreement / mean.Hertz) > MostApart)
        {
            yield return FormattableString.Invariant(
                $"The partials of the note of {mean.Hertz:0.00} Hz do not agree on its pitch: a voice, a hum or another note sounds close to some of them. Play the drone alone."
            );
        }

        var cents = 1200 * Math.Log2(1 + mean.Glide / mean.Hertz);
        if (cents >= LeastGlide)
        {
            yield return FormattableString.Invariant(
                $"The pitch {(mean.Drift > 0 ? "rises" : "falls")} by {cents:0} cents while it is held, so the note is not known better than that. Hold it steadier."
            );
        }
    }
}
