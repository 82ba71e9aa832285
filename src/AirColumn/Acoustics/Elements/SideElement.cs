using System.Numerics;
using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Elements;

/// <summary>
/// What opens into the side of a bore, as a T: half of a series mass, the column of the hole or branch in shunt, the other
/// half.
/// </summary>
/// <remarks>
/// The series mass is negative, yet no energy comes from it: it is part of the mass of the bore beside the opening. Three
/// reciprocal passive two-ports make a reciprocal passive one.
/// </remarks>
internal sealed class SideElement : Element
{
    private readonly Element[] elements;
    private readonly double impedance;

    /// <summary>Puts one together.</summary>
    /// <param name="elements">From the wall of the bore to the end of the hole or branch; the first is the mass at its foot.</param>
    /// <param name="load">What ends it.</param>
    /// <param name="seriesMass">kg/m⁴, not positive.</param>
    /// <param name="impedance">ρc/S at the foot, Pa·s/m³.</param>
    public SideElement(Element[] elements, FarEndLoad load, double seriesMass, double impedance)
    {
        this.elements = elements;
        Load = load;
        SeriesMass = seriesMass;
        this.impedance = impedance;
    }

    public IReadOnlyList<Element> Elements => elements;

    public FarEndLoad Load { get; }

    public double SeriesMass { get; }

    /// <summary>Whether it is a tone hole, which a fingering opens and closes.</summary>
    public bool IsHole { get; init; }

    /// <summary>Pressure and flow at its foot, from the fixed state of its end, as (p, U)·exp(LogScale).</summary>
    public (Complex Pressure, Complex Flow, double LogScale) StateAtFoot(double omega)
    {
        var (p, u, log) = Chain.StateAtInlet(elements, Load, impedance, omega);
        // A branch that shorts the bore exactly, as only one without losses can, is taken a rounding error beside.
        return (p == 0 ? 1e-16 * impedance * u : p, u, log);
    }

    public override ScaledMatrix At(double omega)
    {
        var arm = new Complex(0, omega * SeriesMass / 2);
        var (p, u, _) = StateAtFoot(omega);
        var admittance = u / p;
        var shunt = 1 + arm * admittance;
        return new(new TransferMatrix(shunt, arm * (1 + shunt), admittance, shunt), 0);
    }

    // Times the pressure at the foot of the branch, so that its poles do not become poles of the whole.
    public override (Complex Pressure, Complex Flow, double LogScale) Carry(
        double omega,
        Complex p,
        Complex u
    )
    {
        var arm = new Complex(0, omega * SeriesMass / 2);
        var (branchP, branchU, log) = Chain.StateAtInlet(elements, Load, impedance, omega);
        var middle = p + arm * u;
        var flow = branchP * u + branchU * middle;
        return (branchP * middle + arm * flow, flow, log);
    }
}
