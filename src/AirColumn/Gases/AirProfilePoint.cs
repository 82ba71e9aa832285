using UnitsNet;

namespace AirColumn;

/// <summary>The air at one place of a bore.</summary>
/// <param name="Distance">Distance from the blown end along the axis.</param>
/// <param name="State">The state of the air there.</param>
public readonly record struct AirProfilePoint(Length Distance, AirState State);
