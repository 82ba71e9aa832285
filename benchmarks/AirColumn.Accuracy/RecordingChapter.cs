using AirColumn.Recordings;
using AirColumn.Recordings.Previews;
using AirColumn.Recordings.Tests;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace AirColumn.Accuracy;

/// <summary>Sound of known truth, and what is read from it.</summary>
internal static class RecordingChapter
{
    private const int Takes = 6;

    private static readonly double[] Pitches = [45, 150, 600];

    private static readonly double[][] Sounds =
    [
        TestTone.Falling(30),
        TestTone.NoFundamental(30),
        TestTone.WeakFundamental(30),
        [1],
    ];

    public static Chapter Make() =>
        new(
            "Recordings",
            "These takes of 2 s are synthetic, not recorded. There are four sounds: partials that fall as 1/n, the same without the first partial, the same with the "
                + "first partial 40 dB below the second, and a sine. Each has breath noise, a vibrato of ± 15 cents and mains hum at a tenth of the tone, all at "
                + "once. The true value is the mean frequency. At 0 dB and below, a recording may be refused because no steady pitch is found. "
                + "Taps, noise and sweeps are the impulse responses of two columns with known poles.",
            [
                .. ((double[])[30, 20, 10, 5]).SelectMany(Pitch),
                Uncertainty(20),
                Uncertainty(5),
                .. Resonances(),
                RoundTrip(),
            ],
            []
        );

    private static IEnumerable<Quantity> Pitch(double decibels)
    {
        var cases = (from hertz in Pitches from partials in Sounds select (hertz, partials)).ToList();
        var errors = cases
            .AsParallel()
            .AsOrdered()
            .Select(one =>
                Enumerable
                    .Range(0, Takes)
                    .Select(seed =>
                        Error(
                            new TestTone
                            {
                                Hertz = one.hertz * (1 + 0.003 * seed),
                                Partials = one.partials,
                                SignalToNoise = decibels,
                                IsBreath = true,
                                VibratoCents = 15,
                                Hum = 0.1,
                                Seed = seed,
                            }
                        ).Cents
                    )
                    .ToList()
            )
            .ToList();
        var range = FormattableString.Invariant(
            $"{Pitches[0]} to {Pitches[^1]} Hz, four sounds, {Takes} takes each"
        );
        var name = FormattableString.Invariant($"Drone, {decibels} dB of tone over noise");
        var asked = decibels == 20;
        yield return new(
            $"{name}: bias",
            "made takes",
            range,
            "cent",
            [.. errors.Select(e => e.Average())],
            asked ? 0.1 : null
        );
        yield return new(
            $"{name}: standard deviation",
            "made takes",
            range,
            "cent",
            [.. errors.Select(e => Math.Sqrt(e.Average(x => x * x) - Math.Pow(e.Average(), 2)))],
            asked ? 0.5 : null
        );
    }

    private static Quantity Uncertainty(double decibels)
    {
        var ratios = Enumerable
            .Range(0, 48)
            .AsParallel()
            .AsOrdered()
            .Select(seed =>
            {
                var (cents, stated) = Error(
                    new TestTone
                    {
                        Hertz = 60 + 5 * seed,
                        SignalToNoise = decibels,
                        IsBreath = decibels > 10,
                        Seed = seed,
                    }
                );
                return cents / stated;
            })
            .ToList();
        return new(
            FormattableString.Invariant(
                $"Drone, {decibels} dB of tone over noise: error over its stated standard uncertainty, root mean square minus 1"
            ),
            "made takes",
            "60 to 295 Hz, 48 takes, no vibrato",
            "",
            [Math.Sqrt(ratios.Average(r => r * r)) - 1],
            0.3
        );
    }

    private static (double Cents, double Stated) Error(TestTone tone)
    {
        using var recording = tone.Recorded();
        var drone =
            Take.Of(recording).Drone ?? throw new InvalidOperationException($"No drone was heard in {tone}.");
        var truth = tone.MeanHertz(drone.Pitch.Average(point => point.Time.Seconds));
        return (1200 * Math.Log2(drone.Fundamental.Hertz / truth), drone.StandardUncertaintyCents);
    }

    private static IEnumerable<Quantity> Resonances()
    {
        var rate = Frequency.FromHertz(RingingTube.Rate);
        var sweep = new SweptSine(
            Frequency.FromHertz(30),
            Frequency.FromHertz(2000),
            Duration.FromSeconds(6)
        );
        double[] noise = [.. Normal.Samples(new Random(5), 0, 1).Take((int)(20 * RingingTube.Rate))];
        yield return Rung(
            "three slaps, noise 40 dB down",
            column => TubeResponse.FromTap(RingingTube.Tapped(column, -40, 3, 0.2, 0.9, 1.5)),
            0.2
        );
        yield return Rung(
            "20 s of noise",
            column => TubeResponse.FromNoise(Recording.FromSamples(RingingTube.Driven(column, noise), rate)),
            null
        );
        yield return Rung(
            "a sweep of 6 s",
            column =>
                TubeResponse.FromSweep(
                    Recording.FromSamples(RingingTube.Driven(column, sweep.Samples(rate)), rate),
                    sweep
                ),
            0.01
        );
    }

    private static Quantity Rung(string by, Func<Column, TubeResponse> heard, double? bound) =>
        new(
            $"Resonances from {by}",
            "poles of the columns",
            "first 4 of two tubes",
            "cent",
            [
                .. ((Column[])[RingingTube.Straight, RingingTube.Stepped]).SelectMany(column =>
                    heard(column).CompareWith(column).Take(4).Select(pair => pair.Cents ?? double.NaN)
                ),
            ],
            bound
        );

    private static Quantity RoundTrip() =>
        new(
            "Rendered drone and overblown note, heard again",
            "motion of the lips in the rendering",
            "two tubes, two notes each",
            "cent",
            [
                .. from column in (Column[])[RingingTube.Straight, RingingTube.Stepped]
                from register in (int[])[1, 2]
                let preview = DronePreview.Of(column, new PreviewOptions { Register = register })
                let drone = Take.Of(
                    Recording.FromSamples(preview.Samples.Span, Frequency.FromHertz(preview.SampleRate))
                ).Drone
                select 1200 * Math.Log2(drone.Fundamental / preview.PlayingFrequency!.Value),
            ],
            1
        );
}
