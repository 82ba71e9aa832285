namespace AirColumn;

/// <summary>Options of a <see cref="Batch"/>: how many questions run at once, and in which order answers come.</summary>
public sealed record BatchOptions
{
    private const int MostThreads = 1024;

    private readonly int? degreeOfParallelism;

    /// <summary>
    /// The largest number of questions answered at once: 1 to 1024. Null, the default, means one for each processor. With 1, the thread
    /// that reads the
    /// answers computes them; a browser has no other thread, so there it is always 1.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public int? DegreeOfParallelism
    {
        get => degreeOfParallelism;
        init =>
            degreeOfParallelism = value is { } count
                ? (int)Require.InRange(count, 1, MostThreads, "", nameof(DegreeOfParallelism))
                : null;
    }

    /// <summary>
    /// True if answers come in the order of their questions; a slow question then delays the answers after it. False, the default: each
    /// answer comes as soon as it is ready.
    /// </summary>
    public bool InOrder { get; init; }

    /// <summary>How many threads that are here.</summary>
    internal int Threads =>
        OperatingSystem.IsBrowser() || OperatingSystem.IsWasi()
            ? 1
            : DegreeOfParallelism ?? Math.Min(Environment.ProcessorCount, MostThreads);
}
