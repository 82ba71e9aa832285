using AirColumn.Acoustics;
using AirColumn.Pitches;
using UnitsNet;

namespace AirColumn.Design;

/// <summary>
/// Shapes a tube so that its first overblown note lies a wanted interval above the drone: a plain closed pipe gives about a twelfth,
/// a widening bore less, down to the octave of a cone.
/// </summary>
public static class OverblownInterval
{
    private const double WidestOverInlet = 6;
    private const double LongestOverPresent = 6;

    /// <summary>Chooses the unknowns so that the drone lies on a note and the first overblown one the interval above it.</summary>
    /// <param name="column">The tube to begin with.</param>
    /// <param name="drone">The frequency at which the drone is wanted.</param>
    /// <param name="cents">
    /// The interval from the first resonance to the second: <see cref="Cents.Octave"/>, <see cref="Cents.MajorTenth"/>,
    /// <see cref="Cents.Twelfth"/> or any between 0 and 12 000.
    /// </param>
    /// <param name="unknowns">What may be chosen: at least two things.</param>
    /// <param name="options">How to search; the defaults if left out.</param>
    /// <param name="cancellationToken">Ends it early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The shape, with by how much each target is missed.</returns>
    /// <exception cref="ArgumentException">There is no unknown, or the column does not have one.</exception>
    public static ShapeSolution Solve(
        Column column,
        Frequency drone,
        double cents,
        IReadOnlyList<Unknown> unknowns,
        ShapeOptions? options = null,
        CancellationToken cancellationToken = default
    ) =>
        ShapeSearch.Solve(
            column,
            unknowns,
            [ShapeTarget.Resonance(1, drone), ShapeTarget.Interval(1, 2, cents)],
            options,
            cancellationToken
        );

    /// <summary>
    /// Chooses the length of a pipe and the length and the wide end of the flare behind it.
    /// </summary>
    /// <param name="column">The tube to begin with; its last section is the flare.</param>
    /// <param name="pipe">Which section is the pipe, not the last: 0 is at the blown end.</param>
    /// <param name="drone">The frequency at which the drone is wanted.</param>
    /// <param name="cents">The interval from the first resonance to the second, as above.</param>
    /// <param name="cancellationToken">Ends it early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>
    /// The shape, with by how much each target is missed: the pipe and the flare from a sixth to six times as long as they are, the flare's end
    /// from its beginning to six times as wide, and nowhere narrowing.
    /// </returns>
    /// <exception cref="ArgumentException">The bore has one section only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such section before the last.</exception>
    public static ShapeSolution WithFlare(
        Column column,
        int pipe,
        Frequency drone,
        double cents,
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
            cancellationToken: cancellationToken
        );

        Unknown Within(ColumnParameter length) =>
            new(length, length.Of(column) / LongestOverPresent, length.Of(column) * LongestOverPresent);
    }
}
