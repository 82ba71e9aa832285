using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>What passes at an opening that hears others.</summary>
/// <param name="Flow">Out of its mouth, m³/s.</param>
/// <param name="Heard">The pressure that the others put on the mouth, Pa; its own radiation not among it.</param>
/// <param name="Beyond">Pressure and flow in the bore in the middle of its T, towards the far end; at the far end those there.</param>
/// <param name="Taken">The flow from the bore into its foot, m³/s; 0 at the far end.</param>
internal readonly record struct Mouth(
    ComplexVector Flow,
    ComplexVector Heard,
    WaveState Beyond,
    ComplexVector Taken
);
