namespace AirColumn;

/// <summary>Options of a search for a shape.</summary>
public sealed record ShapeOptions
{
    private readonly int starts = 6;
    private readonly int steps = 60;
    private readonly double within = 0.01;

    /// <summary>
    /// The largest number of starts: the column as it is, then random places between the bounds; 1 to 1000, 6 by default. The search ends with the
    /// first start that meets all targets.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public int Starts
    {
        get => starts;
        init => starts = (int)Require.InRange(value, 1, 1000, "", nameof(Starts));
    }

    /// <summary>The seed of the random starts: the same seed gives the same answer. 1 by default.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>True, the default, if the column itself is the first start. False: all starts are random.</summary>
    public bool FromColumn { get; init; } = true;

    /// <summary>True if the search goes on with all starts after one has met the targets; false by default.</summary>
    public bool AllStarts { get; init; }

    /// <summary>The largest number of steps from each start: 1 to 10 000, 60 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public int Steps
    {
        get => steps;
        init => steps = (int)Require.InRange(value, 1, 10_000, "", nameof(Steps));
    }

    /// <summary>
    /// The answer counts as solved if no target is missed by more than this, in cents, tenths of a decibel or tenths of a millimetre: 1e-6 to 100,
    /// 0.01 by default.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is out of range or not a number.</exception>
    public double Within
    {
        get => within;
        init => within = Require.InRange(value, 1e-6, 100, "", nameof(Within));
    }
}
