using AirColumn.Workshop.Stock;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>A socket of a fitting: a pipe goes in to the stop, or nearly. Immutable.</summary>
public sealed record FittingSocket
{
    /// <summary>Describes a socket.</summary>
    /// <param name="entrance">Inside diameter at its entrance: 5 mm to 500 mm.</param>
    /// <param name="bottom">Inside diameter at its bottom: 5 mm, to that of the entrance.</param>
    /// <param name="depth">From entrance to stop: 0.1 mm to 10 m.</param>
    /// <param name="gap">What is left between the pipe's end and the stop: 0, to the depth.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public FittingSocket(Length entrance, Length bottom, Length depth, Length gap)
    {
        Entrance = Caliper.Diameter(entrance);
        Bottom = Caliper.Diameter(bottom);
        Require.InRange(bottom.Millimeters, 5, Entrance.Millimeters, "mm", nameof(bottom));
        Depth = Caliper.AxialLength(depth);
        Require.InRange(gap.Millimeters, 0, Depth.Millimeters, "mm", nameof(gap));
        Gap = gap;
    }

    /// <summary>Inside diameter at its entrance.</summary>
    public Length Entrance { get; }

    /// <summary>Inside diameter at its bottom.</summary>
    public Length Bottom { get; }

    /// <summary>From entrance to stop.</summary>
    public Length Depth { get; }

    /// <summary>What is left between the pipe's end and the stop.</summary>
    public Length Gap { get; }

    /// <summary>A socket of a catalogue.</summary>
    /// <param name="stock">The socket.</param>
    /// <param name="gap">What is left between the pipe's end and the stop: 0, to the depth.</param>
    public static FittingSocket Of(StockSocket stock, Length gap)
    {
        ArgumentNullException.ThrowIfNull(stock);
        return new FittingSocket(stock.Entrance, stock.Bottom, stock.Depth, gap);
    }
}
