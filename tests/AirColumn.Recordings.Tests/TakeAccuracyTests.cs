namespace AirColumn.Recordings.Tests;

/// <summary>How near the measured pitch is to the true one, over many takes of two seconds.</summary>
public class TakeAccuracyTests
{
    private static readonly int Takes = Amount.Of(2, 5);

    public static TheoryData<string, double[]> Sounds =>
        new()
        {
            { "all partials", TestTone.Falling(30) },
            { "no fundamental", TestTone.NoFundamental(30) },
            { "weak fundamental", TestTone.WeakFundamental(30) },
            { "sine", [1] },
        };

    // At 20 dB of tone over noise, all at once: breath noise, vibrato, mains hum at a tenth of the tone.
    [Theory]
    [MemberData(nameof(Sounds))]
    public void Bias_is_below_a_tenth_of_a_cent_and_deviation_below_half_a_cent(
        string name,
        double[] partials
    )
    {
        foreach (var hertz in Amount.Of([45, 110, 520], (double[])[45, 70, 110, 230, 520, 1000]))
        {
            var errors = Errors(
                new TestTone
                {
                    Hertz = hertz,
                    Partials = partials,
                    SignalToNoise = 20,
                    IsBreath = true,
                    VibratoCents = 15,
                    Hum = 0.1,
                }
            );
            var mean = errors.Average();
            var deviation = Math.Sqrt(errors.Average(e => (e - mean) * (e - mean)));
            Assert.True(Math.Abs(mean) < 0.1, $"{name}, {hertz} Hz: bias {mean} cents");
            Assert.True(deviation < 0.5, $"{name}, {hertz} Hz: standard deviation {deviation} cents");
        }
    }

    // Errors over their stated uncertainty: 1 on the average. Of 40 the root mean square lies within 0.72 and 1.29 nearly always
    // (chi-squared, 99 %); a little room, since the phases of neighbouring windows are not quite independent.
    [Fact]
    public void The_stated_uncertainty_is_that_of_the_errors() => IsThatOfTheErrors(20, true);

    [Theory]
    [Trait(Amount.Trait, Amount.Long)]
    [InlineData(20, false)]
    [InlineData(5, false)]
    public void In_other_noise_too(double signalToNoise, bool isBreath) =>
        IsThatOfTheErrors(signalToNoise, isBreath);

    private static void IsThatOfTheErrors(double signalToNoise, bool isBreath)
    {
        var ratios = new List<double>();
        for (var seed = 0; seed < 40; seed++)
        {
            var tone = new TestTone
            {
                Hertz = 60 + 4.5 * seed,
                SignalToNoise = signalToNoise,
                IsBreath = isBreath,
                Seed = seed,
            };
            var drone = Take.Of(tone.Recorded()).Drone!;
            ratios.Add(Error(tone, drone) / drone.StandardUncertaintyCents);
        }

        Assert.InRange(Math.Sqrt(ratios.Average(r => r * r)), 0.7, 1.35);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(-4)]
    public void A_drift_is_measured_as_a_drift(double drift)
    {
        var tone = new TestTone { SignalToNoise = 20, DriftCentsPerSecond = drift };
        var drone = Take.Of(tone.Recorded()).Drone!;
        Assert.Equal(drift, drone.DriftCentsPerSecond, 0.05);
        Assert.Equal(0, Error(tone, drone), 0.02);
    }

    // A sine's effective value is its amplitude over √2.
    [Fact]
    public void A_vibrato_is_measured_as_spread()
    {
        var tone = new TestTone
        {
            SignalToNoise = 30,
            VibratoCents = 20,
            VibratoHertz = 4,
        };
        Assert.Equal(20 / Math.Sqrt(2), Take.Of(tone.Recorded()).Drone!.SpreadCents, 1.5);
    }

    private static List<double> Errors(TestTone tone)
    {
        var errors = new List<double>();
        for (var seed = 0; seed < Takes; seed++)
        {
            var one = tone with { Seed = seed, Hertz = tone.Hertz * (1 + 0.002 * seed) };
            errors.Add(Error(one, Take.Of(one.Recorded()).Drone!));
        }

        return errors;
    }

    // Against the mean frequency about the middle of what was measured.
    private static double Error(TestTone tone, SoundedNote note) =>
        1200 * Math.Log2(note.Fundamental.Hertz / tone.MeanHertz(note.Pitch.Average(p => p.Time.Seconds)));
}
