namespace AirColumn.Recordings;

/// <summary>The progress of a part, told as that of the whole.</summary>
internal sealed class Part : IProgress<double>
{
    private readonly IProgress<double> whole;
    private readonly double from;
    private readonly double share;

    private Part(IProgress<double> whole, double from, double share) =>
        (this.whole, this.from, this.share) = (whole, from, share);

    /// <summary>A part that begins where so much is done, and is so much of the whole; null where nobody listens.</summary>
    public static Part? Of(IProgress<double>? whole, double from, double share) =>
        whole is null ? null : new Part(whole, from, share);

    public void Report(double value) => whole.Report(Math.Min(1, from + share * value));
}
