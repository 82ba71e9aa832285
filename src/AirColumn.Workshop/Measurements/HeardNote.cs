using System.Globalization;
using System.Text.RegularExpressions;
using AirColumn.Documents;
using UnitsNet;

namespace AirColumn.Workshop.Measurements;

/// <summary>Reads the note that was heard, as a frequency or as a tuner shows it.</summary>
public static partial class HeardNote
{
    // A tuner names the nearest note, so that it shows no more than half a semitone; some more for those that hold on to a note.
    private const double MostCents = 100;

    /// <summary>Reads the frequency that was heard.</summary>
    /// <param name="text">Text such as "71.3 Hz", "71.3", or a tuner's "D2 -26 cents" or "D2 −26".</param>
    /// <param name="tuning">The reference and temperament to which the tuner was set.</param>
    /// <returns>The frequency.</returns>
    /// <exception cref="FormatException">The text is none of these; the message says what to write.</exception>
    public static Frequency Parse(string text, Tuning tuning)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(tuning);
        var written = text.Trim();
        if (Tuner().Match(written) is { Success: true } shown)
        {
            var pitch = DroneNote.Parse(shown.Groups["note"].Value);
            var number = shown.Groups["cents"];
            var cents = number.Success
                ? double.Parse(
                    string.Concat(number.Value.Where(c => !char.IsWhiteSpace(c))).Replace('\u2212', '-'),
                    NumberStyles.Float,
                    CultureInfo.InvariantCulture
                )
                : 0;
            return Math.Abs(cents) <= MostCents
                ? Frequency.FromHertz(tuning.FrequencyOf(pitch).Hertz * Math.Pow(2, cents / 1200))
                : throw new FormatException(
                    $"{Quote.Of(written)} is more than {MostCents:0} cents from its note; name the nearest note, such as \"D2 -26 cents\"."
                );
        }

        var frequency = double.TryParse(
            written,
            NumberStyles.Float,
            CultureInfo.InvariantCulture,
            out var hertz
        )
            ? hertz
            : Hertz(written);
        return frequency > 0 && double.IsFinite(frequency)
            ? Frequency.FromHertz(frequency)
            : throw new FormatException(
                $"{Quote.Of(written)} is not a frequency above 0; write, for example, \"71.3 Hz\"."
            );
    }

    private static double Hertz(string text)
    {
        try
        {
            return QuantityText.ParseFrequency(text).Hertz;
        }
        catch (FormatException problem)
        {
            throw new FormatException(
                $"{Quote.Of(text)} is not a note that was heard; write its frequency, such as \"71.3 Hz\", or what a tuner shows, such as \"D2 -26 cents\".",
                problem
            );
        }
    }

    // A note, then cents with their sign; none are on the note.
    [GeneratedRegex(
        @"^(?<note>[A-Ga-g]\s*[#b♯♭]?\s*[0-9])\s*([,:]?\s*(?<cents>[+\-\u2212]?\s*[0-9]+(\.[0-9]*)?)\s*(cents?|ct|c|¢)?)?$",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Tuner();
}
