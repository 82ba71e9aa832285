namespace AirColumn.Recordings.Tracking;

/// <summary>A whole recording, looked at in short frames, a block at a time.</summary>
internal static class FrameTrack
{
    /// <summary>From one frame to the next, s.</summary>
    public const double Hop = 0.05;

    private const double BlockSeconds = 20;

    public static List<PitchFrame> Of(
        LowRate sound,
        PeriodFinder finder,
        IProgress<double>? progress,
        CancellationToken cancellationToken
    )
    {
        var frames = new List<PitchFrame>();
        var hop = Hop * sound.Rate;
        var inBlock = (int)(BlockSeconds / Hop);
        var all = Math.Max(1, (long)((sound.Count - finder.FrameLength) / hop) + 1);
        for (var first = 0L; first < all; first += inBlock)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var count = (int)Math.Min(inBlock, all - first);
            var (start, end) = ((long)(first * hop), (long)((first + count - 1) * hop) + finder.FrameLength);
            // With a margin, so that a block's ends are like the rest.
            var block = Rumble
                .Removed(
                    sound.Read(start - finder.LongestPeriod, (int)(end - start) + 2 * finder.LongestPeriod),
                    finder.LongestPeriod
                )
                .AsSpan(finder.LongestPeriod);
            for (var i = first; i < first + count; i++)
            {
                cancellationToken.ThrowIfCancellationRequested();
                var at = (long)(i * hop);
                frames.Add(
                    finder.Look(
                        block.Slice((int)(at - start), finder.FrameLength),
                        (at + finder.FrameLength / 2.0) / sound.Rate
                    )
                );
            }

            progress?.Report((double)(first + count) / all);
        }

        return frames;
    }
}
