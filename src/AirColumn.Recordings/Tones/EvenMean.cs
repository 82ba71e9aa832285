namespace AirColumn.Recordings.Tones;

/// <summary>
/// The mean of a pitch over a part as if it were known without vibrato: the pitch is smoothed over two turns of a usual vibrato, and what
/// is smoothed first and last stands for the ends, where nothing can be smoothed.
/// </summary>
internal sealed class EvenMean
{
    // Two turns of a slow vibrato, s.
    private const double Width = 0.45;

    private readonly double[] kernel;
    private readonly int steps;

    public EvenMean(int steps, double step)
    {
        this.steps = steps;
        End = Math.Max(0, Math.Min((int)Math.Round(Width / 2 / step), (steps - 1) / 5));
        kernel = new double[2 * End + 1];
        for (var i = 0; i < kernel.Length; i++)
        {
            // The raised cosines add up to End + 1.
            kernel[i] = (0.5 + 0.5 * Math.Cos(Math.PI * (i - End) / (End + 1))) / (End + 1);
        }

        Weights = new double[steps];
        for (var i = End; i < steps - End; i++)
        {
            var share = (1.0 + (i == End ? End : 0) + (i == steps - End - 1 ? End : 0)) / steps;
            for (var j = 0; j < kernel.Length; j++)
            {
                Weights[i - End + j] += share * kernel[j];
            }
        }
    }

    /// <summary>How many steps at either end are not smoothed.</summary>
    public int End { get; }

    /// <summary>The weight of each step; 1 in all.</summary>
    public double[] Weights { get; }

    public double Of(ReadOnlySpan<double> values) => DotProduct.Of(values, Weights);

    /// <summary>The values smoothed, without <see cref="End"/> at either end.</summary>
    public double[] Smoothed(double[] values)
    {
        var smoothed = new double[steps - 2 * End];
        for (var i = 0; i < smoothed.Length; i++)
        {
            smoothed[i] = DotProduct.Of(values.AsSpan(i, kernel.Length), kernel);
        }

        return smoothed;
    }

    /// <summary>The weights by which the mean of what follows a smoothed value, over so many steps as an end has, differs from it.</summary>
    public double[] Ahead()
    {
        var weights = new double[kernel.Length + End];
        for (var i = 0; i <= End; i++)
        {
            for (var j = 0; j < kernel.Length; j++)
            {
                weights[i + j] += kernel[j] * (i == 0 ? -1 : 1.0 / End);
            }
        }

        return weights;
    }

    /// <summary>
    /// Variance of the mean for want of the ends: how smoothed values stray, a drift apart, from those of so many steps before them, by
    /// more than noise does.
    /// </summary>
    /// <param name="smoothed">The smoothed values.</param>
    /// <param name="noise">The variance that noise gives to what <see cref="Ahead"/> weighs.</param>
    public double VarianceOfEnds(double[] smoothed, double noise)
    {
        var count = smoothed.Length - End;
        if (End == 0 || count < 2)
        {
            return 0;
        }

        var strays = new double[count];
        var ahead = smoothed.AsSpan(1, End).ToArray().Sum();
        for (var i = 0; i < count; i++)
        {
            strays[i] = ahead / End - smoothed[i];
            ahead += i + 1 < count ? smoothed[i + 1 + End] - smoothed[i + 1] : 0;
        }

        var mean = strays.Average();
        var variance = strays.Average(stray => (stray - mean) * (stray - mean));
        var share = (double)End / steps;
        return 2 * share * share * Math.Max(0, variance - noise);
    }
}
