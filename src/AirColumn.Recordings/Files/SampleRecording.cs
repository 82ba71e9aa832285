namespace AirColumn.Recordings.Files;

/// <summary>Sound in memory.</summary>
internal sealed class SampleRecording(double[] samples, double rate) : Recording(rate, 1, samples.Length)
{
    private protected override void ReadFrames(
        long start,
        int count,
        int channel,
        Span<double> destination
    ) => samples.AsSpan((int)start, count).CopyTo(destination);
}
