using System.Numerics;
using AirColumn.Acoustics.Junctions;

namespace AirColumn.Acoustics.Line;

/// <summary>One part of what a column is made of, and nothing of how a wave passes it.</summary>
internal abstract class LinePart;

/// <summary>A smooth piece of bore in one medium.</summary>
/// <param name="section">Its shape.</param>
/// <param name="medium">The air in it.</param>
/// <param name="fronts">What is assumed of the wave fronts.</param>
internal sealed class BoreSegment(Section section, Medium medium, Wavefronts fronts) : LinePart
{
    /// <summary>Its shape.</summary>
    public Section Section { get; } = section;

    /// <summary>The air in it.</summary>
    public Medium Medium { get; } = medium;

    /// <summary>The constants of what fills it.</summary>
    public GasConstants Gas => Medium.Gas;

    /// <summary>Along the axis, m.</summary>
    public double Length => Section.LengthMetres;

    /// <summary>Whether the wall is straight along the axis, a bend's too.</summary>
    public bool IsStraight => Section is CylinderSection or BendSection;

    /// <summary>The stretch of it between two places, m from the inlet.</summary>
    public BoreSegment Between(double from, double to) => new(Section.Slice(from, to), Medium, fronts);

    /// <summary>What a bend, and fronts that are not plane, multiply the series impedance by.</summary>
    public double SeriesFactor(in Wall wall)
    {
        var slope = wall.Slope * wall.Slope;
        var turn = wall.Radius * wall.Curvature - 3 * slope;
        var kinetic = fronts switch
        {
            Wavefronts.Plane => 1,
            Wavefronts.Sloped => 1 + slope / 2,
            _ => 1 + slope / 2 - turn * turn / (24 * (2 + slope) + 1.25 * turn * turn),
        };
        return Section.InertiaFactor * kinetic;
    }
}

/// <summary>A lumped air mass in series: what a step of diameter adds, or the foot of a hole.</summary>
internal sealed class SeriesMass : LinePart
{
    private readonly double constant;
    private readonly GrowingMass? growing;

    /// <summary>The same at all frequencies, kg/m⁴.</summary>
    public SeriesMass(double inertance) => constant = inertance;

    /// <summary>That of a step or the foot of a hole, with what other steps near a step do to it.</summary>
    public SeriesMass(GrowingMass growing, StepInteraction? neighbours = null) =>
        (this.growing, Neighbours) = (growing, neighbours);

    /// <summary>What other steps near this one do to it, if any are.</summary>
    public StepInteraction? Neighbours { get; }

    /// <summary>Each ω at which the mass, as a function of frequency, has a corner.</summary>
    public IEnumerable<double> Corners
    {
        get
        {
            if (growing is not null)
            {
                yield return growing.HeldFrom;
            }

            if (Neighbours is not null && Neighbours.HeldFrom != growing?.HeldFrom)
            {
                yield return Neighbours.HeldFrom;
            }
        }
    }

    /// <summary>The same step among these neighbours.</summary>
    public SeriesMass Among(StepInteraction? neighbours) => new(growing!, neighbours);

    /// <summary>Acoustic mass, kg/m⁴, at ω.</summary>
    public double InertanceAt(double omega) =>
        growing is null ? constant : growing.At(omega) + (Neighbours?.At(omega) ?? 0);

    /// <summary>The same at some ω.</summary>
    public RealVector InertanceAt(RealVector omega)
    {
        if (growing is null)
        {
            return Vector.Create(constant);
        }

        var own = growing.At(omega);
        return Neighbours is null ? own : own + Neighbours.At(omega);
    }
}

/// <summary>
/// What opens into the side of a bore, as a T: half of a series mass, the column of the hole or branch in shunt, the other half.
/// </summary>
/// <remarks>
/// The series mass is negative, yet no energy comes from it: it is part of the mass of the bore beside the opening.
/// </remarks>
internal sealed class SideColumn : LinePart
{
    /// <summary>From the wall of the bore to the end of the hole or branch; the first is the mass at its foot.</summary>
    public required LinePart[] Parts { get; init; }

    /// <summary>What ends it.</summary>
    public required Termination End { get; init; }

    /// <summary>kg/m⁴, not positive.</summary>
    public required double SeriesMass { get; init; }

    /// <summary>ρc/S at its foot, Pa·s/m³.</summary>
    public required double Impedance { get; init; }

    /// <summary>Whether it is a tone hole, which a fingering opens and closes.</summary>
    public bool IsHole { get; init; }

    /// <summary>Whether it is a tone hole that is open.</summary>
    public bool IsOpenHole => IsHole && !End.IsClosed;
}
