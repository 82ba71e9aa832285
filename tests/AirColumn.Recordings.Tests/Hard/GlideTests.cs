namespace AirColumn.Recordings.Tests.Hard;

/// <summary>A glide is no held note: it is refused, or the stated range covers all that it passes through.</summary>
public class GlideTests
{
    private static readonly double[] Rates = [10, 15, 20, 30, 45, 60, 90, 120, 240, 500]; // cents in a second

    // Up and down, with and without vibrato: forty.
    [Theory]
    [InlineData(1, 0)]
    [InlineData(-1, 0)]
    [InlineData(1, 25)]
    [InlineData(-1, 25)]
    public void A_glide_is_never_steadier_than_it_is(int sign, double vibratoCents)
    {
        for (var i = 0; i < Rates.Length; i += Amount.Of(3, 1))
        {
            var glide = HardTake.Glide(i + (sign > 0 ? 0 : 10), sign * Rates[i], vibratoCents, 4);
            var take = Take.Of(glide.Recorded());
            foreach (var note in take.Notes)
            {
                var (from, to) = (note.Pitch[0].Time.Seconds, note.Pitch[^1].Time.Seconds);
                var off = new[] { from, to }.Max(t =>
                    Math.Abs(1200 * Math.Log2(glide.HertzAt(t) / note.Fundamental.Hertz))
                );
                Assert.True(off <= note.PlusMinusCents, $"{Rates[i]} cents a second: {note}, off by {off}");
            }

            Assert.True(Rates[i] < 30 || take.Drone is null, $"{Rates[i]} cents a second: {take.Drone}");
            Assert.True(
                take.Drone is null
                    ? take.Reason!.Contains("glides", StringComparison.Ordinal)
                    : take.Warnings.Any(warning =>
                        warning.Contains("while it is held", StringComparison.Ordinal)
                    ),
                $"{Rates[i]} cents a second: {take.Reason}"
            );
        }
    }

    // Eight equal harmonics from 66 Hz, five seconds.
    [Theory]
    [InlineData(20)]
    [InlineData(60)]
    [InlineData(120)]
    [InlineData(240)]
    public void A_long_glide_is_refused(double rate)
    {
        var tone = new TestTone
        {
            Hertz = 66 * Math.Pow(2, rate * 2.5 / 1200),
            Seconds = 5,
            Partials = [1, 1, 1, 1, 1, 1, 1, 1],
            DriftCentsPerSecond = rate,
        };
        var take = Take.Of(tone.Recorded());
        Assert.Null(take.Drone);
        Assert.Contains("the pitch glides", take.Reason, StringComparison.Ordinal);
    }

    // Held for two seconds on either side of a glide of a fourth of a second: two notes, and nothing between them.
    [Fact]
    public void Notes_that_a_glide_joins_are_two()
    {
        const double rate = TestRate;
        var sound = new double[(int)(4.25 * rate)];
        var turns = 0.0;
        for (var i = 0; i < sound.Length; i++)
        {
            var cents = 100 * Math.Clamp((i / rate - 2) / 0.25, 0, 1);
            turns += 70 * Math.Pow(2, cents / 1200) / rate;
            for (var h = 1; h <= 12; h++)
            {
                sound[i] += 0.1 / h * Math.Sin(2 * Math.PI * h * turns + h * h);
            }
        }

        var take = Take.Of(Recording.FromSamples(sound, UnitsNet.Frequency.FromHertz(rate)));
        Assert.Equal(2, take.Notes.Count);
        Assert.Equal(0, 1200 * Math.Log2(take.Notes[0].Fundamental.Hertz / 70), 1.5);
        Assert.Equal(100, 1200 * Math.Log2(take.Notes[1].Fundamental.Hertz / 70), 1.5);
    }

    private const double TestRate = HardTake.Rate;
}
