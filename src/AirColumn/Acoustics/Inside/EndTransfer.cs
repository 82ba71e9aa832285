using System.Numerics;

namespace AirColumn.Acoustics;

/// <summary>
/// Pressure and flow that arrive at the far end from the blown end at one frequency, exp(+jωt). Both are taken in the planes of the bore's ends;
/// the correction of an open blown end lies outside them.
/// </summary>
/// <param name="PressureRatio">p at the far end over p at the blown end, dimensionless.</param>
/// <param name="FlowRatio">U at the far end over U at the blown end, dimensionless.</param>
/// <param name="Impedance">Transfer impedance: p at the far end over U at the blown end, Pa·s/m³.</param>
/// <param name="Efficiency">Power radiated from the far end over power sent into the blown end, 0 to 1.</param>
public readonly record struct EndTransfer(
    Complex PressureRatio,
    Complex FlowRatio,
    Complex Impedance,
    double Efficiency
);
