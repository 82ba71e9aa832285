namespace AirColumn.Tests.Pitches;

public class PitchReadingTests
{
    [Theory]
    [InlineData("C2", -3.1, "C2 -3.1 cents")]
    [InlineData("C#2", 12.345, "C#2 +12.3 cents")]
    [InlineData("Bb-1", 0, "Bb-1 +0.0 cents")]
    [InlineData("A4", -0.01, "A4 +0.0 cents")]
    [InlineData("A4", -1234.5, "A4 -1234.5 cents")]
    public void Writes_the_sign_and_one_decimal_in_any_culture(string pitch, double cents, string text)
    {
        foreach (var culture in new[] { "", "tr-TR", "de-DE", "ar-SA", "fa-IR", "sv-SE" })
        {
            Culture.Run(
                culture,
                () => Assert.Equal(text, new PitchReading(Pitch.Parse(pitch), cents).ToString())
            );
        }
    }

    [Fact]
    public void Is_a_value_and_comes_apart()
    {
        var reading = new PitchReading(Pitch.Parse("C2"), -3.1);
        var (pitch, cents) = reading;
        Assert.Equal(new PitchReading(pitch, cents), reading);
        Assert.NotEqual(new PitchReading(pitch, 3.1), reading);
        Assert.Equal("C0 +0.0 cents", default(PitchReading).ToString());
    }

    [Theory]
    [InlineData(double.NaN, "NaN")]
    [InlineData(double.PositiveInfinity, "Infinity")]
    [InlineData(-1_200_001, "-1200001")]
    public void Refuses_a_deviation_that_is_none(double cents, string shown)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => new PitchReading(default, cents));
        Assert.StartsWith(
            $"Cents is {shown} cents; allowed is -1200000 cents to 1200000 cents.",
            error.Message,
            StringComparison.Ordinal
        );
    }
}
