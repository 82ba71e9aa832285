using System.Numerics;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Line;

/// <summary>The air outside the blown end, compiled: nothing at a closed one, a mass or a radiating end at an open one.</summary>
internal sealed class InputTermination
{
    private readonly double inertance; // kg/m⁴
    private readonly Termination? radiating;

    public InputTermination(BlownEnd end, double radius, GasConstants gas)
    {
        inertance = gas.Density * end.CorrectionMetres / (Math.PI * radius * radius);
        radiating = end.Free is { } free ? new Termination(free, radius, gas) : null;
    }

    private InputTermination() { }

    /// <summary>Nothing outside.</summary>
    public static InputTermination None { get; } = new();

    /// <summary>Whether anything lies outside.</summary>
    public bool IsOpen => radiating is not null || inertance != 0;

    /// <summary>The radiating end, if it is one.</summary>
    public IEnumerable<Termination> Loads => radiating is null ? [] : [radiating];

    /// <summary>What it puts before the input impedance, Pa·s/m³, at ω.</summary>
    public Complex Impedance(double omega) =>
        radiating?.At(omega).Pressure ?? new Complex(0, omega * inertance);

    /// <summary>The same at some ω.</summary>
    public ComplexVector Impedance(RealVector omega) =>
        radiating?.At(omega).Pressure ?? new ComplexVector(RealVector.Zero, inertance * omega);

    /// <summary>The same as a mass, kg/m⁴, its dissipation taken out.</summary>
    public double InertanceAt(double omega) => radiating?.LosslessReactance(omega) / omega ?? inertance;
}
