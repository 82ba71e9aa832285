using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace AirColumn.Tests.Pitches;

[Properties(Arbitrary = [typeof(PitchArbitraries)])]
public class PitchTextTests
{
    [Theory]
    [InlineData("C2", PitchLetter.C, Accidental.Natural, 2)]
    [InlineData("c2", PitchLetter.C, Accidental.Natural, 2)]
    [InlineData(" \tg5\n", PitchLetter.G, Accidental.Natural, 5)]
    [InlineData("C\u266E4", PitchLetter.C, Accidental.Natural, 4)]
    [InlineData("C#2", PitchLetter.C, Accidental.Sharp, 2)]
    [InlineData("C\u266F2", PitchLetter.C, Accidental.Sharp, 2)]
    [InlineData("Db2", PitchLetter.D, Accidental.Flat, 2)]
    [InlineData("D\u266D2", PitchLetter.D, Accidental.Flat, 2)]
    [InlineData("Cx4", PitchLetter.C, Accidental.DoubleSharp, 4)]
    [InlineData("C##4", PitchLetter.C, Accidental.DoubleSharp, 4)]
    [InlineData("C\u266F\u266F4", PitchLetter.C, Accidental.DoubleSharp, 4)]
    [InlineData("C\U0001D12A4", PitchLetter.C, Accidental.DoubleSharp, 4)]
    [InlineData("Ebb-1", PitchLetter.E, Accidental.DoubleFlat, -1)]
    [InlineData("E\u266D\u266D-1", PitchLetter.E, Accidental.DoubleFlat, -1)]
    [InlineData("E\U0001D12B\u22121", PitchLetter.E, Accidental.DoubleFlat, -1)]
    [InlineData("B2", PitchLetter.B, Accidental.Natural, 2)]
    [InlineData("b2", PitchLetter.B, Accidental.Natural, 2)]
    [InlineData("Bb2", PitchLetter.B, Accidental.Flat, 2)]
    [InlineData("bb2", PitchLetter.B, Accidental.Flat, 2)]
    [InlineData("bbb2", PitchLetter.B, Accidental.DoubleFlat, 2)]
    [InlineData("A22", PitchLetter.A, Accidental.Natural, 22)]
    [InlineData("A-10", PitchLetter.A, Accidental.Natural, -10)]
    [InlineData("A04", PitchLetter.A, Accidental.Natural, 4)]
    [InlineData("A-0", PitchLetter.A, Accidental.Natural, 0)]
    public void Reads(string text, PitchLetter letter, Accidental accidental, int octave)
    {
        var expected = new Pitch(letter, accidental, octave);
        Assert.Equal(expected, Pitch.Parse(text));
        Assert.True(Pitch.TryParse(text, out var pitch));
        Assert.Equal(expected, pitch);
    }

    [Theory]
    [InlineData(
        "",
        "An empty text is not a pitch: write a letter, an accidental if any, and an octave, as in C#2."
    )]
    [InlineData(
        "  ",
        "An empty text is not a pitch: write a letter, an accidental if any, and an octave, as in C#2."
    )]
    [InlineData("H2", "'H2' is not a pitch: 'H' is not a letter from A to G (the German H is B).")]
    [InlineData("#2", "'#2' is not a pitch: '#' is not a letter from A to G (the German H is B).")]
    [InlineData("C", "'C' is not a pitch: it has no octave; write C2, not C.")]
    [InlineData("Bb", "'Bb' is not a pitch: it has no octave; write Bb2, not Bb.")]
    [InlineData("C23", "'C23' is not a pitch: its octave is 23; allowed is -10 to 22.")]
    [InlineData("C#-11", "'C#-11' is not a pitch: its octave is -11; allowed is -10 to 22.")]
    [InlineData("C2x", "'C2x' is not a pitch: 'x' comes after 'C2'; leave it out.")]
    [InlineData("C2.5", "'C2.5' is not a pitch: '.5' comes after 'C2'; leave it out.")]
    [InlineData(
        "C 2",
        "'C 2' is not a pitch: an octave, a whole number such as 2 or -1, comes after C, not ' 2'."
    )]
    [InlineData(
        "Do4",
        "'Do4' is not a pitch: an octave, a whole number such as 2 or -1, comes after D, not 'o4'."
    )]
    [InlineData(
        "Eb-",
        "'Eb-' is not a pitch: an octave, a whole number such as 2 or -1, comes after Eb, not '-'."
    )]
    [InlineData(
        "C#b2",
        "'C#b2' is not a pitch: its accidental is not one of #, ♯, b, ♭, ##, x, 𝄪, bb, 𝄫 or ♮."
    )]
    [InlineData(
        "Cxx2",
        "'Cxx2' is not a pitch: its accidental is not one of #, ♯, b, ♭, ##, x, 𝄪, bb, 𝄫 or ♮."
    )]
    [InlineData(
        "C♮♮2",
        "'C♮♮2' is not a pitch: its accidental is not one of #, ♯, b, ♭, ##, x, 𝄪, bb, 𝄫 or ♮."
    )]
    [InlineData(
        "Cbbb2",
        "'Cbbb2' is not a pitch: its accidental is not one of #, ♯, b, ♭, ##, x, 𝄪, bb, 𝄫 or ♮."
    )]
    public void Says_what_is_wrong(string text, string message)
    {
        Assert.Equal(message, Assert.Throws<FormatException>(() => Pitch.Parse(text)).Message);
        Assert.False(Pitch.TryParse(text, out var pitch));
        Assert.Equal(default, pitch);
    }

    [Theory]
    [InlineData("C99999999999999999999")]
    [InlineData("C-99999999999999999999")]
    [InlineData("C\u0662")] // a digit two, but not an ASCII one
    [InlineData("\uD834")] // half a character
    [InlineData("C\uD834")]
    public void Refuses_odd_text(string text) => Assert.Throws<FormatException>(() => Pitch.Parse(text));

    [Fact]
    public void Quotes_no_more_than_the_beginning_of_long_text()
    {
        var error = Assert.Throws<FormatException>(() => Pitch.Parse(new string('q', 100_000)));
        Assert.InRange(error.Message.Length, 1, 150);
        error = Assert.Throws<FormatException>(() => Pitch.Parse("C" + new string('9', 100_000)));
        Assert.InRange(error.Message.Length, 1, 150);
        error = Assert.Throws<FormatException>(() => Pitch.Parse("C2" + new string('9', 100_000) + "x"));
        Assert.InRange(error.Message.Length, 1, 150);
    }

    [Theory]
    [InlineData("Q23456789012345678901234", "'Q23456789012345678901234' is not a pitch")]
    [InlineData("Q234567890123456789012345", "'Q23456789012345678901234…' is not a pitch")]
    public void Quotes_twenty_four_characters_and_says_that_more_follow(string text, string beginning) =>
        Assert.StartsWith(
            beginning,
            Assert.Throws<FormatException>(() => Pitch.Parse(text)).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Null_is_an_argument_error_or_false()
    {
        Assert.Throws<ArgumentNullException>(() => Pitch.Parse((string)null!));
        Assert.False(Pitch.TryParse(null, out _));
    }

    [Theory]
    [InlineData("C#2", "C♯2")]
    [InlineData("Db-1", "D♭−1")]
    [InlineData("Ebb-1", "E𝄫−1")]
    [InlineData("F##4", "F𝄪4")]
    [InlineData("A4", "A4")]
    public void Writes_ASCII_or_the_signs_of_music(string ascii, string signs)
    {
        var pitch = Pitch.Parse(ascii);
        Assert.Equal(ascii, pitch.ToString());
        Assert.Equal(ascii, pitch.ToString("G"));
        Assert.Equal(ascii, pitch.ToString(null));
        Assert.Equal(ascii, pitch.ToString(""));
        Assert.Equal(signs, pitch.ToString("U"));
        Assert.Equal(signs, string.Create(CultureInfo.InvariantCulture, $"{pitch:U}"));
        var error = Assert.Throws<FormatException>(() => pitch.ToString("Z"));
        Assert.Equal("'Z' is not a format of a pitch; use \"G\" for C#2 or \"U\" for C♯2.", error.Message);
    }

    // These write a minus sign, a decimal point, digits or the letter i in their own ways.
    [Theory]
    [InlineData("")]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    [InlineData("fa-IR")]
    [InlineData("sv-SE")]
    public void Every_pitch_survives_writing_and_reading_in_any_culture(string culture) =>
        Culture.Run(
            culture,
            () =>
            {
                foreach (var pitch in PitchArbitraries.All)
                {
                    var text = pitch.ToString();
                    Assert.All(text, c => Assert.True(char.IsAscii(c)));
                    Assert.Equal(pitch, Pitch.Parse(text));
                    Assert.Equal(pitch, Pitch.Parse(pitch.ToString("U")));
                    Assert.Equal(pitch, Generic<Pitch>(text));
                }
            }
        );

    [Property(MaxTest = 2000)]
    public Property Nothing_but_a_format_error_comes_of_random_text() =>
        Prop.ForAll(Texts.ToArbitrary(), ReadsBackOrIsAFormatError);

    [Property]
    public void Nothing_but_a_format_error_comes_of_any_string(NonNull<string> text) =>
        ReadsBackOrIsAFormatError(text.Get);

    // Text made of what pitches are made of, so that many come close and some are pitches.
    private static Gen<string> Texts =>
        Gen.Elements(
                "A",
                "b",
                "b",
                "C",
                "H",
                "#",
                "x",
                "\u266F",
                "\u266D",
                "\u266E",
                "\U0001D12A",
                "\U0001D12B",
                "\uD834",
                "\uDD2A",
                "-",
                "\u2212",
                "+",
                "0",
                "1",
                "2",
                "9",
                "\u0662",
                " ",
                ".",
                "\0"
            )
            .ListOf()
            .Select(string.Concat);

    private static void ReadsBackOrIsAFormatError(string text)
    {
        var ok = Pitch.TryParse(text, out var pitch);
        if (!ok)
        {
            Assert.Throws<FormatException>(() => Pitch.Parse(text));
            return;
        }

        Assert.Equal(pitch, Pitch.Parse(text));
        Assert.Equal(pitch, Pitch.Parse(pitch.ToString()));
    }

    private static T Generic<T>(string text)
        where T : ISpanParsable<T>
    {
        var result = T.Parse(text, CultureInfo.CurrentCulture);
        Assert.Equal(result, T.Parse(text.AsSpan(), CultureInfo.CurrentCulture));
        Assert.True(T.TryParse(text, CultureInfo.CurrentCulture, out var tried));
        Assert.Equal(result, tried);
        Assert.True(T.TryParse(text.AsSpan(), CultureInfo.CurrentCulture, out tried));
        Assert.Equal(result, tried);
        return result;
    }

    // There a minus sign has a mark before it that nobody types.
    [Fact]
    public void What_is_wrong_is_said_alike_in_every_country() =>
        Culture.Run(
            "ar-SA",
            () => Says_what_is_wrong("C23", "'C23' is not a pitch: its octave is 23; allowed is -10 to 22.")
        );
}
