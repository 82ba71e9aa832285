using System.Runtime.InteropServices;
using UnitsNet;

namespace AirColumn.Recordings.Tests;

public class TakeTests
{
    private static readonly double Rate = new TestTone().Rate;

    [Fact]
    public void A_drone_and_its_overblown_note_are_told_apart()
    {
        var drone = new TestTone
        {
            Hertz = 65.4,
            Seconds = 3,
            SignalToNoise = 30,
        };
        var twelfth = drone with { Hertz = 198, Seconds = 1, Partials = TestTone.Falling(12) };
        double[] sound =
        [
            .. drone.Samples(),
            .. twelfth.Samples(),
            .. Silence(0.4),
            .. (drone with { Seconds = 1.5 }).Samples(),
        ];
        var take = Take.Of(Recorded(sound));

        Assert.Null(take.Reason);
        Assert.Equal(3, take.Notes.Count);
        Assert.Equal([65.4, 198, 65.4], take.Notes.Select(n => Math.Round(n.Fundamental.Hertz, 1)));
        Assert.Same(take.Notes[0], take.Drone);
        Assert.Equal(0, take.Drone!.From.Seconds, 0.15);
        Assert.Equal(3, take.Drone.Duration.Seconds, 0.25);
        Assert.Equal(3, take.Notes[1].From.Seconds, 0.15);
        Assert.Same(take.Notes[1], take.Near(Frequency.FromHertz(196), 30));
        Assert.Null(take.Near(Frequency.FromHertz(131), 100));
        Assert.Equal("C2", take.Drone.Nearest(Tuning.Concert).Pitch.ToString());
    }

    [Fact]
    public void Partials_have_their_frequencies_and_levels()
    {
        var tone = new TestTone
        {
            Hertz = 110,
            Partials = [0, 0.5, 1, 0, 0.1],
            SignalToNoise = 50,
        };
        var partials = Take.Of(tone.Recorded()).Drone!.Partials;
        Assert.Equal([2, 3, 5], partials.Where(p => p.AboveNoiseDecibels > 15).Select(p => p.Number));
        foreach (
            var (number, decibels) in (ReadOnlySpan<(int, double)>)
                [(2, 20 * Math.Log10(0.5)), (3, 0), (5, -20)]
        )
        {
            var partial = partials.Single(p => p.Number == number);
            Assert.Equal(decibels, partial.Decibels, 0.02);
            Assert.Equal(110.0 * number, partial.Frequency.Hertz, 0.005);
        }
    }

    // A sine wave of amplitude A has an effective value of A/√2; IEC 61260-1: the band at 10^(21/10) Hz holds 125 Hz.
    [Fact]
    public void The_envelope_is_the_power_in_each_band()
    {
        var tone = new TestTone
        {
            Hertz = 125,
            Partials = [1],
            Level = 0.1,
        };
        var bands = Take.Of(tone.Recorded()).Drone!.Bands;
        var strongest = bands.MaxBy(band => band.Decibels);
        Assert.Equal(125.9, strongest.Centre.Hertz, 0.1);
        Assert.Equal(-20, strongest.Decibels, 0.05);
        Assert.All(bands.Where(b => b.Centre.Hertz > 300), band => Assert.InRange(band.Decibels, -300, -80));
    }

    // Lips can open every other time a little wider: the sound repeats after two of what seem to be periods.
    [Fact]
    public void A_period_is_whole_even_if_its_halves_are_nearly_alike()
    {
        var partials = TestTone.Falling(20).Select((a, h) => h % 2 == 0 ? 0.1 * a : a).ToArray();
        var take = Take.Of(
            new TestTone
            {
                Hertz = 70,
                Partials = partials,
                SignalToNoise = 30,
            }.Recorded()
        );
        Assert.Equal(70, take.Drone!.Fundamental.Hertz, 0.01);
    }

    // At 150 Hz everything repeats after a fiftieth of a second, hum and note together.
    [Theory]
    [InlineData(98, 50)]
    [InlineData(100.1, 50)]
    [InlineData(150.2, 50)]
    [InlineData(120.1, 60)]
    [InlineData(179.8, 60)]
    public void Hum_beside_a_note_is_not_its_lower_octave(double hertz, double hum)
    {
        var tone = new TestTone
        {
            Hertz = hertz,
            SignalToNoise = 30,
            Hum = 0.1,
            HumHertz = hum,
        };
        Assert.Equal(hertz, Take.Of(tone.Recorded()).Drone!.Fundamental.Hertz, 0.05);
    }

    [Fact]
    public void The_louder_channel_is_listened_to()
    {
        var tone = new TestTone { Hertz = 80 }.Samples();
        var data = new byte[8 * tone.Length];
        var frames = MemoryMarshal.Cast<byte, float>(data.AsSpan());
        for (var i = 0; i < tone.Length; i++)
        {
            frames[2 * i + 1] = (float)tone[i];
        }

        using var recording = Recording.Open(new MemoryStream(WaveFileTests.Wave(3, 2, (int)Rate, 32, data)));
        Assert.Equal(80, Take.Of(recording).Drone!.Fundamental.Hertz, 0.001);
        var left = Take.Of(recording, new TakeOptions { Channel = 0 });
        Assert.Equal("No steady pitch: it is silent.", left.Reason);
        var none = Assert.Throws<ArgumentOutOfRangeException>(() =>
            Take.Of(recording, new TakeOptions { Channel = 2 })
        );
        Assert.Contains("channel is 2; allowed is 0 to 1", none.Message, StringComparison.Ordinal);
    }

    // Made by the test: the runner writes down what a theory is given, and a sound takes it seconds.
    private static Dictionary<string, Func<double[]>> Unsteady { get; } =
        new()
        {
            ["it is silent"] = () => Silence(2),
            ["it is silent: its loudest part is -1"] = () => [.. new TestTone { Level = 1e-6 }.Samples()],
            ["it is noise"] = () => new TestTone { Partials = [1e-9, 1], SignalToNoise = -20 }.Samples(),
            ["glides, jumps or breaks off"] = () => new TestTone { DriftCentsPerSecond = 900 }.Samples(),
            ["the recording lasts 0.2 s"] = () => new TestTone { Seconds = 0.2 }.Samples(),
            ["the recording lasts 0 s"] = () => [0.5],
        };

    public static TheoryData<string> Reasons => [.. Unsteady.Keys];

    [Theory]
    [MemberData(nameof(Reasons))]
    public void Without_a_steady_pitch_it_says_why(string says)
    {
        var take = Take.Of(Recorded(Unsteady[says]()));
        Assert.Null(take.Drone);
        Assert.Empty(take.Notes);
        Assert.StartsWith("No steady pitch: ", take.Reason, StringComparison.Ordinal);
        Assert.Contains(says, take.Reason, StringComparison.Ordinal);
    }

    // What playing and a room do to a tone: none of it is another note.
    public static TheoryData<string, double> Played =>
        new()
        {
            { "accents", 0.1 },
            { "pulse", 0.1 },
            { "gaps", 0.3 },
            { "knock", 3 },
            { "click", 0.3 },
            { "wind", 0.3 },
            { "offset", 0.1 },
        };

    [Theory]
    [MemberData(nameof(Played))]
    public void What_happens_beside_a_note_does_not_make_it_another(string what, double cents)
    {
        var random = new Random(3);
        foreach (var hertz in (double[])[55.3, 65.5, 83.3, 99.3])
        {
            var tone = new TestTone
            {
                Hertz = hertz,
                Seconds = 4,
                SignalToNoise = 20,
                IsBreath = true,
            };
            var sound = tone.Samples();
            for (var i = 0; i < sound.Length; i++)
            {
                var t = i / Rate;
                sound[i] = what switch
                {
                    "accents" => t % 0.5 < 0.08 ? 4 * sound[i] : sound[i],
                    "pulse" => sound[i] * (1 + 0.8 * Math.Sin(2 * Math.PI * 2 * t)),
                    "gaps" => t % 0.5 < 0.06 ? 0 : sound[i],
                    "knock" when t is > 1.4 and < 1.6 => sound[i]
                        + 0.5 * Math.Exp(-(t - 1.4) / 0.018) * Math.Sin(2 * Math.PI * 180 * (t - 1.4)),
                    "click" when t is > 1.4 and < 1.41 => sound[i] + random.NextDouble() - 0.5,
                    "wind" => sound[i] + 0.56 * Math.Sin(2 * Math.PI * 7 * t),
                    "offset" => sound[i] + 0.5,
                    _ => sound[i],
                };
            }

            var drone = Take.Of(Recorded(sound)).Drone;
            Assert.NotNull(drone);
            Assert.Equal(0, Cents.Between(Frequency.FromHertz(hertz), drone.Fundamental), cents);
        }
    }

    // The period is that of all partials, however strong one of them is.
    [Theory]
    [InlineData(8, 9)]
    [InlineData(4, 4)]
    [InlineData(8, 8)]
    public void Strong_high_partials_do_not_become_the_note(int one, int other)
    {
        var partials = Enumerable.Range(1, 20).Select(h => h == one || h == other ? 1 : 0.1).ToArray();
        var take = Take.Of(new TestTone { Partials = partials, SignalToNoise = 30 }.Recorded());
        Assert.Equal(65.4, take.Drone!.Fundamental.Hertz, 0.01);
    }

    [Fact]
    public void Two_notes_at_once_are_no_note()
    {
        var other = new TestTone { Hertz = 99.3, Seed = 2 }.Samples();
        var sound = new TestTone { Hertz = 67.3, SignalToNoise = 20 }
            .Samples()
            .Zip(other, (a, b) => a + b);
        var take = Take.Of(Recorded([.. sound]));
        Assert.Null(take.Drone);
        Assert.Equal(
            "No steady pitch: the sound that is held is not one note: two sound at once, or the noise is as strong.",
            take.Reason
        );
    }

    [Theory]
    [InlineData(0.5, true)]
    [InlineData(0.35, false)]
    public void A_note_must_be_held_as_long_as_is_asked(double seconds, bool isHeard)
    {
        var take = Take.Of(new TestTone { Seconds = seconds, SignalToNoise = 30 }.Recorded());
        Assert.Equal(isHeard, take.Drone is not null);
    }

    [Fact]
    public void Many_channels_are_read_at_once()
    {
        // 2000 channels of 8000 frames; one channel alone, for the notes, is read once more and a little at the edges.
        using var file = new CountingStream(WaveFileTests.Wave(1, 2000, 8000, 16, new byte[2 * 2000 * 8000]));
        using var recording = Recording.Open(file);
        Assert.Equal("No steady pitch: it is silent.", Take.Of(recording).Reason);
        Assert.InRange(file.BytesRead, file.Length, 4 * file.Length);
    }

    [Fact]
    public void Clipping_is_said_and_does_not_move_the_pitch()
    {
        var sound = new TestTone { SignalToNoise = 30 }
            .Samples()
            .Select(s => Math.Clamp(12 * s, -1, 1))
            .ToArray();
        var take = Take.Of(Recorded(sound));
        Assert.Contains("clipped", Assert.Single(take.Warnings), StringComparison.Ordinal);
        Assert.Equal(65.4, take.Drone!.Fundamental.Hertz, 0.005);
    }

    [Fact]
    public void A_drone_at_the_frequency_of_the_mains_is_doubted()
    {
        var take = Take.Of(new TestTone { Hertz = 50.05 }.Recorded());
        Assert.Contains(
            "50 Hz, which electric mains hum at",
            Assert.Single(take.Warnings),
            StringComparison.Ordinal
        );
    }

    // Made as it is read: half an hour or two hours of sound that are nowhere.
    [Fact]
    public void Hours_are_read_piece_by_piece_and_show_how_far_they_are()
    {
        var seconds = Amount.Of(1800, 7200);
        using var hours = new EndlessSound(seconds, 8000, 73);
        using var recording = Recording.Open(hours);
        Assert.Equal(seconds, recording.Duration.Seconds, 1e-6);
        var told = new List<double>();
        var take = Take.Of(recording, null, new Told(told));
        Assert.Equal(73, take.Drone!.Fundamental.Hertz, 0.001);
        Assert.Equal(seconds, take.Drone.Duration.Seconds, 1.0);
        Assert.True(told.Count > 100, $"told {told.Count} times");
        Assert.Equal(told.Order(), told);
        Assert.Equal(1, told[^1]);
    }

    [Fact]
    public void It_can_be_ended()
    {
        using var cancellation = new CancellationTokenSource();
        using var hours = new EndlessSound(7200, 8000, 73);
        using var recording = Recording.Open(hours);
        var told = new List<double>();
        Assert.Throws<OperationCanceledException>(() =>
            Take.Of(recording, null, new Told(told, cancellation.Cancel), cancellation.Token)
        );
        Assert.Single(told);
    }

    [Fact]
    public void Options_are_checked()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new TakeOptions { Lowest = Frequency.FromHertz(5) });
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new TakeOptions { Highest = Frequency.FromHertz(5000) }
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => new TakeOptions { Shortest = Duration.Zero });
        Assert.Throws<ArgumentOutOfRangeException>(() => new TakeOptions { Channel = -1 });
        Assert.Throws<ArgumentException>(() => Recording.FromSamples([], Frequency.FromHertz(8000)));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Recording.FromSamples([double.NaN], Frequency.FromHertz(8000))
        );
    }

    private static double[] Silence(double seconds) => new double[(int)(seconds * Rate)];

    private static Recording Recorded(double[] samples) =>
        Recording.FromSamples(samples, Frequency.FromHertz(Rate));

    private sealed class CountingStream(byte[] bytes) : MemoryStream(bytes)
    {
        public long BytesRead { get; private set; }

        public override int Read(byte[] buffer, int offset, int count) =>
            Counted(base.Read(buffer, offset, count));

        public override int Read(Span<byte> buffer) => Counted(base.Read(buffer));

        private int Counted(int count)
        {
            BytesRead += count;
            return count;
        }
    }

    private sealed class Told(List<double> values, Action? then = null) : IProgress<double>
    {
        public void Report(double value)
        {
            values.Add(value);
            then?.Invoke();
        }
    }
}
