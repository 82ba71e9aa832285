using AirColumn.Recordings.Tracking;

namespace AirColumn.Recordings.Tests;

/// <summary>Where a pitch is held, on tracks at random, against the plain way of finding it.</summary>
public class HeldPartTests
{
    // Every part is tried.
    [Draws(quick: 200, inLong: 2000)]
    internal void No_longer_part_stays_within_fifty_cents(int seed)
    {
        var track = Track(seed);
        var (from, to) = HeldPart.Longest(track);
        Assert.InRange(Range(track[from..to]), 0, 50);
        for (var start = 0; start + (to - from) < track.Length; start++)
        {
            Assert.True(Range(track[start..(start + (to - from) + 1)]) > 50, $"{start} of {seed}");
        }

        static double Range(double[] part) => part.Max() - part.Min();
    }

    // The median of four frames to either side, then the mean of two to either side; a frame without pitch has no say.
    [Draws(quick: 200, inLong: 2000)]
    internal void Smoothed_is_the_mean_of_medians(int seed)
    {
        var random = new Random(seed);
        double[] track = [.. Track(seed).Select(cents => random.Next(6) == 0 ? double.NaN : cents)];
        // So that every nine frames have a pitch.
        for (var i = 0; i < track.Length; i += 4)
        {
            track[i] = 100 * random.NextDouble();
        }

        double Median(int i)
        {
            double[] near =
            [
                .. track.Where((cents, j) => Math.Abs(i - j) <= 4 && !double.IsNaN(cents)).Order(),
            ];
            return near.Length % 2 == 1
                ? near[near.Length / 2]
                : (near[near.Length / 2 - 1] + near[near.Length / 2]) / 2;
        }

        var smoothed = HeldPart.Smoothed(track);
        for (var i = 0; i < track.Length; i++)
        {
            var expected = Enumerable.Range(0, track.Length).Where(j => Math.Abs(i - j) <= 2).Average(Median);
            Assert.Equal(expected, smoothed[i], 1e-9);
        }
    }

    // Both ends are within 20 cents of the middle, and what was taken off was not.
    [Draws(quick: 200, inLong: 2000)]
    internal void Ends_that_glide_are_taken_off(int seed)
    {
        var track = Track(seed);
        var random = new Random(seed);
        var first = random.Next(track.Length - 5);
        var last = random.Next(first + 3, track.Length);
        var middle = track[first..last].Order().ElementAt((last - first) / 2);
        var (from, to) = HeldPart.AtHome(track, first, last);
        Assert.True(Math.Abs(track[from] - middle) <= 20 && Math.Abs(track[to - 1] - middle) <= 20);
        Assert.All(
            track[first..from].Concat(track[to..last]),
            cents => Assert.True(Math.Abs(cents - middle) > 20)
        );
    }

    // A line of 15 cents in a second or more that explains 80 % and makes 20 cents, or less beside a glide.
    [Theory]
    [InlineData(16, 2, false, true)]
    [InlineData(-16, 2, false, true)]
    [InlineData(14, 2, true, false)]
    [InlineData(16, 1, false, false)]
    [InlineData(16, 1, true, true)]
    [InlineData(-25, 0.7, false, false)]
    [InlineData(-30, 0.7, false, true)]
    public void A_glide_is_steep_and_long(double slope, double seconds, bool isBeside, bool isGlide)
    {
        const double Step = 0.02;
        double[] line = [.. Enumerable.Range(0, (int)(seconds / Step)).Select(i => 700 + slope * Step * i)];
        var found = HeldPart.Glide(line, Step, isBeside);
        Assert.Equal(isGlide, found is not null);
        Assert.Equal(isGlide ? slope : 0, found ?? 0, 1e-6);
    }

    // Of a line and what is in no relation to it, the line explains slope²·var(t) of the variance.
    [Theory]
    [InlineData(0.78, false)]
    [InlineData(0.82, true)]
    public void A_glide_is_straight(double share, bool isGlide)
    {
        const double Step = 0.02;
        const int Count = 200;
        const double Slope = 20;
        double[] time = [.. Enumerable.Range(0, Count).Select(i => Step * (i - (Count - 1) / 2.0))];
        // An even function of the time, without its mean.
        double[] even = [.. time.Select(t => t * t)];
        var mean = even.Average();
        var explained = Slope * Slope * time.Sum(t => t * t);
        var factor = Math.Sqrt(explained * (1 / share - 1) / even.Sum(e => (e - mean) * (e - mean)));
        double[] track = [.. time.Zip(even, (t, e) => Slope * t + factor * (e - mean))];
        Assert.Equal(isGlide, HeldPart.Glide(track, Step, false) is not null);
    }

    // Notes of different lengths with glides and jumps between them.
    private static double[] Track(int seed)
    {
        var random = new Random(seed);
        var track = new List<double>();
        var cents = 0.0;
        while (track.Count < 60)
        {
            var slope = random.Next(3) == 0 ? 20 * (random.NextDouble() - 0.5) : 0;
            cents += random.Next(2) * 120 * (random.NextDouble() - 0.5);
            for (var n = random.Next(3, 20); n > 0; n--)
            {
                cents += slope;
                track.Add(cents + 8 * (random.NextDouble() - 0.5));
            }
        }

        return [.. track];
    }
}
