using System.Globalization;

namespace AirColumn.Workshop;

/// <summary>Reads the note that a tube is to sound.</summary>
public static class DroneNote
{
    /// <summary>A note such as E2, F#2 or Eb2.</summary>
    /// <param name="text">A letter, an accidental if any, and an octave of 0 or more.</param>
    /// <returns>The pitch.</returns>
    /// <exception cref="FormatException">
    /// The text is not a note, or its octave is below 0, too low to hear: C-2 was probably meant as C2 with a dash. The message says what to
    /// write.
    /// </exception>
    public static Pitch Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var note = Pitch.Parse(text);
        return note.Octave >= 0
            ? note
            : throw new FormatException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"'{text.Trim()}' is {Tuning.Concert.FrequencyOf(note).Hertz:0.##} Hz, too low to hear; did you mean {new Pitch(note.Letter, note.Accidental, -note.Octave)}?"
                )
            );
    }
}
