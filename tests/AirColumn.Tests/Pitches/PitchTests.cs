using FsCheck.Xunit;

namespace AirColumn.Tests.Pitches;

[Properties(Arbitrary = [typeof(PitchArbitraries)])]
public class PitchTests
{
    // midi1996: middle C is note 60, the lowest note is 0, the highest 127 (from memory).
    // C3 to B3 as 48 to 59: rhodes2001.
    [Theory]
    [InlineData("C4", 60)]
    [InlineData("A4", 69)]
    [InlineData("C-1", 0)]
    [InlineData("G9", 127)]
    [InlineData("C3", 48)]
    [InlineData("C#3", 49)]
    [InlineData("D#3", 51)]
    [InlineData("F3", 53)]
    [InlineData("B3", 59)]
    public void Has_the_MIDI_note_number(string name, int number) =>
        Assert.Equal(number, Pitch.Parse(name).Number);

    // Scientific pitch notation: the octave goes with the letter, whatever the accidental does.
    [Theory]
    [InlineData("B#3", "C4")]
    [InlineData("Cb4", "B3")]
    [InlineData("B##3", "C#4")]
    [InlineData("Cbb4", "Bb3")]
    [InlineData("E#2", "F2")]
    [InlineData("F##2", "G2")]
    [InlineData("C#2", "Db2")]
    public void Octave_goes_with_the_letter(string one, string other)
    {
        var (a, b) = (Pitch.Parse(one), Pitch.Parse(other));
        Assert.True(a.IsEnharmonicTo(b));
        Assert.NotEqual(a, b);
        Assert.Equal(0, a.CompareTo(b));
        Assert.True(a <= b && a >= b && !(a < b) && !(a > b));
    }

    [Fact]
    public void Default_is_C0()
    {
        Assert.Equal(new Pitch(PitchLetter.C, 0), default);
        Assert.Equal("C0", default(Pitch).ToString());
    }

    [Property]
    public void Compares_by_what_sounds(Pitch a, Pitch b)
    {
        Assert.Equal(a.Number < b.Number, a < b);
        Assert.Equal(a.Number > b.Number, a > b);
        Assert.Equal(a.Number <= b.Number, a <= b);
        Assert.Equal(a.Number >= b.Number, a >= b);
        Assert.Equal(Math.Sign(a.Number - b.Number), Math.Sign(a.CompareTo(b)));
    }

    [Fact]
    public void Every_number_has_a_pitch_with_at_most_one_sign()
    {
        for (var number = -108; number <= 287; number++)
        {
            var sharp = Pitch.FromNumber(number);
            var flat = Pitch.FromNumber(number, PitchSpelling.Flats);
            Assert.Equal(number, sharp.Number);
            Assert.Equal(number, flat.Number);
            Assert.InRange(sharp.Accidental, Accidental.Natural, Accidental.Sharp);
            Assert.InRange(flat.Accidental, Accidental.Flat, Accidental.Natural);
            Assert.Equal(sharp.Accidental == Accidental.Natural, sharp == flat);
        }
    }

    [Theory]
    [InlineData("C2", 1, "C#2", "C#2", "Db2")]
    [InlineData("C2", -1, "B1")]
    [InlineData("Eb2", -2, "C#2", "Db2")]
    [InlineData("Bb2", 3, "C#3", "Db3")]
    [InlineData("F#2", 2, "G#2", "G#2", "Ab2")]
    [InlineData("C-1", -1, "B-2")]
    public void Transposes_in_the_pitchs_own_spelling_or_as_told(
        string from,
        int semitones,
        string sharps,
        string? own = null,
        string? flats = null
    )
    {
        var pitch = Pitch.Parse(from);
        Assert.Equal(own ?? sharps, pitch.Transpose(semitones).ToString());
        Assert.Equal(sharps, pitch.Transpose(semitones, PitchSpelling.Sharps).ToString());
        Assert.Equal(flats ?? own ?? sharps, pitch.Transpose(semitones, PitchSpelling.Flats).ToString());
    }

    [Theory]
    [InlineData("Ebb2", 12, "Ebb3")]
    [InlineData("B#3", 0, "B#3")]
    [InlineData("Cb4", -24, "Cb2")]
    [InlineData("E#-9", -12, "E#-10")]
    [InlineData("B#21", 12, "B#22")]
    public void Transposing_by_octaves_keeps_the_spelling(string from, int semitones, string to) =>
        Assert.Equal(to, Pitch.Parse(from).Transpose(semitones).ToString());

    [Property]
    public void Transposing_there_and_back_sounds_the_same(Pitch pitch, Pitch target)
    {
        var there = Math.Clamp(target.Number, -108, 287);
        var moved = pitch.Transpose(there - pitch.Number);
        Assert.Equal(there, moved.Number);
        if (pitch.Number is >= -108 and <= 287)
        {
            Assert.True(moved.Transpose(pitch.Number - there).IsEnharmonicTo(pitch));
        }
    }

    [Fact]
    public void Transposing_past_the_last_octave_respells_or_says_how_far_it_may_go()
    {
        Assert.Equal("B22", Pitch.Parse("Cb22").Transpose(12).ToString());
        Assert.Equal("B##22", Pitch.Parse("B##22").Transpose(0).ToString());
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Pitch.Parse("A4").Transpose(219));
        Assert.StartsWith(
            "semitones is 219; allowed is -177 to 218.",
            error.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => Pitch.Parse("A4").Transpose(int.MinValue));
        Assert.Throws<ArgumentOutOfRangeException>(() => Pitch.Parse("A4").Transpose(int.MaxValue));
    }

    [Theory]
    [InlineData(0, 0, 23, "octave is 23; allowed is -10 to 22.")]
    [InlineData(0, 0, -11, "octave is -11; allowed is -10 to 22.")]
    [InlineData(7, 0, 0, "letter is 7; allowed is 0 to 6.")]
    [InlineData(-1, 0, 0, "letter is -1; allowed is 0 to 6.")]
    [InlineData(0, 3, 0, "accidental is 3; allowed is -2 to 2.")]
    [InlineData(0, -3, 0, "accidental is -3; allowed is -2 to 2.")]
    public void Refuses_what_is_no_pitch(int letter, int accidental, int octave, string message)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() =>
            new Pitch((PitchLetter)letter, (Accidental)accidental, octave)
        );
        Assert.StartsWith(message, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(288, 0, "number is 288; allowed is -108 to 287.")]
    [InlineData(-109, 0, "number is -109; allowed is -108 to 287.")]
    [InlineData(60, 2, "spelling is 2; use Sharps or Flats.")]
    public void Refuses_numbers_and_spellings_there_are_none_of(int number, int spelling, string message)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() =>
            Pitch.FromNumber(number, (PitchSpelling)spelling)
        );
        Assert.StartsWith(message, error.Message, StringComparison.Ordinal);
    }
}
