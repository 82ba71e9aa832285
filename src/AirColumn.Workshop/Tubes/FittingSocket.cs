using AirColumn.Workshop.Stock;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>A socket of a fitting, into which a pipe goes as far as the stop, or nearly. Immutable.</summary>
public sealed record FittingSocket
{
    /// <summary>Describes a socket.</summary>
    /// <param name="entrance">Inside diameter at its entrance: 5 mm to 500 mm.</param>
    /// <param name="bottom">Inside diameter at its bottom: from 5 mm to the diameter of the entrance.</param>
    /// <param name="depth">The depth from entrance to stop: 0.1 mm to 10 m.</param>
    /// <param name="gap">The space left between the end of the pipe and the stop: from 0 to the depth.</param>
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

    /// <summary>The depth from entrance to stop.</summary>
    public Length Depth { get; }

    /// <summary>The space left between the pipe's end and the stop.</summary>
    public Length Gap { get; }

    /// <summary>
    /// The tolerance of the diameters at entrance and bottom, which vary together. From a catalogue: as stated there, or 0.15 mm (our choice).
    /// Default: 0.05 mm, for a caliper.
    /// </summary>
    public Length DiameterPlusMinus { get; init; } = Length.FromMillimeters(0.05);

    /// <summary>
    /// The distance from home at which a pipe stops if it is pushed in by hand, without cement. The pipe stops where the tapered socket is as
    /// wide as the pipe.
    /// </summary>
    /// <param name="outside">Outside diameter of the pipe.</param>
    /// <returns>The distance: 0 if the pipe reaches its gap, or if the socket has no taper; at most <see cref="Depth"/> less
    /// <see cref="Gap"/>. </returns>
    public Length StopsShort(Length outside) =>
        Length.FromMillimeters(StopsShort(outside.Millimeters - Bottom.Millimeters));

    /// <summary>The same, given how much wider the pipe is than the bottom, mm.</summary>
    internal double StopsShort(double wider)
    {
        var taper = Entrance.Millimeters - Bottom.Millimeters;
        var home = Depth.Millimeters - Gap.Millimeters;
        return taper > 1e-6 ? Math.Clamp(Depth.Millimeters * wider / taper - Gap.Millimeters, 0, home) : 0;
    }

    internal FittingSocket WithGap(Length gap) =>
        new(Entrance, Bottom, Depth, gap) { DiameterPlusMinus = DiameterPlusMinus };

    /// <summary>A socket of a catalogue.</summary>
    /// <param name="stock">The socket.</param>
    /// <param name="gap">The space left between the end of the pipe and the stop: from 0 to the depth.</param>
    /// <returns>The socket.</returns>
    public static FittingSocket Of(StockSocket stock, Length gap)
    {
        ArgumentNullException.ThrowIfNull(stock);
        return new FittingSocket(stock.Entrance, stock.Bottom, stock.Depth, gap)
        {
            DiameterPlusMinus = stock.DiameterTolerance ?? Length.FromMillimeters(0.15),
        };
    }
}
