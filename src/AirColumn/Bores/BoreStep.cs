using UnitsNet;

namespace AirColumn;

/// <summary>A sudden change of diameter where two sections meet.</summary>
/// <param name="Position">Distance from the blown end along the axis.</param>
/// <param name="Before">Inside diameter on the side of the blown end.</param>
/// <param name="After">Inside diameter on the side of the far end.</param>
public readonly record struct BoreStep(Length Position, Length Before, Length After)
{
    /// <summary>The dimensions, in the invariant culture.</summary>
    /// <returns>The dimensions, as text.</returns>
    public override string ToString() =>
        $"{Dimension.Text(Before)} to {Dimension.Text(After)} at {Dimension.Text(Position)}";
}
