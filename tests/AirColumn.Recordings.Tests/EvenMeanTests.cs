using AirColumn.Recordings.Tones;

namespace AirColumn.Recordings.Tests;

/// <summary>The mean of a pitch without its vibrato, against its description worked out value by value.</summary>
public class EvenMeanTests
{
    private const double Step = 0.02;

    // What is smoothed first stands for the end before it too, what is smoothed last for the end after it.
    [Draws(quick: 50, inLong: 500)]
    internal void The_mean_is_that_of_smoothed_values(int seed)
    {
        var values = Values(seed);
        var mean = new EvenMean(values.Length, Step);
        var smoothed = mean.Smoothed(values);
        Assert.Equal(values.Length - 2 * mean.End, smoothed.Length);
        // A raised cosine that is nought one step beyond its ends.
        double Raised(int off) => 1 + Math.Cos(Math.PI * off / (mean.End + 1));
        var whole = Enumerable.Range(-mean.End, 2 * mean.End + 1).Sum(Raised);
        for (var i = 0; i < smoothed.Length; i++)
        {
            var expected = Enumerable
                .Range(-mean.End, 2 * mean.End + 1)
                .Sum(off => Raised(off) / whole * values[i + mean.End + off]);
            Assert.Equal(expected, smoothed[i], 1e-9);
        }

        var all = smoothed.Sum() + mean.End * (smoothed[0] + smoothed[^1]);
        Assert.Equal(all / values.Length, mean.Of(values), 1e-9);
        Assert.Equal(1, mean.Weights.Sum(), 1e-12);
    }

    // Half of 0.45 s at either end, but never more than a fifth.
    [Theory]
    [InlineData(200, 11)]
    [InlineData(57, 11)]
    [InlineData(31, 6)]
    [InlineData(4, 0)]
    [InlineData(1, 0)]
    public void Ends_are_half_a_width(int steps, int end) => Assert.Equal(end, new EvenMean(steps, Step).End);

    // From a smoothed value to the mean of as many smoothed values behind it as an end has.
    [Draws(quick: 50, inLong: 500)]
    internal void The_weights_ahead_tell_how_it_goes_on(int seed)
    {
        var values = Values(seed);
        var mean = new EvenMean(values.Length, Step);
        var (smoothed, weights) = (mean.Smoothed(values), mean.Ahead());
        var strays = Enumerable
            .Range(0, smoothed.Length - mean.End)
            .Select(i => smoothed[(i + 1)..(i + 1 + mean.End)].Average() - smoothed[i])
            .ToList();
        for (var i = 0; i < strays.Count; i++)
        {
            Assert.Equal(strays[i], weights.Select((weight, j) => weight * values[i + j]).Sum(), 1e-9);
        }

        // Two ends, each a share of the whole, as unsure as these stray beyond noise; a drift, their mean, apart.
        var variance = strays.Sum(stray => Math.Pow(stray - strays.Average(), 2)) / strays.Count;
        var share = (double)mean.End / values.Length;
        foreach (var noise in new[] { 0, 0.3 * variance, 2 * variance })
        {
            Assert.Equal(
                2 * share * share * Math.Max(0, variance - noise),
                mean.VarianceOfEnds(smoothed, noise),
                1e-9 * variance
            );
        }
    }

    private static double[] Values(int seed)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, random.Next(20, 120)).Select(_ => 100 * random.NextDouble())];
    }
}
