namespace AirColumn.Recordings.Tracking;

/// <summary>
/// The period of a short piece of sound by the normalised square difference n(τ) = 2·Σxᵢxᵢ₊τ/Σ(xᵢ² + xᵢ₊τ²): mcleod2005.
/// It needs no fundamental, only a period.
/// </summary>
internal sealed class PeriodFinder
{
    // The first maximum that reaches so much of the highest is the period; mcleod2005 say 0.8 to 1.
    private const double OfHighest = 0.93;

    private readonly double rate;
    private readonly int least;
    private readonly double[] likeness;
    private readonly double[] centred;

    public PeriodFinder(double rate, double lowestHertz, double highestHertz)
    {
        this.rate = rate;
        least = (int)(rate / highestHertz);
        likeness = new double[(int)Math.Ceiling(rate / lowestHertz) + 2];
        // Four of the longest periods: two are compared with two.
        FrameLength = (int)(4 * rate / lowestHertz);
        centred = new double[FrameLength];
    }

    /// <summary>How many samples a frame has.</summary>
    public int FrameLength { get; }

    /// <summary>The longest period looked for, samples.</summary>
    public int LongestPeriod => likeness.Length;

    /// <summary>Looks at one frame.</summary>
    public PitchFrame Look(ReadOnlySpan<double> frame, double seconds)
    {
        var mean = Mean(frame);
        for (var i = 0; i < frame.Length; i++)
        {
            centred[i] = frame[i] - mean;
        }

        var power = DotProduct.Of(centred, centred);
        var level = Math.Sqrt(power / frame.Length);
        if (power == 0)
        {
            return new PitchFrame(seconds, 0, 0, 0);
        }

        Compare(2 * power);
        var (lag, clarity) = Choose();
        return new PitchFrame(seconds, level, lag > 0 ? rate / lag : 0, clarity);
    }

    private static double Mean(ReadOnlySpan<double> samples)
    {
        var sum = 0.0;
        foreach (var sample in samples)
        {
            sum += sample;
        }

        return sum / samples.Length;
    }

    private void Compare(double squares)
    {
        likeness[0] = 1;
        for (var lag = 1; lag < likeness.Length; lag++)
        {
            var (gone, ends) = (centred[lag - 1], centred[^lag]);
            squares -= gone * gone + ends * ends;
            var product = DotProduct.Of(centred.AsSpan(lag), centred.AsSpan(0, centred.Length - lag));
            likeness[lag] = squares > 0 ? 2 * product / squares : 0;
        }
    }

    // The highest of each stretch above zero, but for the one at lag 0, and of these the first that is high.
    private (double Lag, double Clarity) Choose()
    {
        var peaks = new List<(double Lag, double Height)>();
        var i = 1;
        while (i < likeness.Length && likeness[i] > 0)
        {
            i++;
        }

        while (i < likeness.Length - 1)
        {
            var best = 0;
            for (; i < likeness.Length - 1 && likeness[i] <= 0; i++) { }
            for (; i < likeness.Length - 1 && likeness[i] > 0; i++)
            {
                best = best == 0 || likeness[i] > likeness[best] ? i : best;
            }

            if (best >= Math.Max(least, 2) && likeness[best + 1] <= likeness[best])
            {
                peaks.Add(Vertex(best));
            }
        }

        if (peaks.Count == 0)
        {
            return (0, 0);
        }

        var highest = peaks.Max(peak => peak.Height);
        return peaks.First(peak => peak.Height >= OfHighest * highest);
    }

    private (double Lag, double Height) Vertex(int at)
    {
        var (a, b, c) = (likeness[at - 1], likeness[at], likeness[at + 1]);
        var curvature = a - 2 * b + c;
        var shift = curvature < 0 ? Math.Clamp((a - c) / (2 * curvature), -0.5, 0.5) : 0;
        return (at + shift, Math.Min(1, b - (a - c) * shift / 4));
    }
}
