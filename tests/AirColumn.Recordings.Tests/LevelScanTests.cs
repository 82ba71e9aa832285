using System.Globalization;
using System.Text.RegularExpressions;
using AirColumn.Recordings.Tracking;
using UnitsNet;

namespace AirColumn.Recordings.Tests;

/// <summary>What was too loud.</summary>
public partial class LevelScanTests
{
    // Three or more samples on end at one end of the scale are clipped, all of them; one or two there, and any flat piece elsewhere, are not.
    [Draws(quick: 100, inLong: 1000)]
    internal void Flat_tops_at_the_end_of_the_scale_are_counted(int seed)
    {
        var random = new Random(seed);
        var (samples, clipped) = (new List<double>(), 0);
        for (var i = 0; i < 40; i++)
        {
            var (count, sign) = (random.Next(1, 8), 2 * random.Next(2) - 1);
            var level = random.Next(3) switch
            {
                0 => 1,
                1 => 0.99 * random.NextDouble(),
                _ => 0,
            };
            samples.AddRange(Enumerable.Repeat(sign * level, count));
            clipped += level == 1 && count >= 3 ? count : 0;
            // A step away from it, so that no two pieces make one.
            samples.Add(0.5 * random.NextDouble() + 0.1);
        }

        var recording = Recording.FromSamples(samples.ToArray(), Frequency.FromHertz(8000));
        var warnings = LevelScan
            .Of(recording, long.MaxValue, null, CancellationToken.None)
            .WarningsOf(0)
            .ToList();
        if (clipped == 0)
        {
            Assert.Empty(warnings);
            return;
        }

        var words = Numbers().Match(Assert.Single(warnings));
        Assert.Equal(clipped, int.Parse(words.Groups[1].Value, CultureInfo.InvariantCulture));
        var share = double.Parse(words.Groups[2].Value, CultureInfo.InvariantCulture);
        Assert.Equal(100.0 * clipped / samples.Count, share, 0.00051);
    }

    [GeneratedRegex(@"clipped: ([0-9]+) samples \(([0-9.]+) %\)")]
    private static partial Regex Numbers();
}
