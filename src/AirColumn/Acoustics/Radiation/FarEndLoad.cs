using System.Numerics;
using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Acoustics.Radiation;

/// <summary>The far end compiled: pressure and flow there, up to a common factor, at any angular frequency.</summary>
internal sealed class FarEndLoad
{
    private readonly double radius;
    private readonly double speedOfSound;
    private readonly double characteristicImpedance;
    private readonly Func<double, EndReflection>? reflection;

    public FarEndLoad(BoreEnd end, double radius, GasConstants gas)
    {
        this.radius = radius;
        speedOfSound = gas.SpeedOfSound;
        characteristicImpedance = gas.Density * gas.SpeedOfSound / (Math.PI * radius * radius);
        IsClosed = end is ClosedEnd;
        var highestKa = double.PositiveInfinity;
        switch (end)
        {
            case BaffledEnd:
                (reflection, highestKa) = (ThinEnd.Baffled.At, ThinEnd.HighestKa);
                break;
            case OpenEnd { WallMetres: 0 }:
                (reflection, highestKa) = (ThinEnd.Unflanged.At, ThinEnd.HighestKa);
                break;
            case OpenEnd { WallMetres: var wall }:
                var outerOverInner = 1 + wall / radius;
                (reflection, highestKa) = (new RimmedEnd(outerOverInner).At, RimmedEnd.HighestKa);
                Warning =
                    outerOverInner > RimmedEnd.ThickestTabulated
                        ? $"The wall at the open end makes the outer radius {Require.Show(Math.Round(outerOverInner, 2), "")} "
                            + "times the inner; field solutions were tabulated up to 3 times. Between there and a baffle the end correction "
                            + "may be off by some hundredths of the radius, and the radiated power, so level and Q, by some tens of per cent."
                        : null;
                break;
            case ClosedEnd or IdealOpenEnd:
                break;
            default:
                throw new ArgumentException(
                    $"No model for a far end of type {end.GetType().Name}.",
                    nameof(end)
                );
        }

        HighestFrequency = highestKa * speedOfSound / (2 * Math.PI * radius);
    }

    private FarEndLoad(
        Func<double, EndReflection> reflection,
        double highestKa,
        double radius,
        GasConstants gas
    )
    {
        this.radius = radius;
        this.reflection = reflection;
        speedOfSound = gas.SpeedOfSound;
        characteristicImpedance = gas.Density * gas.SpeedOfSound / (Math.PI * radius * radius);
        HighestFrequency = highestKa * speedOfSound / (2 * Math.PI * radius);
    }

    /// <summary>Whether the end is a rigid stop.</summary>
    public bool IsClosed { get; }

    /// <summary>Where the radiation model ends, Hz; infinite for ends that do not radiate.</summary>
    public double HighestFrequency { get; }

    /// <summary>What the user should know of the model at this end; null if nothing.</summary>
    public string? Warning { get; }

    /// <summary>The open end of a hole of one radius through the wall of a tube of another outer radius, m.</summary>
    public static FarEndLoad OfHole(double radius, double outerRadius, GasConstants gas) =>
        new(new HoleEnd(radius / outerRadius).At, ThinEnd.HighestKa, radius, gas);

    /// <summary>(p, U) at the end at ω: Pa and m³/s up to a common factor.</summary>
    public (Complex Pressure, Complex Flow) At(double omega)
    {
        if (IsClosed)
        {
            return (1, 0);
        }

        var ka = omega * radius / speedOfSound;
        return (reflection is null ? 0 : characteristicImpedance * reflection(ka).RelativeImpedance(ka), 1);
    }

    /// <summary>The reactance the end would have if it reflected everything, Pa·s/m³; open ends only.</summary>
    public double LosslessReactance(double omega)
    {
        var ka = omega * radius / speedOfSound;
        return reflection is null ? 0 : characteristicImpedance * Math.Tan(ka * reflection(ka).EndCorrection);
    }
}
