using UnitsNet;

namespace AirColumn;

/// <summary>
/// Shapes a tube so that its first overblown note is a wanted interval above the drone. A plain closed pipe gives about a twelfth. A widening bore
/// gives
/// less, down to the octave of a cone.
/// </summary>
public static class OverblownInterval
{
    private const double WidestOverInlet = 6;
    private const double LongestOverPresent = 6;

    /// <summary>
    /// Chooses the variables so that the drone has the wanted frequency and the first overblown note lies the given interval above the drone.
    /// </summary>
    /// <param name="column">The tube to begin with.</param>
    /// <param name="drone">The wanted frequency of the drone.</param>
    /// <param name="cents">
    /// The interval from the first resonance to the second: <see cref="Cents.Octave"/>, <see cref="Cents.MajorTenth"/>,
    /// <see cref="Cents.Twelfth"/> or any interval between 0 and 12 000.
    /// </param>
    /// <param name="variables">The parameters to choose and their bounds; at least two.</param>
    /// <param name="options">The options of the search. Default: those of a new <see cref="ShapeOptions"/>.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The shape, and the amount by which it misses each target.</returns>
    /// <exception cref="ArgumentException">There is no variable, or the column does not have one.</exception>
    public static ShapeSolution Solve(
        Column column,
        Frequency drone,
        double cents,
        IReadOnlyList<DesignVariable> variables,
        ShapeOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    ) =>
        ShapeSearch.Solve(
            column,
            variables,
            [ShapeTarget.Resonance(1, drone), ShapeTarget.Interval(1, 2, cents)],
            options,
            progress,
            cancellationToken
        );

    /// <summary>
    /// Chooses the length of a pipe and the length and the wide end of the flare behind it.
    /// </summary>
    /// <param name="column">The tube to begin with; its last section is the flare.</param>
    /// <param name="pipe">The index of the section that is the pipe, not the last: 0 is at the blown end.</param>
    /// <param name="drone">The wanted frequency of the drone.</param>
    /// <param name="cents">The interval from the first resonance to the second, as for <see cref="Solve"/>.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>
    /// The shape, and the amount by which it misses each target. Bounds: the pipe and the flare may each become a sixth to six times as long.
    /// The far end of the flare may be one to six times as wide as its near end, and the flare narrows nowhere.
    /// </returns>
    /// <exception cref="ArgumentException">The bore has one section only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such section before the last.</exception>
    public static ShapeSolution WithFlare(
        Column column,
        int pipe,
        Frequency drone,
        double cents,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        var flare = column.Bore.Sections.Count - 1;
        if (flare < 1)
        {
            throw new ArgumentException(
                "The bore has one section; it needs at least 2, a pipe and the flare behind it.",
                nameof(column)
            );
        }

        Require.InRange(pipe, 0, flare - 1, "");
        var inlet = ColumnParameter.InletDiameter(flare).Of(column);
        return ShapeSearch.Solve(
            column,
            [
                Within(ColumnParameter.SectionLength(pipe)),
                Within(ColumnParameter.SectionLength(flare)),
                new(ColumnParameter.OutletDiameter(flare), inlet, WidestOverInlet * inlet),
            ],
            [
                ShapeTarget.Resonance(1, drone),
                ShapeTarget.Interval(1, 2, cents),
                ShapeTarget.Widening(flare, flare),
            ],
            progress: progress,
            cancellationToken: cancellationToken
        );

        DesignVariable Within(ColumnParameter length) =>
            new(length, length.Of(column) / LongestOverPresent, length.Of(column) * LongestOverPresent);
    }
}
