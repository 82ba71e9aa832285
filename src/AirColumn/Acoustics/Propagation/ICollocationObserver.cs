using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>Sees the field inside a segment as a wave passes it.</summary>
internal interface ICollocationObserver
{
    /// <summary>Sees a step.</summary>
    /// <param name="step">Which, counted from the blown end.</param>
    /// <param name="series">Z' times the step at its points.</param>
    /// <param name="shunt">Y' times the step at its points.</param>
    /// <param name="pressure">At its points.</param>
    /// <param name="flow">At its points.</param>
    /// <param name="walls">The losses at its points.</param>
    /// <param name="log">The scale of pressure and flow.</param>
    void See(
        int step,
        scoped ReadOnlySpan<ComplexVector> series,
        scoped ReadOnlySpan<ComplexVector> shunt,
        scoped ReadOnlySpan<ComplexVector> pressure,
        scoped ReadOnlySpan<ComplexVector> flow,
        scoped ReadOnlySpan<WallFunctions> walls,
        RealVector log
    );
}
