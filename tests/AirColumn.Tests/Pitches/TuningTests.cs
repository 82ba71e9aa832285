using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace AirColumn.Tests.Pitches;

[Properties(Arbitrary = [typeof(PitchArbitraries)])]
public class TuningTests
{
    [Fact]
    public void Concert_A_is_440_hertz()
    {
        // iso16.
        Assert.Equal(440, Tuning.Concert.FrequencyOf(Pitch.Parse("A4")).Hertz);
        Assert.Equal(440, Tuning.Concert.Reference.Hertz);
        Assert.Equal(Temperament.Equal, Tuning.Concert.Temperament);
    }

    // crc, section 14, Musical Scales, table 1 (equal tempered, A4 = 440 Hz).
    // The tolerance is half of the last digit.
    [Theory]
    [InlineData("C0", 16.352, 0.0005)]
    [InlineData("C#0", 17.324, 0.0005)]
    [InlineData("D0", 18.354, 0.0005)]
    [InlineData("D#0", 19.445, 0.0005)]
    [InlineData("E0", 20.602, 0.0005)]
    [InlineData("F0", 21.827, 0.0005)]
    [InlineData("C2", 65.406, 0.0005)]
    [InlineData("C#2", 69.296, 0.0005)]
    [InlineData("D2", 73.416, 0.0005)]
    [InlineData("D#2", 77.782, 0.0005)]
    [InlineData("E2", 82.407, 0.0005)]
    [InlineData("F2", 87.307, 0.0005)]
    [InlineData("C4", 261.63, 0.005)]
    [InlineData("C#4", 277.18, 0.005)]
    [InlineData("D#4", 311.13, 0.005)]
    [InlineData("F4", 349.23, 0.005)]
    [InlineData("C6", 1046.50, 0.005)]
    [InlineData("D#6", 1244.51, 0.005)]
    [InlineData("F6", 1396.91, 0.005)]
    // The usual tables of note frequencies, with more digits (from memory).
    [InlineData("C2", 65.4064, 0.00005)]
    [InlineData("C4", 261.6256, 0.00005)]
    [InlineData("C8", 4186.009, 0.0005)]
    // B. H. Suits, Physics of Music - Notes, Michigan Technological University: frequencies of the equal-tempered
    // scale, A4 = 440 Hz. Here with flats.
    [InlineData("A0", 27.50, 0.005)]
    [InlineData("Gb1", 46.25, 0.005)]
    [InlineData("Ab2", 103.83, 0.005)]
    [InlineData("Bb3", 233.08, 0.005)]
    [InlineData("G3", 196.00, 0.005)]
    [InlineData("B5", 987.77, 0.005)]
    public void Concert_pitches_have_their_published_frequencies(
        string pitch,
        double hertz,
        double tolerance
    ) => Assert.Equal(hertz, Tuning.Concert.FrequencyOf(Pitch.Parse(pitch)).Hertz, tolerance);

    [Theory]
    [InlineData(415)]
    [InlineData(432)]
    [InlineData(466)]
    public void Octaves_of_the_reference_are_exact(double reference)
    {
        var tuning = Tuning.Concert.WithReference(Frequency.FromHertz(reference));
        Assert.Equal(reference / 4, tuning.FrequencyOf(Pitch.Parse("A2")).Hertz);
        Assert.Equal(reference * 8, tuning.FrequencyOf(Pitch.Parse("A7")).Hertz);
    }

    [Property]
    public void The_frequency_of_a_pitch_reads_as_that_pitch(Pitch pitch, Tuning tuning)
    {
        var frequency = tuning.FrequencyOf(pitch);
        if (frequency.Hertz is >= 1 and <= 100_000)
        {
            var reading = tuning.Nearest(frequency);
            Assert.True(reading.Pitch.IsEnharmonicTo(pitch));
            Assert.Equal(0, reading.Cents);
        }
    }

    // A pitch is up to 17 octaves from the reference; a double holds that to 2e-15 octaves, so its power of two
    // is good to 1.2e-15, and the other operations add a few times 1e-16.
    [Property]
    public Property A_reading_gives_the_frequency_back(Tuning tuning) =>
        Prop.ForAll(
            PitchArbitraries.Frequencies(1, 1e5).ToArbitrary(),
            hertz =>
            {
                var (pitch, cents) = tuning.Nearest(Frequency.FromHertz(hertz));
                var back = tuning.FrequencyOf(pitch).Hertz * Math.Pow(2, cents / 1200);
                Assert.Equal(hertz, back, 1e-14 * hertz);
            }
        );

    // Halfway is 50 cents; 1e-9 is far above the rounding of doubles and far below anything heard.
    [Property]
    public Property Equal_temperament_is_never_more_than_50_cents_away() =>
        Prop.ForAll(
            PitchArbitraries.Frequencies(1, 1e5).ToArbitrary(),
            PitchArbitraries.Frequencies(1, 1e4).ToArbitrary(),
            (hertz, reference) =>
            {
                var tuning = Tuning.Concert.WithReference(Frequency.FromHertz(reference));
                Assert.InRange(tuning.Nearest(Frequency.FromHertz(hertz)).Cents, -50 - 1e-9, 50 + 1e-9);
            }
        );

    [Property]
    public Property No_other_pitch_is_nearer(Tuning tuning) =>
        Prop.ForAll(
            PitchArbitraries.Frequencies(1, 1e5).ToArbitrary(),
            hertz =>
            {
                var distance = Math.Abs(tuning.Nearest(Frequency.FromHertz(hertz)).Cents);
                for (var number = -108; number <= 287; number++)
                {
                    var other = tuning.FrequencyOf(Pitch.FromNumber(number)).Hertz;
                    Assert.True(distance <= Math.Abs(1200 * Math.Log2(hertz / other)) + 1e-9);
                }
            }
        );

    [Fact]
    public void A_very_uneven_temperament_still_gives_the_nearest()
    {
        // With A kept on the reference, C4 is 900 - 200 = 700 cents below A4, C#4 800 - 105 = 695 below and D4
        // 700 - 200 = 500 below: neighbours 5 and 195 cents apart.
        var uneven = Temperament.FromOffsets("uneven", [100, 5, 100, 50, 0, 0, 0, 0, -50, -100, -50, 50]);
        var tuning = new Tuning(Frequency.FromHertz(440), uneven);
        string At(double centsFromA) =>
            tuning.Nearest(Frequency.FromHertz(440 * Math.Pow(2, centsFromA / 1200))).ToString();
        Assert.Equal("C4 +0.0 cents", At(-700));
        Assert.Equal("C4 +2.0 cents", At(-698));
        Assert.Equal("C#4 -2.0 cents", At(-697));
        Assert.Equal("C#4 +97.0 cents", At(-598));
        Assert.Equal("D4 -97.0 cents", At(-597));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 10_000)]
    [InlineData(100_000, 1)]
    [InlineData(100_000, 10_000)]
    public void The_ends_of_the_ranges_have_a_name_even_in_extreme_temperaments(
        double hertz,
        double reference
    )
    {
        foreach (var temperament in PitchArbitraries.ExtremeTemperaments)
        {
            var tuning = new Tuning(Frequency.FromHertz(reference), temperament);
            var (pitch, cents) = tuning.Nearest(Frequency.FromHertz(hertz));
            Assert.Equal(hertz, tuning.FrequencyOf(pitch).Hertz * Math.Pow(2, cents / 1200), 1e-14 * hertz);
        }
    }

    [Fact]
    public void Names_with_sharps_or_flats()
    {
        var frequency = Frequency.FromHertz(69.296);
        Assert.Equal("C#2", Tuning.Concert.Nearest(frequency).Pitch.ToString());
        Assert.Equal("Db2", Tuning.Concert.Nearest(frequency, PitchSpelling.Flats).Pitch.ToString());
    }

    [Fact]
    public void Is_a_value_that_says_what_it_is()
    {
        var other = Tuning.Concert.WithReference(Frequency.FromKilohertz(0.44));
        Assert.Equal(Tuning.Concert, other);
        Assert.Equal(Tuning.Concert.GetHashCode(), other.GetHashCode());
        Assert.NotEqual(Tuning.Concert.WithReference(Frequency.FromHertz(442)), other);
        Culture.Run(
            "de-DE",
            () =>
                Assert.Equal(
                    "A4 = 442.5 Hz, equal temperament",
                    Tuning.Concert.WithReference(Frequency.FromHertz(442.5)).ToString()
                )
        );
    }

    [Fact]
    public void Another_reference_keeps_the_temperament()
    {
        var raisedC = Temperament.FromOffsets("raised C", [12, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
        var (low, high) = (Frequency.FromHertz(415), Frequency.FromHertz(440));
        Assert.Equal(new Tuning(low, raisedC), new Tuning(high, raisedC).WithReference(low));
    }

    [Theory]
    [InlineData(0, "0 Hz")]
    [InlineData(0.5, "0.5 Hz")]
    [InlineData(-440, "-440 Hz")]
    [InlineData(100_001, "100001 Hz")]
    public void Refuses_what_is_out_of_range(double hertz, string shown)
    {
        var bad = Frequency.FromHertz(hertz);
        var reference = Assert.Throws<ArgumentOutOfRangeException>(() => Tuning.Concert.WithReference(bad));
        Assert.StartsWith(
            $"reference is {shown}; allowed is 1 Hz to 10000 Hz.",
            reference.Message,
            StringComparison.Ordinal
        );
        var frequency = Assert.Throws<ArgumentOutOfRangeException>(() => Tuning.Concert.Nearest(bad));
        Assert.StartsWith(
            $"frequency is {shown}; allowed is 1 Hz to 100000 Hz.",
            frequency.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentNullException>(() => new Tuning(Frequency.FromHertz(440), null!));
    }
}
