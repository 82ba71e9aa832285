using System.Diagnostics.CodeAnalysis;

namespace AirColumn;

/// <summary>
/// A spelled pitch in scientific pitch notation (young1939), such as C2,
/// C#2 or Eb-1. It is a name; a <see cref="Tuning"/> gives it a frequency.
/// </summary>
/// <remarks>
/// The octave goes with the letter and changes at C, so B#3 sounds as C4 and Cb4 sounds as B3. Two pitches are
/// <em>equal</em> when they are spelled alike, but they <em>compare</em> by their sound. So C#2 and Db2 are not
/// equal, yet neither is less than the other (<see cref="IsEnharmonicTo"/>), and a sorted set holds only one of
/// them. The default value is C0.
/// </remarks>
public readonly record struct Pitch : IComparable<Pitch>, ISpanParsable<Pitch>, IFormattable
{
    /// <summary>
    /// The lowest octave. The range of octaves has room for every frequency that <see cref="Tuning.Nearest"/>
    /// takes, at every reference that a <see cref="Tuning"/> takes.
    /// </summary>
    public const int MinimumOctave = -10;

    /// <summary>The highest octave; see <see cref="MinimumOctave"/>.</summary>
    public const int MaximumOctave = 22;

    private const int LowestNumber = 12 * (MinimumOctave + 1);
    private const int HighestNumber = (12 * (MaximumOctave + 1)) + 11;

    /// <summary>A pitch without an accidental.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="octave">The octave, −10 to 22; octave 4 begins at middle C.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public Pitch(PitchLetter letter, int octave)
        : this(letter, Accidental.Natural, octave) { }

    /// <summary>A pitch.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="accidental">The accidental.</param>
    /// <param name="octave">The octave of the letter, −10 to 22; octave 4 begins at middle C.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public Pitch(PitchLetter letter, Accidental accidental, int octave)
    {
        Letter = (PitchLetter)Require.InRange((int)letter, 0, 6, "", nameof(letter));
        Accidental = (Accidental)Require.InRange((int)accidental, -2, 2, "", nameof(accidental));
        Octave = (int)Require.InRange(octave, MinimumOctave, MaximumOctave, "", nameof(octave));
    }

    /// <summary>The letter.</summary>
    public PitchLetter Letter { get; }

    /// <summary>The accidental.</summary>
    public Accidental Accidental { get; }

    /// <summary>The octave of the letter, −10 to 22; octave 4 begins at middle C.</summary>
    public int Octave { get; }

    /// <summary>
    /// The MIDI note number: semitones on the scale where C4 is 60 and A4 is 69. It may be negative, or above
    /// the 127 at which MIDI stops.
    /// </summary>
    public int Number => (12 * (Octave + 1)) + PitchNames.SemitonesAboveC(Letter) + (int)Accidental;

    /// <summary>The pitch with this MIDI note number, spelled with at most one sharp or flat.</summary>
    /// <param name="number">The number, −108 (C−10) to 287 (B22); A4 is 69.</param>
    /// <param name="spelling">Sharps or flats.</param>
    /// <returns>The pitch.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Pitch FromNumber(int number, PitchSpelling spelling = PitchSpelling.Sharps)
    {
        Require.InRange(number, LowestNumber, HighestNumber, "");
        var (octave, semitones) = int.DivRem(number - LowestNumber, 12);
        var letter = PitchNames.LetterAt(semitones, spelling);
        var accidental = (Accidental)(semitones - PitchNames.SemitonesAboveC(letter));
        return new Pitch(letter, accidental, octave + MinimumOctave);
    }

    /// <summary>
    /// This pitch moved by semitones. Whole octaves keep the spelling; otherwise a flat pitch gives flats and
    /// any other pitch sharps.
    /// </summary>
    /// <param name="semitones">Semitones, up if positive; the result must be within C−10 to B22.</param>
    /// <returns>The moved pitch.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The result is outside C−10 to B22.</exception>
    public Pitch Transpose(int semitones)
    {
        var (octaves, rest) = int.DivRem(semitones, 12);
        var octave = Octave + octaves;
        return rest == 0 && octave is >= MinimumOctave and <= MaximumOctave
            ? new Pitch(Letter, Accidental, octave)
            : Transpose(semitones, Accidental < 0 ? PitchSpelling.Flats : PitchSpelling.Sharps);
    }

    /// <summary>This pitch moved by semitones, with the spelling that you choose.</summary>
    /// <param name="semitones">Semitones, up if positive; the result must be within C−10 to B22.</param>
    /// <param name="spelling">Sharps or flats.</param>
    /// <returns>The moved pitch.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The result is outside C−10 to B22, or the spelling is neither sharps nor flats.
    /// </exception>
    public Pitch Transpose(int semitones, PitchSpelling spelling)
    {
        Require.InRange(semitones, LowestNumber - Number, HighestNumber - Number, "");
        return FromNumber(Number + semitones, spelling);
    }

    /// <summary>True if the two pitches have the same <see cref="Number"/>, however they are spelled.</summary>
    /// <param name="other">The other pitch.</param>
    /// <returns>True if they sound alike.</returns>
    public bool IsEnharmonicTo(Pitch other) => Number == other.Number;

    /// <summary>Compares by <see cref="Number"/>: zero for pitches that sound alike, whether or not they are equal.</summary>
    /// <param name="other">The other pitch.</param>
    /// <returns>Negative, zero or positive, as this pitch is lower, alike or higher.</returns>
    public int CompareTo(Pitch other) => Number.CompareTo(other.Number);

    /// <summary>Whether <paramref name="left"/> has the lower number.</summary>
    public static bool operator <(Pitch left, Pitch right) => left.Number < right.Number;

    /// <summary>Whether <paramref name="left"/> has the higher number.</summary>
    public static bool operator >(Pitch left, Pitch right) => left.Number > right.Number;

    /// <summary>Whether <paramref name="left"/> has the lower number or the same.</summary>
    public static bool operator <=(Pitch left, Pitch right) => left.Number <= right.Number;

    /// <summary>Whether <paramref name="left"/> has the higher number or the same.</summary>
    public static bool operator >=(Pitch left, Pitch right) => left.Number >= right.Number;

    /// <summary>The pitch in plain ASCII, such as C#2, Ebb-1 or F##4, the same in every culture.</summary>
    /// <returns>The pitch as text.</returns>
    public override string ToString() => PitchNames.Ascii(this);

    /// <summary>The pitch as text, the same in every culture.</summary>
    /// <param name="format">
    /// "G", or nothing, for plain ASCII: C#2, Ebb-1. "U" for the signs of music: C♯2, E𝄫−1.
    /// </param>
    /// <returns>The pitch as text.</returns>
    /// <exception cref="FormatException">The format is neither "G" nor "U".</exception>
    public string ToString(string? format) =>
        format switch
        {
            null or "" or "G" => PitchNames.Ascii(this),
            "U" => PitchNames.Signs(this),
            _ => throw new FormatException(
                $"'{format}' is not a format of a pitch; use \"G\" for C#2 or \"U\" for C♯2."
            ),
        };

    /// <summary>Reads a pitch: a letter, an accidental if any, and an octave.</summary>
    /// <param name="text">
    /// Such as C2, c2, C#2, C♯2, Db2, D♭2, F##4, Fx4, Ebb-1 or C♮4, with or without white space around it. The first b of bb2 is the letter. The
    /// culture does not matter.
    /// </param>
    /// <returns>The pitch.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    /// <exception cref="FormatException">The text is not a pitch; the message says what is wrong.</exception>
    public static Pitch Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Parse(text.AsSpan());
    }

    /// <inheritdoc cref="Parse(string)"/>
    public static Pitch Parse(ReadOnlySpan<char> text) =>
        PitchParser.Problem(text, out var pitch) is { } problem ? throw new FormatException(problem) : pitch;

    /// <summary>Reads a pitch as <see cref="Parse(string)"/> does. It returns false, and gives C0, if the text is not a pitch.</summary>
    /// <param name="text">The text; null gives false.</param>
    /// <param name="pitch">The pitch.</param>
    /// <returns>True if the text is a pitch.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, out Pitch pitch) =>
        TryParse(text.AsSpan(), out pitch);

    /// <inheritdoc cref="TryParse(string?, out Pitch)"/>
    public static bool TryParse(ReadOnlySpan<char> text, out Pitch pitch) =>
        PitchParser.Problem(text, out pitch) is null;

    // The forms with a culture are there for generic code only: no culture changes how a pitch is written.
    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => ToString(format);

    static Pitch IParsable<Pitch>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Pitch>.TryParse(string? s, IFormatProvider? provider, out Pitch result) =>
        TryParse(s, out result);

    static Pitch ISpanParsable<Pitch>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => Parse(s);

    static bool ISpanParsable<Pitch>.TryParse(
        ReadOnlySpan<char> s,
        IFormatProvider? provider,
        out Pitch result
    ) => TryParse(s, out result);
}
