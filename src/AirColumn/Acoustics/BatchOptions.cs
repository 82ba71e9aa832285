namespace AirColumn.Acoustics;

/// <summary>How a <see cref="Batch"/> goes about its questions.</summary>
public sealed record BatchOptions
{
    private const int MostThreads = 1024;

    private readonly int? degreeOfParallelism;

    /// <summary>
    /// How many questions are answered at once, at most: 1 to 1024; null, the default, is one for each processor. With 1 no other thread than
    /// the reader's is used. A browser has no others: there it is always 1.
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
    /// Whether answers are handed out in the order of their questions; false by default: as soon as they are there. In order, one that takes
    /// long holds those behind it back.
    /// </summary>
    public bool InOrder { get; init; }

    /// <summary>How many threads that are here.</summary>
    internal int Threads =>
        OperatingSystem.IsBrowser() || OperatingSystem.IsWasi()
            ? 1
            : DegreeOfParallelism ?? Math.Min(Environment.ProcessorCount, MostThreads);
}
