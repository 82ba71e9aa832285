using UnitsNet;

namespace AirColumn.Recordings.Tests;

/// <summary>Sound of known poles: the impulse response of computed columns, and decaying sines.</summary>
public class TubeResponseTests
{
    public static TheoryData<string> Tubes => ["straight", "stepped"];

    // Three slaps with noise 40 dB below the loudest sample. The poles are those of the column.
    [Theory]
    [MemberData(nameof(Tubes))]
    public void Slaps_give_the_resonances_of_the_column(string tube)
    {
        var column = Column(tube);
        var pairs = TubeResponse
            .FromTap(RingingTube.Tapped(column, -40, 3, 0.2, 0.9, 1.5))
            .CompareWith(column);
        Assert.True(pairs.Count >= 5);
        foreach (var pair in pairs.Take(4))
        {
            Assert.InRange(Math.Abs(pair.Cents!.Value), 0, 0.2);
            Assert.InRange(pair.Measured!.Value.QualityFactor / pair.Computed.QualityFactor, 0.97, 1.03);
            Assert.InRange(pair.Measured.Value.StandardUncertaintyCents, 0, 1);
        }
    }

    // No noise but that of doubles and of the division of spectra.
    [Theory]
    [MemberData(nameof(Tubes))]
    public void A_sweep_gives_them_too(string tube)
    {
        var column = Column(tube);
        var sound = RingingTube.Driven(column, Short.Samples(Frequency.FromHertz(RingingTube.Rate)));
        var pairs = TubeResponse.FromSweep(Recorded(sound), Short).CompareWith(column);
        Assert.True(pairs.Count >= 7);
        Assert.All(pairs, pair => Assert.InRange(Math.Abs(pair.Cents!.Value), 0, 0.01));
    }

    // The tube that was recorded has a bell 4 mm wider than believed.
    [Fact]
    public void A_sweep_finds_which_dimension_is_off()
    {
        var believed = RingingTube.Stepped;
        var made = ColumnParameter.OutletDiameter(2).With(believed, 0.064);
        var sound = RingingTube.Driven(made, Short.Samples(Frequency.FromHertz(RingingTube.Rate)));
        var measured = TubeResponse.FromSweep(Recorded(sound), Short).MeasuredFor(believed);
        Assert.True(measured.Resonances.Count >= 7);
        foreach (var (number, frequency, _) in measured.Resonances)
        {
            var peak = made.FirstResonances(number)[number - 1].Frequency;
            Assert.InRange(Cents.Between(peak, frequency), -0.1, 0.1);
        }

        var fit = BoreFit.Solve(
            believed,
            measured,
            [
                new(ColumnParameter.OutletDiameter(2), Length.FromMillimeters(8)),
                new(ColumnParameter.SectionLength(1), Length.FromMillimeters(3)),
            ]
        );
        Assert.True(fit.Values[0].IsOff);
        Assert.InRange(fit.Values[0].Value, 0.0635, 0.0645);
        Assert.False(fit.Values[1].IsOff);
    }

    [Fact]
    public void A_column_that_was_not_recorded_is_refused()
    {
        var response = TubeResponse.FromTap(
            RingingTube.Tapped(RingingTube.Straight, -40, 3, 0.2),
            Frequency.FromHertz(150)
        );
        var tiny = new Column(
            Bore.Build().Cylinder(Length.FromMillimeters(10), Length.FromMillimeters(100)).OpenEnd(),
            RingingTube.Straight.Air
        );
        var refused = Assert.Throws<ArgumentException>(() => response.MeasuredFor(tiny));
        Assert.StartsWith("No measured resonance lies", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            response.MeasuredFor(RingingTube.Straight, double.NaN)
        );
    }

    // The frequency of a resonance that noise drives is not surer than √(f/(4πQT)) Hz: 1.8 cents for 67 Hz, Q 51 and 20 s.
    [Theory]
    [MemberData(nameof(Tubes))]
    public void Noise_gives_them_less_surely(string tube)
    {
        var column = Column(tube);
        var noise = MathNet.Numerics.Distributions.Normal.Samples(new Random(5), 0, 1.0);
        double[] signal = [.. noise.Take((int)(20 * RingingTube.Rate))];
        var pairs = TubeResponse.FromNoise(Recorded(RingingTube.Driven(column, signal))).CompareWith(column);
        Assert.True(pairs.Count >= 5);
        foreach (var pair in pairs.Take(5))
        {
            var resonance = pair.Computed.Pole.Real;
            var least =
                1200
                / Math.Log(2)
                * Math.Sqrt(1 / (4 * Math.PI * pair.Computed.QualityFactor * 20 * resonance));
            Assert.InRange(Math.Abs(pair.Cents!.Value), 0, 3 * least);
        }
    }

    [Fact]
    public void Decaying_sines_are_found_as_they_were_made()
    {
        var sound = new double[44_100];
        var random = new Random(2);
        (double Hertz, double Q, double Amplitude)[] modes =
        [
            (71.3, 40, 0.3),
            (210.4, 60, 0.2),
            (215.9, 70, 0.1),
            (480, 90, 0.05),
        ];
        for (var i = 4410; i < sound.Length; i++)
        {
            var t = (i - 4410) / 44_100.0;
            sound[i] = modes.Sum(m =>
                m.Amplitude * Math.Exp(-Math.PI * m.Hertz * t / m.Q) * Math.Sin(2 * Math.PI * m.Hertz * t)
            );
        }

        for (var i = 0; i < sound.Length; i++)
        {
            sound[i] += 1e-4 * (random.NextDouble() - 0.5);
        }

        var found = TubeResponse.FromTap(Recorded(sound)).Resonances;
        Assert.Equal(modes.Length, found.Count);
        foreach (var (expected, measured) in modes.Zip(found))
        {
            Assert.Equal(expected.Hertz, measured.Frequency.Hertz, 0.02);
            Assert.Equal(expected.Q, measured.QualityFactor, 0.02 * expected.Q);
        }
    }

    [Fact]
    public void Where_nothing_rings_it_says_so()
    {
        var silent = TubeResponse.FromTap(Recorded(new double[44_100]));
        Assert.Empty(silent.Resonances);
        Assert.Equal("The recording is silent.", silent.Reason);
        Assert.Empty(silent.CompareWith(RingingTube.Straight));

        var hiss = TubeResponse.FromTap(
            Recorded([.. MathNet.Numerics.Distributions.Normal.Samples(new Random(1), 0, 0.1).Take(44_100)])
        );
        Assert.Empty(hiss.Resonances);
        Assert.StartsWith("No ringing was heard", hiss.Reason, StringComparison.Ordinal);
        Assert.NotNull(TubeResponse.FromNoise(Recorded([0.1, 0.2])).Reason);
    }

    public static TheoryData<string> NoRings =>
        [.. Amount.Of(["drone", "noise"], (string[])["drone", "noise", "tone", "hum", "glide", "music"])];

    // Of nothing that rings there are resonances, whatever it is taken for.
    [Theory]
    [MemberData(nameof(NoRings))]
    public void What_is_no_ring_has_no_resonances(string what)
    {
        var tone = new TestTone { Seconds = 10.6, Hertz = 73.4 };
        double[] sound = what switch
        {
            "tone" => (tone with { Partials = [1] }).Samples(),
            "drone" => (tone with { VibratoCents = 15, SignalToNoise = 25, IsBreath = true }).Samples(),
            "hum" => (tone with { Partials = [0, 1e-6], Hum = 1 }).Samples(),
            "glide" => (tone with { DriftCentsPerSecond = 100 }).Samples(),
            "music" =>
            [
                .. Enumerable
                    .Range(0, 21)
                    .SelectMany(i => (tone with { Seconds = 0.5, Hertz = 98 + 13 * (i % 5) }).Samples()),
            ],
            _ => [.. MathNet.Numerics.Distributions.Normal.Samples(new Random(1), 0, 0.1).Take(467_000)],
        };
        // It begins all of a sudden, after as much silence as shows how quiet the room is.
        double[] late = [.. new double[88_200], .. sound];
        List<TubeResponse> responses =
        [
            TubeResponse.FromTap(Recorded(late)),
            TubeResponse.FromSweep(Recorded(late), Sweep),
        ];
        // What comes and goes as noise does cannot be told from it.
        if (what is not ("glide" or "music"))
        {
            responses.Add(TubeResponse.FromNoise(Recorded(sound)));
        }

        foreach (var response in responses)
        {
            Assert.Empty(response.Resonances);
            Assert.NotNull(response.Reason);
        }
    }

    // The loudspeaker alone, no tube at it.
    [Fact]
    public void A_sweep_against_itself_has_no_resonances()
    {
        var sound = Sweep.Samples(Frequency.FromHertz(RingingTube.Rate));
        var response = TubeResponse.FromSweep(Recorded([.. sound, .. new double[22_050]]), Sweep);
        Assert.Empty(response.Resonances);
        Assert.StartsWith("The sweep was not found", response.Reason, StringComparison.Ordinal);
    }

    private static SweptSine Short { get; } =
        new(Frequency.FromHertz(30), Frequency.FromHertz(2000), Duration.FromSeconds(6));

    private static SweptSine Sweep { get; } =
        new(Frequency.FromHertz(30), Frequency.FromHertz(2000), Duration.FromSeconds(10));

    [Fact]
    public void What_cannot_be_is_refused_by_name()
    {
        var tooShort = Assert.Throws<ArgumentException>(() =>
            TubeResponse.FromSweep(Recorded(new double[44_100]), Short)
        );
        Assert.Contains("recording lasts 1 s and the sweep 6 s", tooShort.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            TubeResponse.FromTap(Recorded(new double[4410]), Frequency.FromHertz(5000))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new SweptSine(Frequency.FromHertz(300), Frequency.FromHertz(400), Duration.FromSeconds(6))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => Short.Samples(Frequency.FromHertz(3000)));
    }

    private static Column Column(string tube) =>
        tube == "straight" ? RingingTube.Straight : RingingTube.Stepped;

    private static Recording Recorded(double[] samples) =>
        Recording.FromSamples(samples, Frequency.FromHertz(RingingTube.Rate));
}
