using UnitsNet;

namespace AirColumn.Tests.Pitches;

/// <summary>Temperaments that are defined by their fifths or were published as tables.</summary>
public class HistoricalTemperamentTests
{
    [Fact]
    public void Quarter_comma_meantone_has_pure_thirds_and_its_wolf()
    {
        // P. Aaron, Toscanello in musica, 1523: every fifth from E flat up to G sharp is the fourth root of 5, so
        // that four of them make a pure third, 5:4. G sharp to E flat is left over: 2^7/5^(11/4).
        var fifth = Math.Pow(5, 0.25);
        var tuning = new Tuning(
            Frequency.FromHertz(440),
            FromFifths("quarter-comma meantone", lowest: 3, Enumerable.Repeat(fifth, 11))
        );

        // 1e-12: doubles of a few roundings each.
        Assert.Equal(1.25, Ratio(tuning, "C4", "E4"), 1e-12);
        Assert.Equal(1.25, Ratio(tuning, "Eb4", "G4"), 1e-12);
        Assert.Equal(1.25, Ratio(tuning, "E4", "G#4"), 1e-12);
        Assert.Equal(fifth, Ratio(tuning, "C4", "G4"), 1e-12);
        Assert.Equal(fifth, Ratio(tuning, "D4", "A4"), 1e-12);
        Assert.Equal(128 / Math.Pow(5, 2.75), Ratio(tuning, "G#3", "Eb4"), 1e-12);
        Assert.Equal(440, tuning.FrequencyOf(Pitch.Parse("A4")).Hertz);
        Assert.Equal(880 / Math.Pow(5, 0.75), tuning.FrequencyOf(Pitch.Parse("C4")).Hertz, 1e-9);
    }

    // Werckmeister III: the fifths C-G, G-D, D-A and B-F# are narrow by a quarter of the Pythagorean comma
    // 3^12/2^19, the others pure. Frequencies: rhodes2001. Cents above equal temperament with A at
    // zero: pianotech1999. The tolerances are half of the last digit.
    [Theory]
    [InlineData("C3", 131.7021, 11.7)]
    [InlineData("C#3", 138.7479, 2.0)]
    [InlineData("D3", 147.1644, 3.9)]
    [InlineData("D#3", 156.0914, 5.9)]
    [InlineData("E3", 165.0000, 2.0)]
    [InlineData("F3", 175.6028, 9.8)]
    [InlineData("F#3", 184.9972, 0.0)]
    [InlineData("G3", 196.8850, 7.8)]
    [InlineData("G#3", 208.1219, 3.9)]
    [InlineData("A3", 220.0000, 0.0)]
    [InlineData("A#3", 234.1371, 7.8)]
    [InlineData("B3", 247.5000, 3.9)]
    public void Werckmeister_III_has_its_published_frequencies(string name, double hertz, double cents)
    {
        var pure = 1.5;
        var narrow = 1.5 / Math.Pow(Math.Pow(3, 12) / Math.Pow(2, 19), 0.25);
        double[] fifths = [narrow, narrow, narrow, pure, pure, narrow, pure, pure, pure, pure, pure];
        var tuning = new Tuning(Frequency.FromHertz(440), FromFifths("Werckmeister III", lowest: 0, fifths));
        var pitch = Pitch.Parse(name);
        Assert.Equal(hertz, tuning.FrequencyOf(pitch).Hertz, 0.00005);
        Assert.Equal(cents, Tuning.Concert.Nearest(tuning.FrequencyOf(pitch)).Cents, 0.05);
    }

    /// <summary>A temperament from its fifths, upwards from a pitch of the octave (0 is C).</summary>
    private static Temperament FromFifths(string name, int lowest, IEnumerable<double> fifths)
    {
        var offsets = new double[12];
        var (at, offset) = (lowest, 0.0);
        foreach (var fifth in fifths)
        {
            offset += (1200 * Math.Log2(fifth)) - 700;
            at = (at + 7) % 12;
            offsets[at] = offset;
        }

        return Temperament.FromOffsets(name, offsets);
    }

    private static double Ratio(Tuning tuning, string from, string to) =>
        tuning.FrequencyOf(Pitch.Parse(to)) / tuning.FrequencyOf(Pitch.Parse(from));
}
