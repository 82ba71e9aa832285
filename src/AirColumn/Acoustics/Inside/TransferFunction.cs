using System.Numerics;

namespace AirColumn;

/// <summary>
/// The transfer function of a column at one frequency, exp(+jωt): pressure and flow at the far end against those at the blown end. They are
/// taken in the planes of the bore's ends. The end correction of an open blown end lies outside these planes and is not included.
/// </summary>
/// <param name="PressureRatio">p at the far end over p at the blown end, dimensionless.</param>
/// <param name="FlowRatio">U at the far end over U at the blown end, dimensionless.</param>
/// <param name="Impedance">Transfer impedance: p at the far end over U at the blown end, Pa·s/m³.</param>
/// <param name="Efficiency">Power radiated from the far end over power sent into the blown end, 0 to 1; below 0 if the end takes in more from open holes than it sends.</param>
public readonly record struct TransferFunction(
    Complex PressureRatio,
    Complex FlowRatio,
    Complex Impedance,
    double Efficiency
);
