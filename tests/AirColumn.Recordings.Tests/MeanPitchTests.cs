using AirColumn.Recordings.Tones;

namespace AirColumn.Recordings.Tests;

/// <summary>How sure the mean of a pitch is.</summary>
public class MeanPitchTests
{
    // The variance of a sum from the covariances of all its terms. Half of the noise lies across the sine and turns its phase by √(n/2p) radians, for
    // powers n and p; windows that overlap are turned together.
    [Draws(quick: 5, inLong: 50)]
    internal void A_pure_tone_is_as_unsure_as_the_noise_beside_it(int seed)
    {
        var random = new Random(seed);
        const double Rate = 10_000;
        var (hertz, phase) = (60 + 100 * random.NextDouble(), 2 * Math.PI * random.NextDouble());
        var noise = 0.02 + 0.1 * random.NextDouble();
        double[] sound =
        [
            .. Enumerable
                .Range(0, (int)(2 * Rate))
                .Select(i =>
                    Math.Sin(2 * Math.PI * hertz * i / Rate + phase)
                    // Twelve even numbers add up to a variance of 1.
                    + noise * (Enumerable.Range(0, 12).Sum(_ => random.NextDouble()) - 6)
                ),
        ];
        var track = PhaseTrack.Of(sound, Rate, hertz, _ => hertz)!;
        Assert.Equal(1, track.Shares.Sum(), 1e-9);
        Assert.Equal(1, track.Shares[0], 1e-9);
        var turned = track.Noise[0] / (2 * track.Power[0]) / (4 * Math.PI * Math.PI);
        double Variance(double[] weights)
        {
            // Of the phases, not of their differences.
            double Of(int m) =>
                ((m > 0 ? weights[m - 1] : 0) - (m < weights.Length ? weights[m] : 0)) / track.Step;
            var sum = 0.0;
            for (var m = 0; m <= weights.Length; m++)
            {
                for (var n = 0; n <= weights.Length; n++)
                {
                    sum += Of(m) * Of(n) * track.Overlap(Math.Abs(m - n)) * turned;
                }
            }

            return sum;
        }

        var turns = track.Turns.ToArray();
        double[] pitch = [.. turns.Zip(turns.Skip(1), (a, b) => (b - a) / track.Step)];
        var mean = new EvenMean(pitch.Length, track.Step);
        var found = MeanPitch.Of(track);
        Assert.Equal(0, found.Glide);
        Assert.Equal(mean.Of(pitch), found.Hertz, 1e-9);
        Assert.Equal(
            Math.Sqrt(
                Variance(mean.Weights) + mean.VarianceOfEnds(mean.Smoothed(pitch), Variance(mean.Ahead()))
            ),
            found.Uncertainty,
            1e-6 * found.Uncertainty
        );
        // Six of it cover the truth.
        Assert.InRange(Math.Abs(found.Hertz - hertz), 0, 6 * found.Uncertainty);
    }
}
