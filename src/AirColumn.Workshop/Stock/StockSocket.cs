using UnitsNet;

namespace AirColumn.Workshop.Stock;

/// <summary>The socket of a fitting as a standard describes it. It is slightly tapered, and the pipe goes in to the stop. Immutable.</summary>
public sealed record StockSocket
{
    internal StockSocket() { }

    /// <summary>The series of the pipe it takes, such as "pvc-40".</summary>
    public required string Series { get; init; }

    /// <summary>The nominal size of that pipe.</summary>
    public required string Size { get; init; }

    /// <summary>Inside diameter at its entrance.</summary>
    public required Length Entrance { get; init; }

    /// <summary>Inside diameter at its bottom.</summary>
    public required Length Bottom { get; init; }

    /// <summary>Least depth, from entrance to stop.</summary>
    public required Length Depth { get; init; }

    /// <summary>The tolerance of the average diameter at entrance and bottom; null if the table does not state it.</summary>
    public Length? DiameterTolerance { get; init; }

    /// <summary>The standard.</summary>
    public required string Standard { get; init; }

    /// <summary>Its edition; "not stated" if the source does not state it.</summary>
    public required string Edition { get; init; }

    /// <summary>The source it was read from.</summary>
    public required string Source { get; init; }

    /// <summary>Its certainty.</summary>
    public required DataCertainty Certainty { get; init; }

    /// <summary>Series and size of the pipe, by which the catalogue finds it.</summary>
    public string Name => $"{Series} {Size}";
}
