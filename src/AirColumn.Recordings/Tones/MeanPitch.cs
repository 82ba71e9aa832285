namespace AirColumn.Recordings.Tones;

/// <summary>Mean, drift and uncertainty of a pitch from the turns of its phase.</summary>
internal sealed class MeanPitch
{
    private MeanPitch() { }

    /// <summary>Hz.</summary>
    public required double Hertz { get; init; }

    /// <summary>Hz in a second.</summary>
    public required double Drift { get; init; }

    /// <summary>Standard deviation of the pitch about the drift, Hz.</summary>
    public required double Spread { get; init; }

    /// <summary>Standard uncertainty of the mean, Hz.</summary>
    public required double Uncertainty { get; init; }

    /// <summary>
    /// The mean frequency with the weight of a raised cosine, so that a vibrato of more than two turns, whole or not, hardly counts; the
    /// uncertainty from the phases about a steady drift, with their correlation over time (newey1987).
    /// </summary>
    public static MeanPitch Of(PhaseTrack track)
    {
        var turns = track.Turns.ToArray();
        var trend = new Trend(turns);
        var pitch = 0.0;
        for (var m = 1; m < turns.Length; m++)
        {
            var difference = (trend.Left[m] - trend.Left[m - 1]) / track.Step;
            pitch += difference * difference;
        }

        // Windows that overlap by half are nearly independent.
        double[] apart = [.. turns.Where((_, m) => m % track.NodesInHalfWindow == 0)];
        var mean = Slopes(turns.Length, track.Step);
        return new MeanPitch
        {
            Hertz = turns.Zip(mean, (turn, v) => turn * v).Sum(),
            Drift = 2 * trend.Curvature / (track.Step * track.Step),
            Spread = Math.Sqrt(pitch / (turns.Length - 1)),
            Uncertainty = Math.Sqrt(
                apart.Length < 6
                    ? Variance(turns, track.Step)
                    : Variance(apart, track.Step * track.NodesInHalfWindow)
            ),
        };
    }

    // Mean pitch = Σ wₘ(θₘ − θₘ₋₁)/step = Σ vₘθₘ; these are the v.
    private static double[] Slopes(int n, double step)
    {
        var v = new double[n];
        for (var m = 1; m < n; m++)
        {
            // The raised cosines add up to n − 1.
            var w = (1 - Math.Cos(2 * Math.PI * (m - 0.5) / (n - 1))) / ((n - 1) * step);
            v[m] += w;
            v[m - 1] -= w;
        }

        return v;
    }

    // vᵀCv with the correlations of what is left of a drift, tapered to a quarter of its length; over what comes out of it for a white
    // noise of 1, which a trend taken off makes less than Σv².
    private static double Variance(double[] turns, double step)
    {
        var v = Slopes(turns.Length, step);
        var trend = new Trend(turns);
        var n = turns.Length;
        var lags = n / 4;
        var (variance, ofWhite, white) = (0.0, 0.0, 0.0);
        for (var lag = 0; lag <= lags; lag++)
        {
            var (correlation, expected, weight) = (0.0, 0.0, 0.0);
            for (var m = lag; m < n; m++)
            {
                correlation += trend.Left[m] * trend.Left[m - lag];
                expected += (lag == 0 ? 1 : 0) - trend.Share(m, m - lag);
                weight += v[m] * v[m - lag];
            }

            var taper = (lag == 0 ? 1 : 2) * (1 - lag / (lags + 1.0)) / n;
            variance += taper * correlation * weight;
            ofWhite += taper * expected * weight;
            white += lag == 0 ? weight : 0;
        }

        return Math.Max(0, variance) * white / ofWhite;
    }
}
