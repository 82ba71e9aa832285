namespace AirColumn.Design;

/// <summary>Options of a search for a shape.</summary>
public sealed record ShapeOptions
{
    private readonly int starts = 6;
    private readonly int steps = 60;
    private readonly double within = 0.01;

    /// <summary>
    /// From how many places to start at most: the column as it is, then random ones between the bounds; 1 to 1000, 6 by default. The search
    /// ends with the first that meets all targets.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public int Starts
    {
        get => starts;
        init => starts = (int)Require.InRange(value, 1, 1000, "", nameof(Starts));
    }

    /// <summary>From which number the random starts are drawn: the same seed gives the same answer. 1 by default.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Whether the column as it is is the first start; true by default. Else all are random.</summary>
    public bool FromColumn { get; init; } = true;

    /// <summary>Whether to go on with all starts when one has met the targets; false by default.</summary>
    public bool AllStarts { get; init; }

    /// <summary>Steps from each start at most: 1 to 10 000, 60 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public int Steps
    {
        get => steps;
        init => steps = (int)Require.InRange(value, 1, 10_000, "", nameof(Steps));
    }

    /// <summary>
    /// How far each target may be missed for the answer to count as solved: cents, tenths of a decibel, tenths of a millimetre; 1e-6 to 100,
    /// 0.01 by default.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is out of range or not a number.</exception>
    public double Within
    {
        get => within;
        init => within = Require.InRange(value, 1e-6, 100, "", nameof(Within));
    }
}
