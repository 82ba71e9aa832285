namespace AirColumn.Recordings.Tracking;

/// <summary>One reading of a whole recording: how loud each channel is, and whether it was too loud.</summary>
internal sealed class LevelScan
{
    private const int Block = 1 << 18; // frames read at once, at most

    // At the end of the scale, for so many samples on end: no wave has so flat a top.
    private const double FullScale = 0.99995;
    private const int FlatTop = 3;

    private readonly double[] power;
    private readonly long[] clipped;
    private readonly long frames;

    private LevelScan(Recording recording)
    {
        power = new double[recording.Channels];
        clipped = new long[recording.Channels];
        frames = recording.Frames;
    }

    /// <summary>The channel of the most power.</summary>
    public int Loudest => Array.IndexOf(power, power.Max());

    /// <summary>Whether there is no sound at all.</summary>
    public bool IsSilent => power.Max() == 0;

    public static LevelScan Of(
        Recording recording,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        var scan = new LevelScan(recording);
        var samples = new double[Math.Min(Block, recording.Frames)];
        for (var from = 0L; from < recording.Frames; from += samples.Length)
        {
            cancellation.ThrowIfCancellationRequested();
            var count = (int)Math.Min(samples.Length, recording.Frames - from);
            for (var channel = 0; channel < recording.Channels; channel++)
            {
                recording.Read(channel, from, samples.AsSpan(0, count));
                scan.Add(channel, samples.AsSpan(0, count));
            }

            progress?.Report((double)(from + count) / recording.Frames);
        }

        return scan;
    }

    public IEnumerable<string> WarningsOf(int channel)
    {
        if (clipped[channel] > 0)
        {
            var share = 100.0 * clipped[channel] / frames;
            yield return FormattableString.Invariant(
                $"The recording is clipped: {clipped[channel]} samples ({share:0.###} %) stand at the end of the scale. "
            )
                + "The pitch is not harmed by it, levels of partials are. Record farther away or with less gain.";
        }
    }

    private void Add(int channel, ReadOnlySpan<double> samples)
    {
        power[channel] += LowRate.Dot(samples, samples);
        var run = 0;
        foreach (var sample in samples)
        {
            run = Math.Abs(sample) >= FullScale ? run + 1 : 0;
            clipped[channel] +=
                run == FlatTop ? FlatTop
                : run > FlatTop ? 1
                : 0;
        }
    }
}
