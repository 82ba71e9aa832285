using FsCheck;
using FsCheck.Fluent;
using UnitsNet;

namespace AirColumn.Recordings.Tests;

/// <summary>What a take says of sounds that were put together from known parts, at random.</summary>
public class KnownSoundTests
{
    // Too long to be measured whole: the drift is that of all of it.
    [Draws(quick: 1, inLong: 10, Arbitrary = [typeof(Drawn)])]
    internal void A_long_note_drifts_as_it_was_made_to(Draw draw)
    {
        var drift = draw.Next(0.3, 1) * draw.Sign();
        var tone = new TestTone
        {
            Rate = 8000,
            Seconds = draw.Next(24, 30),
            Hertz = draw.Next(50, 120),
            Partials = TestTone.Falling(10),
            SignalToNoise = 30,
            DriftCentsPerSecond = drift,
        };
        Assert.Equal(drift, Take.Of(tone.Recorded()).Drone!.DriftCentsPerSecond, 0.03);
    }

    [Draws(quick: 2, inLong: 20, Arbitrary = [typeof(Drawn)])]
    internal void A_short_note_drifts_as_it_was_made_to(Draw draw)
    {
        var drift = draw.Next(3, 12) * draw.Sign();
        var tone = new TestTone
        {
            Rate = 16_000,
            Seconds = draw.Next(2, 4),
            Hertz = draw.Next(50, 200),
            SignalToNoise = 30,
            DriftCentsPerSecond = drift,
            Seed = draw.Seed,
        };
        Assert.Equal(drift, Take.Of(tone.Recorded()).Drone!.DriftCentsPerSecond, 0.2);
    }

    // White noise has as much power in each hertz. Up to 4 kHz there is 4 kHz over half the rate of it; the few hertz below the fundamental, and
    // those above its last multiple, are at most half a decibel. Beside a partial in one window: a Hann window is 1.5 over its length wide
    // (harris1978), the power of a sine half its square.
    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(Drawn)])]
    internal void Noise_is_as_strong_as_was_added(Draw draw)
    {
        var partials = Enumerable.Range(1, 8).Select(h => draw.Next(0.5, 1.5) / h).ToArray();
        var tone = new TestTone
        {
            Seconds = 4,
            Hertz = draw.Next(55, 120),
            Partials = partials,
            SignalToNoise = draw.Next(8, 25),
            Seed = draw.Seed,
        };
        var drone = Take.Of(tone.Recorded()).Drone!;
        var half = tone.Rate / 2;
        Assert.Equal(tone.SignalToNoise + 10 * Math.Log10(half / 4000), drone.HarmonicsToNoiseDecibels, 0.8);
        var power = partials.Sum(a => a * a / 2);
        var inHertz = power * Math.Pow(10, -tone.SignalToNoise / 10) / half;
        var window = Math.Max(4, Math.Ceiling(0.03 * tone.Hertz)) / tone.Hertz;
        var off = drone
            .Partials.Where(partial => partial.Number <= 8)
            .Average(partial =>
                partial.AboveNoiseDecibels
                - 10 * Math.Log10(Math.Pow(partials[partial.Number - 1], 2) / 2 / (inHertz * 1.5 / window))
            );
        // Of eight partials, each beside the noise of a hundred windows.
        Assert.Equal(0, off, 0.7);
    }

    // A low drone whose halves, thirds or quarters of a period are nearly alike: its octave, twelfth or second octave is what repeats nearly.
    [Draws(quick: 6, inLong: 60, Arbitrary = [typeof(Drawn)])]
    internal void A_low_drone_is_not_taken_for_what_nearly_repeats(Draw draw)
    {
        var parts = (int)draw.Next(2, 5);
        var tone = new TestTone
        {
            Rate = 16_000,
            Hertz = draw.Next(29, 50),
            Partials =
            [
                .. Enumerable.Range(1, 40).Select(h => (h % parts == 0 ? 1 : draw.Next(0.08, 0.15)) / h),
            ],
            SignalToNoise = 35,
            Seed = draw.Seed,
        };
        Assert.Equal(tone.Hertz, Take.Of(tone.Recorded()).Drone!.Fundamental.Hertz, 0.02);
    }

    // Of one pitch, of two lengths: it is the longest that is asked for, in either order.
    [Draws(quick: 2, inLong: 10, Arbitrary = [typeof(Drawn)])]
    internal void The_longest_note_near_a_frequency_is_taken(Draw draw)
    {
        var tone = new TestTone
        {
            Rate = 16_000,
            Hertz = draw.Next(55, 100),
            Seconds = 1,
            SignalToNoise = 30,
        };
        var longer = tone with { Hertz = tone.Hertz * 1.01, Seconds = 2.5 };
        var silence = new double[8000];
        double[] sound =
            draw.Sign() > 0
                ? [.. tone.Samples(), .. silence, .. longer.Samples()]
                : [.. longer.Samples(), .. silence, .. tone.Samples()];
        var take = Take.Of(Recording.FromSamples(sound, Frequency.FromHertz(tone.Rate)));
        Assert.Equal(2, take.Notes.Count);
        var near = take.Near(Frequency.FromHertz(tone.Hertz), 50)!;
        Assert.Equal(longer.Hertz, near.Fundamental.Hertz, 0.05);
        Assert.Equal(2.5, near.Duration.Seconds, 0.3);
        // And only what is near: 17 cents lie between them.
        Assert.Equal(
            tone.Hertz,
            take.Near(Frequency.FromHertz(tone.Hertz / 1.005), 12)!.Fundamental.Hertz,
            0.05
        );
    }

    // RIFF (IBM and Microsoft 1991): a chunk of an odd length is followed by a byte of 0 that its length does not count. Recorders write such chunks
    // before the sound; a file that was broken off has them as well.
    [Draws(quick: 50, inLong: 500, Arbitrary = [typeof(Drawn)])]
    internal void What_was_broken_off_is_mended_behind_any_chunks(Draw draw)
    {
        var samples = Enumerable
            .Range(0, (int)draw.Next(1, 40))
            .Select(_ => (short)draw.Next(-3e4, 3e4))
            .ToArray();
        var plain = WaveFileTests.Wave(1, 1, 8000, 16, [.. samples.SelectMany(BitConverter.GetBytes)]);
        var chunks = Enumerable
            .Range(0, (int)draw.Next(1, 4))
            .SelectMany(_ =>
            {
                var length = (int)draw.Next(0, 9);
                var filling = Enumerable.Repeat((byte)'d', length);
                byte[] pad = length % 2 == 0 ? [] : [0];
                return (byte[])[.. "note"u8, .. BitConverter.GetBytes(length), .. filling, .. pad];
            })
            .ToArray();
        byte[] file = [.. plain[..36], .. chunks, .. plain[36..]];
        var ofAll = file.AsSpan(4, 4);
        var ofSound = file.AsSpan(36 + chunks.Length + 4, 4);
        BitConverter.TryWriteBytes(ofAll, file.Length - 8);
        var isWhole = draw.Sign() > 0;
        if (!isWhole)
        {
            var never = draw.Sign() > 0 ? 0u : uint.MaxValue;
            BitConverter.TryWriteBytes(ofAll, never);
            BitConverter.TryWriteBytes(ofSound, never);
        }

        using var recording = Recording.Open(new MemoryStream(file));
        var read = new double[recording.Frames];
        recording.Read(0, 0, read);
        Assert.Equal(samples.Select(sample => sample / 32768.0), read);
        Assert.Equal(isWhole, recording.Warnings.Count == 0);
    }

    /// <summary>Numbers that all come from one seed, which a failing test prints.</summary>
    internal sealed record Draw(int Seed)
    {
        private readonly Random random = new(Seed);

        public double Next(double from, double to) => from + (to - from) * random.NextDouble();

        public int Sign() => 2 * random.Next(2) - 1;
    }

    public static class Drawn
    {
        internal static Arbitrary<Draw> Draws() =>
            Gen.Choose(0, int.MaxValue).Select(seed => new Draw(seed)).ToArbitrary();
    }
}
