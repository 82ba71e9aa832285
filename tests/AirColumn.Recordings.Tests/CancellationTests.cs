using AirColumn.Recordings.Previews;
using UnitsNet;

namespace AirColumn.Recordings.Tests;

/// <summary>Calls on sound end when they are cancelled, and answer right afterwards.</summary>
public class CancellationTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(8000);

    private static readonly Column Tube = new(
        new Bore(
            [new CylinderSection(Length.FromMillimeters(40), Length.FromMillimeters(1200))],
            new OpenEnd(Length.FromMillimeters(2))
        ),
        Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
    );

    private static readonly SweptSine Sweep = new(
        Frequency.FromHertz(30),
        Frequency.FromHertz(2000),
        Duration.FromSeconds(2)
    );

    // Two taps that ring at 150 and 400 Hz; the same serves as a note that is held, and as noise.
    private static readonly double[] Taps =
    [
        .. Enumerable
            .Range(0, 24_000)
            .Select(i =>
            {
                var t = i % 12_000 / 8000.0;
                return t < 0.05
                    ? 0
                    : Math.Exp(-12 * t) * (0.3 * Math.Sin(942.5 * t) + 0.2 * Math.Sin(2513 * t));
            }),
    ];

    private static readonly double[] Note =
    [
        .. Enumerable.Range(0, 24_000).Select(i => 0.3 * Math.Sin(0.0589 * i) + 0.1 * Math.Sin(0.1178 * i)),
    ];

    private static readonly double[] Noise = [.. Random(16_000)];

    private static readonly Dictionary<string, Func<IProgress<double>?, CancellationToken, string>> Calls =
        new()
        {
            ["take"] = (told, token) =>
                Of(Note, sound => $"{Take.Of(sound, null, told, token).Drone?.Fundamental.Hertz:R}"),
            ["taps"] = (told, token) =>
                Of(Taps, sound => Text(TubeResponse.FromTap(sound, null, told, token))),
            ["noise"] = (told, token) =>
                Of(Noise, sound => Text(TubeResponse.FromNoise(sound, null, told, token))),
            ["sweep"] = (told, token) =>
                Of(
                    [.. Sweep.Samples(Rate), .. new double[4000]],
                    sound => Text(TubeResponse.FromSweep(sound, Sweep, null, told, token))
                ),
            ["comparison"] = (_, token) =>
                Of(Taps, sound => string.Join(' ', TubeResponse.FromTap(sound).CompareWith(Tube, token))),
            ["samples of a sweep"] = (_, token) => $"{Sweep.Samples(Rate, token)[1234]:R}",
            ["file of whole numbers"] = (_, token) =>
                File(stream => WaveFile.Write16(stream, Note, Rate, token)),
            ["file of floating-point numbers"] = (_, token) =>
                File(stream => WaveFile.WriteFloat(stream, Note, Rate, token)),
            ["preview"] = (_, token) =>
            {
                var short1 = new PreviewOptions { Duration = Duration.FromSeconds(1) };
                var sound = DronePreview.Of(Tube, short1, token);
                return $"{sound.PlayingFrequency?.Hertz:R} {sound.SoundPressure.Pascals:R}";
            },
        };

    // Those that take seconds in the long run only; of each kind one is left.
    public static TheoryData<string> AllCalls =>
        [.. Calls.Keys.Where(call => Amount.IsLong || call is not ("comparison" or "noise"))];

    [Theory]
    [MemberData(nameof(AllCalls))]
    public async Task A_call_ends_when_it_is_cancelled_and_answers_right_afterwards(string name)
    {
        var call = Calls[name];
        using var before = new CancellationTokenSource();
        before.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => call(null, before.Token));
        var expected = call(null, CancellationToken.None);
        var random = new Random(name.Length);
        for (var round = 0; round < Amount.Of(1, 4); round++)
        {
            using var source = new CancellationTokenSource();
            var spins = 1 << random.Next(2, 24);
            var other = Task.Run(() =>
            {
                Thread.SpinWait(spins);
                source.Cancel();
            });
            try
            {
                Assert.Equal(expected, call(null, source.Token));
            }
            catch (OperationCanceledException)
            {
                // As it should.
            }

            await other;
        }

        Assert.Equal(expected, call(null, CancellationToken.None));
    }

    // Where somebody is told how far it is, it is cancelled right there: nothing may follow but the end.
    [Theory]
    [InlineData("take")]
    [InlineData("taps")]
    [InlineData("sweep")]
    public void Cancelled_while_it_tells_how_far_it_is_it_ends(string name)
    {
        var told = new Told();
        _ = Calls[name](told, CancellationToken.None);
        Assert.Equal(told.Values.Order(), told.Values);
        Assert.Equal(1, told.Values[^1], 1e-12);
        using var source = new CancellationTokenSource();
        var cancelling = new Told(source);
        Assert.ThrowsAny<OperationCanceledException>(() => Calls[name](cancelling, source.Token));
        Assert.Single(cancelling.Values);
    }

    private static string Of(double[] samples, Func<Recording, string> ask)
    {
        using var recording = Recording.FromSamples(samples, Rate);
        return ask(recording);
    }

    private static string Text(TubeResponse response) =>
        response.Reason ?? string.Join(' ', response.Resonances);

    private static string File(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        try
        {
            write(stream);
        }
        catch (OperationCanceledException)
        {
            Assert.Equal(0, stream.Length);
            throw;
        }

        return Convert.ToHexString(stream.ToArray());
    }

    private static IEnumerable<double> Random(int count)
    {
        var random = new Random(1);
        return Enumerable.Range(0, count).Select(_ => 0.2 * random.NextDouble() - 0.1);
    }

    private sealed class Told(CancellationTokenSource? source = null) : IProgress<double>
    {
        public List<double> Values { get; } = [];

        public void Report(double value)
        {
            Values.Add(value);
            source?.Cancel();
        }
    }
}
