using System.Numerics;
using AirColumn.Gases;

namespace AirColumn.Acoustics.Radiation;

/// <summary>The air outside the blown end, compiled: nothing at a closed one, a mass or a radiating end at an open one.</summary>
internal sealed class BlownLoad
{
    private readonly double inertance; // kg/m⁴
    private readonly FarEndLoad? radiating;

    public BlownLoad(BlownEnd end, double radius, GasConstants gas)
    {
        inertance = gas.Density * end.CorrectionMetres / (Math.PI * radius * radius);
        radiating = end.Free is { } free ? new FarEndLoad(free, radius, gas) : null;
    }

    /// <summary>The radiating end, if it is one.</summary>
    public IEnumerable<FarEndLoad> Loads => radiating is null ? [] : [radiating];

    /// <summary>What it puts before the input impedance, Pa·s/m³, at ω.</summary>
    public Complex Impedance(double omega) =>
        radiating?.At(omega).Pressure ?? new Complex(0, omega * inertance);

    /// <summary>The same as a mass, kg/m⁴, its dissipation taken out.</summary>
    public double InertanceAt(double omega) => radiating?.LosslessReactance(omega) / omega ?? inertance;
}
