namespace AirColumn.Recordings.Tracking;

/// <summary>One channel of a recording at a lower rate: of what is above a band, nothing folds back into it.</summary>
/// <remarks>
/// Finite impulse response with a window of Kaiser (oppenheim2010, ch. 7), 80 dB down where it would fold back, its phase zero: times
/// stay what they were.
/// </remarks>
internal sealed class LowRate
{
    /// <summary>Up to where partials are looked for, Hz.</summary>
    public const double Partials = 4000;

    // Enough samples in the shortest period that matters for what is interpolated between them.
    private const double LeastInBand = 3.5;
    private const double Beta = 7.86; // for 80 dB

    private readonly Recording recording;
    private readonly int channel;
    private readonly double[] taps;

    /// <summary>Keeps sound up to <paramref name="band"/>, Hz.</summary>
    public LowRate(Recording recording, int channel, double band)
    {
        (this.recording, this.channel) = (recording, channel);
        Factor = Math.Max(1, (int)(recording.RateHertz / (LeastInBand * band)));
        Rate = recording.RateHertz / Factor;
        Count = (recording.Frames - 1) / Factor + 1;
        taps = Factor == 1 ? [1] : Taps(Factor, recording.RateHertz, band);
    }

    /// <summary>Samples per second, Hz.</summary>
    public double Rate { get; }

    /// <summary>The number of items.</summary>
    public long Count { get; }

    private int Factor { get; }

    /// <summary>Samples from <paramref name="start"/> on; beyond the ends there is silence.</summary>
    public double[] Read(long start, int count)
    {
        var half = taps.Length / 2;
        var first = start * Factor - half;
        var source = new double[(count - 1) * Factor + taps.Length];
        var from = Math.Clamp(first, 0, recording.Frames);
        var to = Math.Clamp(first + source.Length, 0, recording.Frames);
        if (to > from)
        {
            recording.Read(channel, from, source.AsSpan((int)(from - first), (int)(to - from)));
        }

        var samples = new double[count];
        for (var i = 0; i < count; i++)
        {
            samples[i] = DotProduct.Of(source.AsSpan(i * Factor, taps.Length), taps);
        }

        return samples;
    }

    private static double[] Taps(int factor, double rate, double band)
    {
        var low = rate / factor;
        var transition = (low - 2 * band) / rate;
        var cutoff = low / 2 / rate;
        var half = (int)Math.Ceiling((80 - 8) / (2.285 * 2 * Math.PI * transition) / 2);
        var taps = new double[2 * half + 1];
        for (var i = -half; i <= half; i++)
        {
            var sinc = i == 0 ? 2 * cutoff : Math.Sin(2 * Math.PI * cutoff * i) / (Math.PI * i);
            var x = (double)i / half;
            taps[i + half] =
                sinc
                * MathNet.Numerics.SpecialFunctions.BesselI0(Beta * Math.Sqrt(1 - x * x))
                / MathNet.Numerics.SpecialFunctions.BesselI0(Beta);
        }

        var sum = taps.Sum();
        return [.. taps.Select(tap => tap / sum)];
    }
}
