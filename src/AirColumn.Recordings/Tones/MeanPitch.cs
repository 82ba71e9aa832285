namespace AirColumn.Recordings.Tones;

/// <summary>Mean, drift and uncertainty of a pitch from the turns of its phase.</summary>
internal sealed class MeanPitch
{
    // A straight line that explains so much of the pitch is a glide and no wandering.
    private const double Explained = 0.8;

    // A glide over less is what players do without knowing, cents.
    private const double Unnoticed = 4;

    // What most harmonics say is heard where it is so many standard uncertainties from the mean, and they are so many.
    private const double Apart = 3;
    private const int LeastVotes = 8;
    private const double Close = 0.3;

    // Over what noise explains, as a variance.
    private const double Disturbed = 3;

    private MeanPitch() { }

    /// <summary>Hz.</summary>
    public required double Hertz { get; init; }

    /// <summary>Hz in a second.</summary>
    public required double Drift { get; init; }

    /// <summary>Standard deviation of the pitch about the drift, Hz.</summary>
    public required double Spread { get; init; }

    /// <summary>The whole extent of its glide, Hz; 0 if it is held or wanders.</summary>
    public required double Glide { get; init; }

    /// <summary>Standard deviation of the pitches of the harmonics, each weighted as in the mean, Hz.</summary>
    public required double Disagreement { get; init; }

    /// <summary>Standard uncertainty of the mean, Hz; a glide counts as a pitch that may be anywhere on it.</summary>
    public required double Uncertainty { get; init; }

    /// <summary>The mean over the track, with its uncertainty from noise, from unknown ends and gaps, and from a glide.</summary>
    public static MeanPitch Of(PhaseTrack track)
    {
        var turns = track.Turns.ToArray();
        var trend = new Trend(turns);
        var pitch = new double[turns.Length - 1];
        var spread = 0.0;
        for (var m = 0; m < pitch.Length; m++)
        {
            pitch[m] = (turns[m + 1] - turns[m]) / track.Step;
            var difference = (trend.Left[m + 1] - trend.Left[m]) / track.Step;
            spread += difference * difference / pitch.Length;
        }

        var mean = new EvenMean(pitch.Length, track.Step);
        var gaps = BridgeGaps(pitch, track.Gaps);
        var strays = Variance(pitch);
        var smoothed = mean.Smoothed(pitch);
        var drift = 2 * trend.Curvature / (track.Step * track.Step);
        var (hertz, noise) = (mean.Of(pitch), OfNoise(track, mean.Weights));
        var (most, disagreement, apart) = OfDisagreement(track, mean.Weights);
        if (most * most > Apart * Apart * Math.Max(noise, disagreement))
        {
            // Something else has drawn away some harmonics, strong ones: it is no better known than half of that.
            hertz += most;
            disagreement = Math.Max(disagreement, most * most / 4);
        }

        var glide = Glided(smoothed, hertz, drift * track.Step * pitch.Length);
        return new MeanPitch
        {
            Hertz = hertz,
            Drift = drift,
            Spread = Math.Sqrt(spread),
            Glide = Math.Abs(glide),
            Disagreement = Math.Sqrt(apart),
            Uncertainty = Math.Sqrt(
                OfBoth(noise, disagreement)
                    + mean.VarianceOfEnds(smoothed, OfNoise(track, mean.Ahead()))
                    + gaps * strays
                    + glide * glide / 12
            ),
        };
    }

    // Two estimates of one variance, but for a disturbance that only the disagreement shows; a pure tone has nothing to disagree with.
    private static double OfBoth(double noise, double disagreement) =>
        disagreement > Disturbed * noise ? disagreement
        : disagreement > 0 ? (noise + disagreement) / 2
        : noise;

    // What sounds counts; what is in the gaps may be off as a whole, since breaths are alike: the square of their share.
    private static double BridgeGaps(double[] pitch, bool[] gaps)
    {
        var (sum, count) = (0.0, 0);
        for (var m = 0; m < pitch.Length; m++)
        {
            sum += gaps[m + 1] ? 0 : pitch[m];
            count += gaps[m + 1] ? 1 : 0;
        }

        if (count == 0)
        {
            return 0;
        }

        for (var m = 0; m < pitch.Length; m++)
        {
            pitch[m] = gaps[m + 1] ? sum / (pitch.Length - count) : pitch[m];
        }

        var share = (double)count / pitch.Length;
        return share * share;
    }

    private static double Glided(double[] smoothed, double hertz, double drifted)
    {
        if (smoothed.Length < 3 || 1200 * Math.Log2(1 + Math.Abs(drifted) / hertz) < Unnoticed)
        {
            return 0;
        }

        var (middle, xx, xy) = ((smoothed.Length - 1) / 2.0, 0.0, 0.0);
        for (var i = 0; i < smoothed.Length; i++)
        {
            xx += (i - middle) * (i - middle);
            xy += (i - middle) * smoothed[i];
        }

        return xy * xy / xx >= Explained * smoothed.Length * Variance(smoothed) ? drifted : 0;
    }

    private static double Variance(double[] values)
    {
        var mean = values.Average();
        return values.Average(value => (value - mean) * (value - mean));
    }

    // The noise beside each harmonic turns its phase; windows that overlap share it.
    private static double OfNoise(PhaseTrack track, double[] weights)
    {
        var slopes = new double[weights.Length + 1];
        for (var m = 0; m < weights.Length; m++)
        {
            slopes[m + 1] += weights[m] / track.Step;
            slopes[m] -= weights[m] / track.Step;
        }

        var alike = 0.0;
        for (var lag = 0; lag < slopes.Length && track.Overlap(lag) is > 0 and var overlap; lag++)
        {
            alike +=
                (lag == 0 ? 1 : 2)
                * overlap
                * DotProduct.Of(slopes.AsSpan(lag), slopes.AsSpan(0, slopes.Length - lag));
        }

        var ofPhase = 0.0;
        for (var h = 0; h < track.Shares.Length; h++)
        {
            if (track.Shares[h] > 0)
            {
                var radians = track.Shares[h] / (2 * Math.PI * (h + 1));
                ofPhase += radians * radians * track.Noise[h] / (2 * track.Power[h]);
            }
        }

        return Math.Max(0, alike * ofPhase);
    }

    // Harmonics of one note have one pitch. What each one's mean strays by counts with its own share in the mean, so that one that
    // something else has drawn away shows up as what it did (white1980); and what most of them say, each with one vote.
    private static (double Most, double Variance, double Apart) OfDisagreement(
        PhaseTrack track,
        double[] weights
    )
    {
        var (variance, apart, strays) = (0.0, 0.0, new List<double>());
        for (var h = 0; h < track.Shares.Length; h++)
        {
            var share = track.Shares[h];
            if (share is > 0 and < 1)
            {
                var stray = 0.0;
                for (var m = 0; m < weights.Length; m++)
                {
                    stray += track.Gaps[m + 1] ? 0 : weights[m] * track.Strays[h][m + 1] / track.Step;
                }

                variance += share * share * stray * stray / (1 - share);
                apart += share * stray * stray;
                strays.Add(stray);
            }
        }

        return (strays.Count < LeastVotes ? 0 : Crowd(strays), variance, apart);
    }

    // The middle of the quarter of the values that lies closest together; 0, the mean of all, if it is not close.
    private static double Crowd(List<double> values)
    {
        values.Sort();
        var count = values.Count / 4;
        var best = 0;
        for (var i = 1; i + count < values.Count; i++)
        {
            best = values[i + count] - values[i] < values[best + count] - values[best] ? i : best;
        }

        var (middle, width) = (
            (values[best] + values[best + count]) / 2,
            values[best + count] - values[best]
        );
        return width < Close * Math.Abs(middle) ? middle : 0;
    }
}
