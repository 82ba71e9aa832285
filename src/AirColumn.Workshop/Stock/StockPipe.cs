using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Stock;

/// <summary>
/// A kind of pipe as a standard describes it. The size is a name, never a diameter, and a caliper reading beats every table: real
/// pipe lies anywhere between the limits and is out of round. Immutable.
/// </summary>
public sealed record StockPipe
{
    internal StockPipe() { }

    /// <summary>The series, such as "pvc-40".</summary>
    public required string Series { get; init; }

    /// <summary>Its nominal size within the series, such as "1-1/2": a name.</summary>
    public required string Size { get; init; }

    /// <summary>The material.</summary>
    public required string Material { get; init; }

    /// <summary>Outside diameter.</summary>
    public required Length Outside { get; init; }

    /// <summary>The tolerance of the average outside diameter; null if the table does not state it.</summary>
    public required Length? OutsideTolerance { get; init; }

    /// <summary>The least wall; null if the standard gives the inside diameter instead.</summary>
    public required Length? WallLeast { get; init; }

    /// <summary>The greatest wall; null if the table does not state it.</summary>
    public required Length? WallMost { get; init; }

    /// <summary>The inside diameter, if the table gives one.</summary>
    public required Length? InsideGiven { get; init; }

    /// <summary>The standard.</summary>
    public required string Standard { get; init; }

    /// <summary>Its edition; "not stated" if the source does not state it.</summary>
    public required string Edition { get; init; }

    /// <summary>The source it was read from.</summary>
    public required string Source { get; init; }

    /// <summary>Its certainty.</summary>
    public required DataCertainty Certainty { get; init; }

    /// <summary>Series and size, by which the catalogue finds it.</summary>
    public string Name => $"{Series} {Size}";

    /// <summary>
    /// The inside diameter to use until the pipe is measured: the one given; otherwise from the mean wall; otherwise from the least wall,
    /// which makes the diameter too large.
    /// </summary>
    public Length Inside =>
        InsideGiven
        ?? Millimetres(
            Outside.Millimeters
                - (
                    WallMost is { } most
                        ? WallLeast!.Value.Millimeters + most.Millimeters
                        : 2 * WallLeast!.Value.Millimeters
                )
        );

    /// <summary>
    /// The largest inside diameter, from the greatest outside diameter and the least wall; null if the limits are not known.
    /// </summary>
    public Length? InsideMost =>
        (OutsideTolerance, WallLeast) is ({ } tolerance, { } wall)
            ? Millimetres(Outside.Millimeters + tolerance.Millimeters - 2 * wall.Millimeters)
            : null;

    /// <summary>
    /// The smallest inside diameter, from the least outside diameter and the greatest wall; null if the limits are not known.
    /// </summary>
    public Length? InsideLeast =>
        (OutsideTolerance, WallMost) is ({ } tolerance, { } wall)
            ? Millimetres(Outside.Millimeters - tolerance.Millimeters - 2 * wall.Millimeters)
            : null;

    /// <summary>Half the distance between the limits of the inside diameter; null if the limits are not known.</summary>
    public Length? InsidePlusMinus =>
        (InsideLeast, InsideMost) is ({ } least, { } most)
            ? Millimetres((most.Millimeters - least.Millimeters) / 2)
            : null;

    // How far the bore may be from what is reckoned with: half its limits, without the tolerance of the outside diameter where that is not
    // known; a caliper's 0.3 mm where an inside diameter is given; 1 mm, a choice, where only the least wall is known or nothing is confirmed.
    internal Length InsideUnsure
    {
        get
        {
            var limits =
                InsidePlusMinus?.Millimeters
                ?? (
                    InsideGiven is not null ? 0.3
                    : WallMost is { } most ? most.Millimeters - WallLeast!.Value.Millimeters
                    : 1
                );
            return Length.FromMillimeters(
                Certainty is DataCertainty.Memory or DataCertainty.Inferred ? Math.Max(1, limits) : limits
            );
        }
    }

    /// <summary>Name and diameters, in the invariant culture.</summary>
    /// <returns>Name and diameters, as text.</returns>
    public override string ToString() =>
        $"{Name}: {Wording.Size(Outside)} outside, {Wording.Size(Inside)} inside";

    private static Length Millimetres(double value) => Length.FromMillimeters(Math.Round(value, 6));
}
