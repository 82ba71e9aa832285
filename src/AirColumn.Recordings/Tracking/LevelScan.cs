namespace AirColumn.Recordings.Tracking;

/// <summary>One reading of a whole recording: how loud each channel is, and whether it was too loud.</summary>
internal sealed class LevelScan
{
    private const int Block = 1 << 18; // samples read at once, at most

    // At one value at the end of the scale for so many samples on end: no wave has so flat a top.
    private const double FullScale = 0.99995;
    private const int FlatTop = 3;

    private readonly double[] sums;
    private readonly double[] squares;
    private readonly double[] last;
    private readonly int[] runs;
    private readonly long[] clipped;
    private readonly long frames;

    private LevelScan(int channels, long frames)
    {
        this.frames = frames;
        (sums, squares, last) = (new double[channels], new double[channels], new double[channels]);
        (runs, clipped) = (new int[channels], new long[channels]);
    }

    /// <summary>The channel of the most power, an offset not counted.</summary>
    public int Loudest
    {
        get
        {
            var loudest = 0;
            for (var channel = 1; channel < sums.Length; channel++)
            {
                loudest = Power(channel) > Power(loudest) ? channel : loudest;
            }

            return loudest;
        }
    }

    /// <summary>Whether there is no sound at all.</summary>
    public bool IsSilent => Power(Loudest) <= 0;

    /// <summary>Reads the first <paramref name="frames"/> of a recording.</summary>
    public static LevelScan Of(
        Recording recording,
        long frames,
        IProgress<double>? progress,
        CancellationToken cancellationToken
    )
    {
        frames = Math.Min(frames, recording.Frames);
        var scan = new LevelScan(recording.Channels, frames);
        var room = Math.Max(1, Block / recording.Channels);
        var samples = new double[Math.Min(room, frames) * recording.Channels];
        for (var from = 0L; from < frames; from += room)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var count = (int)Math.Min(room, frames - from);
            var read = samples.AsSpan(0, count * recording.Channels);
            recording.ReadAll(from, read);
            scan.Add(read);
            progress?.Report((double)(from + count) / frames);
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
                + "That does not harm the pitch, but it does harm the levels of partials. Record farther away or with less gain.";
        }
    }

    private double Power(int channel) => squares[channel] - sums[channel] * sums[channel] / frames;

    // Frames one after the other, each with all its channels.
    private void Add(ReadOnlySpan<double> samples)
    {
        for (var i = 0; i < samples.Length; )
        {
            for (var channel = 0; channel < sums.Length; channel++, i++)
            {
                var sample = samples[i];
                sums[channel] += sample;
                squares[channel] += sample * sample;
                if (Math.Abs(sample) >= FullScale && sample == last[channel])
                {
                    runs[channel]++;
                    clipped[channel] +=
                        runs[channel] == FlatTop - 1 ? FlatTop
                        : runs[channel] >= FlatTop ? 1
                        : 0;
                }
                else
                {
                    runs[channel] = 0;
                }

                last[channel] = sample;
            }
        }
    }
}
