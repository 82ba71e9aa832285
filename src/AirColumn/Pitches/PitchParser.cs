using System.Text;

namespace AirColumn;

/// <summary>Reads a pitch from text and says what is wrong with text that is none.</summary>
internal static class PitchParser
{
    private const int LongestQuote = 24;

    /// <summary>Null and the pitch, or what is wrong with the text.</summary>
    public static string? Problem(ReadOnlySpan<char> text, out Pitch pitch)
    {
        pitch = default;
        var whole = text.Trim();
        if (whole.IsEmpty)
        {
            return "An empty text is not a pitch: write a letter, an accidental if any, and an octave, as in C#2.";
        }

        var upper = (char)(whole[0] & ~0x20);
        if (!char.IsAsciiLetterUpper(upper) || upper > 'G')
        {
            Rune.DecodeFromUtf16(whole, out var first, out _);
            return NotAPitch(whole, $"'{first}' is not a letter from A to G (the German H is B)");
        }

        var rest = whole[1..];
        if (!TakeAccidental(ref rest, out var accidental))
        {
            return NotAPitch(whole, "its accidental is not one of #, ♯, b, ♭, ##, x, 𝄪, bb, 𝄫 or ♮");
        }

        var name = whole[..^rest.Length];
        if (rest.IsEmpty)
        {
            return NotAPitch(whole, $"it has no octave; write {name}2, not {name}");
        }

        if (!TakeOctave(ref rest, out var octave))
        {
            return NotAPitch(
                whole,
                $"an octave, a whole number such as 2 or -1, comes after {name}, not {Quote(rest)}"
            );
        }

        if (!rest.IsEmpty)
        {
            return NotAPitch(
                whole,
                $"{Quote(rest)} comes after {Quote(whole[..^rest.Length])}; leave it out"
            );
        }

        if (octave is < Pitch.MinimumOctave or > Pitch.MaximumOctave)
        {
            return NotAPitch(
                whole,
                FormattableString.Invariant(
                    $"its octave is {Shorten(whole[name.Length..])}; allowed is {Pitch.MinimumOctave} to {Pitch.MaximumOctave}"
                )
            );
        }

        pitch = new Pitch(PitchNames.Letter(upper), accidental, octave);
        return null;
    }

    /// <summary>Takes all the signs there are: none, one, or two like single ones make an accidental.</summary>
    private static bool TakeAccidental(ref ReadOnlySpan<char> rest, out Accidental accidental)
    {
        var signs = 0;
        var last = 0;
        var sum = 0;
        while (Rune.DecodeFromUtf16(rest, out var sign, out var length) == 0 && Raise(sign) is { } raise)
        {
            rest = rest[length..];
            last = raise;
            sum += raise;
            signs++;
        }

        accidental = (Accidental)sum;
        return signs <= 1 || (signs == 2 && last is 1 or -1 && sum == 2 * last);
    }

    /// <summary>Semitones by which a sign raises, or null if it is not a sign.</summary>
    private static int? Raise(Rune sign) =>
        sign.Value switch
        {
            '#' or '♯' => 1,
            'b' or '♭' => -1,
            'x' or 0x1D12A => 2,
            0x1D12B => -2,
            '♮' => 0,
            _ => null,
        };

    private static bool TakeOctave(ref ReadOnlySpan<char> rest, out int octave)
    {
        octave = 0;
        var sign = rest[0] is '-' or '\u2212' ? 1 : 0;
        var end = sign;
        for (; end < rest.Length && char.IsAsciiDigit(rest[end]); end++)
        {
            // Far out of range is enough to know; more digits must not overflow.
            octave = Math.Min((octave * 10) + (rest[end] - '0'), 1000);
        }

        if (end == sign)
        {
            return false;
        }

        octave = sign == 1 ? -octave : octave;
        rest = rest[end..];
        return true;
    }

    private static string NotAPitch(ReadOnlySpan<char> text, string reason) =>
        $"{Quote(text)} is not a pitch: {reason}.";

    private static string Quote(ReadOnlySpan<char> text) => $"'{Shorten(text)}'";

    private static string Shorten(ReadOnlySpan<char> text) =>
        text.Length <= LongestQuote ? text.ToString() : $"{text[..LongestQuote]}…";
}
