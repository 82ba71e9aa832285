using UnitsNet;

namespace AirColumn;

/// <summary>One measured point of a bore: a place on the axis and the inside diameter there.</summary>
/// <param name="Position">Distance from the section's inlet along the axis.</param>
/// <param name="Diameter">Inside diameter at that place.</param>
public readonly record struct ProfilePoint(Length Position, Length Diameter)
{
    /// <summary>The dimensions, in the invariant culture.</summary>
    /// <returns>The place and diameter, as text.</returns>
    public override string ToString() => $"{Dimension.Text(Diameter)} at {Dimension.Text(Position)}";
}
