using System.Globalization;

namespace AirColumn;

/// <summary>The names of pitches: where the letters stand, and how a pitch is written.</summary>
internal static class PitchNames
{
    private static ReadOnlySpan<byte> Semitones => [0, 2, 4, 5, 7, 9, 11];

    private const string WithSharps = "CCDDEFFGGAAB";
    private const string WithFlats = "CDDEEFGGAABB";

    public static int SemitonesAboveC(PitchLetter letter) => Semitones[(int)letter];

    /// <summary>The letter of the pitch 0 to 11 semitones above C.</summary>
    public static PitchLetter LetterAt(int semitones, PitchSpelling spelling) =>
        spelling switch
        {
            PitchSpelling.Sharps => Letter(WithSharps[semitones]),
            PitchSpelling.Flats => Letter(WithFlats[semitones]),
            _ => throw new ArgumentOutOfRangeException(
                nameof(spelling),
                spelling,
                $"spelling is {(int)spelling}; use Sharps or Flats."
            ),
        };

    /// <summary>The letter that <paramref name="upper"/>, A to G, stands for.</summary>
    public static PitchLetter Letter(char upper) => (PitchLetter)((upper - 'A' + 5) % 7);

    public static string Ascii(Pitch pitch) =>
        Text(
            pitch,
            pitch.Accidental switch
            {
                Accidental.DoubleFlat => "bb",
                Accidental.Flat => "b",
                Accidental.Sharp => "#",
                Accidental.DoubleSharp => "##",
                _ => "",
            }
        );

    public static string Signs(Pitch pitch) =>
        Text(
                pitch,
                pitch.Accidental switch
                {
                    Accidental.DoubleFlat => "𝄫",
                    Accidental.Flat => "♭",
                    Accidental.Sharp => "♯",
                    Accidental.DoubleSharp => "𝄪",
                    _ => "",
                }
            )
            .Replace('-', '\u2212');

    private static string Text(Pitch pitch, string accidental) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{"CDEFGAB"[(int)pitch.Letter]}{accidental}{pitch.Octave}"
        );
}
