using AirColumn.Recordings.Previews;

namespace AirColumn.Recordings.Tests.Previews;

public class LipThresholdTests
{
    private static readonly LipConstants Lips = new LipModel().Constants;

    // Published: lips that are blown open sound above the resonance of the column and above their own (fletcher1993), and by less than
    // a factor √3 above their own (silva2007, proven there without losses, and found to hold with them).
    [Theory]
    [InlineData("straight", 1)]
    [InlineData("straight", 2)]
    [InlineData("cone", 1)]
    [InlineData("cone", 2)]
    [InlineData("bell", 1)]
    public void Notes_begin_above_both_resonances(string name, int register)
    {
        var thresholds = Of(name, register, out var resonance);

        Assert.True(thresholds.Count > 20);
        Assert.All(
            thresholds,
            t =>
            {
                Assert.True(t.Hertz > resonance);
                Assert.InRange(t.Hertz / t.LipHertz, 1, Math.Sqrt(3));
            }
        );
    }

    // Lips at the lowest threshold, blown a tenth more and a tenth less than it: a ripple grows, or dies. Where its growth passes through
    // zero is the threshold in the time domain; the two are computed independently but for Z. To 1 % in pressure and 0.5 cent.
    [Theory]
    [InlineData("straight", 1)]
    [InlineData("cone", 1)]
    [InlineData("cone", 2)]
    public void The_simulation_begins_to_sound_at_the_linear_threshold(string name, int register)
    {
        var threshold = Of(name, register, out _).MinBy(t => t.Pascal);
        var (below, _) = Growth(name, threshold, 0.9);
        var (at, hertz) = Growth(name, threshold, 1);
        var (above, _) = Growth(name, threshold, 1.1);

        Assert.True(below < 0 && above > 0, $"{below} and {above} nepers a second");
        Tubes.Within(0.01, at * 0.2 / (above - below));
        Tubes.Within(0.5, Tubes.Cents(threshold.Hertz, hertz));
    }

    // From the lowest threshold down in frequency as long as each takes more pressure than the one above it, and no more than there is.
    [Theory]
    [InlineData(new double[] { 300, 200, 150, 100, 120 }, 200, 200)]
    [InlineData(new double[] { 300, 200, 150, 100, 120 }, 199, 150)]
    [InlineData(new double[] { 300, 150, 180, 100 }, 200, 180)]
    [InlineData(new double[] { 150, 100 }, 1000, 150)]
    [InlineData(new double[] { 150, 100 }, 50, 100)]
    public void The_slackest_lips_are_the_last_that_the_pressure_is_enough_for(
        double[] pascal,
        double pressure,
        double expected
    ) =>
        Assert.Equal(
            expected,
            LipThreshold
                .Slackest([.. pascal.Select((each, i) => new LipThreshold(100 + i, 90 + i, each))], pressure)
                .Pascal
        );

    // Slacker lips, more pressure, a note nearer to the resonance.
    [Fact]
    public void More_breath_allows_slacker_lips()
    {
        var thresholds = Of("straight", 1, out _);
        var easiest = LipThreshold.Slackest(thresholds, 0);
        var slack = LipThreshold.Slackest(thresholds, 3 * easiest.Pascal);

        Assert.Equal(thresholds.Min(t => t.Pascal), easiest.Pascal);
        Assert.InRange(slack.Pascal / easiest.Pascal, 2, 3);
        Assert.True(slack.LipHertz < easiest.LipHertz);
        Assert.True(slack.Hertz < easiest.Hertz);
    }

    private static List<LipThreshold> Of(string name, int register, out double resonance)
    {
        var column = Tubes.Column(name);
        resonance = Tubes.Hertz(column, register);
        return LipThreshold.Of(column, resonance, column.Air.Density.KilogramsPerCubicMeter, Lips);
    }

    // Nepers a second, and the frequency, from one to two and a half seconds after the lips were let go.
    private static (double Growth, double Hertz) Growth(string name, LipThreshold threshold, double times)
    {
        const int Rate = 48_000;
        var column = Tubes.Column(name);
        var player = new Player(column, new PreviewOptions());
        var simulation = new LipSimulation(
            player.Reflection,
            column.CharacteristicImpedance,
            column.Air.Density.KilogramsPerCubicMeter,
            Lips
        );
        var pascal = threshold.Pascal * times;
        var mouth = Enumerable.Repeat(pascal, Rate * 5 / 2).ToArray();
        // A thousandth from where the pressure holds them open.
        var omega = 2 * Math.PI * threshold.LipHertz;
        var open = Lips.Opening + pascal / (Lips.MassPerArea * omega * omega);
        var motion = simulation.Blow(mouth, threshold.LipHertz, 1.001 * open);
        var note = SteadyNote.Of(motion.Opening.AsSpan(Rate), motion.Pressure.AsSpan(Rate), Rate);
        // Mean squares of halves that follow each other after 0.75 s.
        return (Math.Log(note.Growth) / 2 / 0.75, note.Hertz);
    }
}
