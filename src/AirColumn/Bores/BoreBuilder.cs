using UnitsNet;

namespace AirColumn;

/// <summary>
/// A bore in the making, section by section from the blown end. Each call returns a new builder, so a beginning can
/// be shared by several bores; naming the far end completes the bore.
/// </summary>
public sealed class BoreBuilder
{
    private readonly Section[] sections;
    private readonly ToneHole[] holes;
    private readonly SideBranch[] branches;

    private BoreBuilder(Section[] sections, ToneHole[] holes, SideBranch[] branches)
    {
        this.sections = sections;
        this.holes = holes;
        this.branches = branches;
    }

    internal static BoreBuilder Empty => new([], [], []);

    /// <summary>Adds a section of any kind.</summary>
    /// <param name="section">The section.</param>
    /// <returns>The builder with the section added.</returns>
    public BoreBuilder Add(Section section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return new BoreBuilder([.. sections, section], holes, branches);
    }

    /// <summary>Adds a cylinder. Name the arguments: two lengths are easily swapped.</summary>
    /// <inheritdoc cref="CylinderSection(Length, Length)"/>
    public BoreBuilder Cylinder(Length diameter, Length length) => Add(new CylinderSection(diameter, length));

    /// <summary>Adds a cone.</summary>
    /// <inheritdoc cref="ConeSection(Length, Length, Length)"/>
    public BoreBuilder Cone(Length from, Length to, Length length) => Add(new ConeSection(from, to, length));

    /// <summary>Adds a cone that begins with the diameter at which the section before it ended.</summary>
    /// <param name="to">Inside diameter nearer the far end: 0.01 mm to 10 m.</param>
    /// <param name="length">Axial length: 1 µm to 1 km.</param>
    /// <returns>The builder with the cone added.</returns>
    /// <exception cref="InvalidOperationException">There is no section before it.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is outside its range or not a number.</exception>
    public BoreBuilder Cone(Length to, Length length)
    {
        if (sections.Length == 0)
        {
            throw new InvalidOperationException(
                "The first section has no section before it; give the cone both diameters."
            );
        }

        return Cone(sections[^1].OutletDiameter, to, length);
    }

    /// <summary>Adds a smooth horn.</summary>
    /// <inheritdoc cref="HornSection(HornLaw, Length, Length, Length)"/>
    public BoreBuilder Horn(HornLaw law, Length from, Length to, Length length) =>
        Add(new HornSection(law, from, to, length));

    /// <summary>Adds a Bessel horn.</summary>
    /// <inheritdoc cref="HornSection(Length, Length, Length, double)"/>
    public BoreBuilder Horn(Length from, Length to, Length length, double exponent) =>
        Add(new HornSection(from, to, length, exponent));

    /// <summary>Adds a measured profile joined by straight walls.</summary>
    /// <inheritdoc cref="ProfileSection(IReadOnlyList{ProfilePoint})"/>
    public BoreBuilder Profile(params IReadOnlyList<ProfilePoint> points) => Add(new ProfileSection(points));

    /// <summary>Adds a measured profile with the join of your choice.</summary>
    /// <inheritdoc cref="ProfileSection(IReadOnlyList{ProfilePoint}, ProfileJoin)"/>
    public BoreBuilder Profile(IReadOnlyList<ProfilePoint> points, ProfileJoin join) =>
        Add(new ProfileSection(points, join));

    /// <summary>Adds a bend.</summary>
    /// <inheritdoc cref="BendSection(Length, Length, Angle)"/>
    public BoreBuilder Bend(Length diameter, Length curvatureRadius, Angle angle) =>
        Add(new BendSection(diameter, curvatureRadius, angle));

    /// <summary>Adds a tone hole, drilled through the wall.</summary>
    /// <inheritdoc cref="ToneHole(Length, Length, Length)"/>
    public BoreBuilder Hole(Length position, Length diameter, Length height) =>
        Hole(new ToneHole(position, diameter, height));

    /// <summary>Adds a tone hole.</summary>
    /// <param name="hole">The hole; its place is measured from the blown end, whatever sections follow.</param>
    /// <returns>The builder with the hole added.</returns>
    public BoreBuilder Hole(ToneHole hole)
    {
        ArgumentNullException.ThrowIfNull(hole);
        return new BoreBuilder(sections, [.. holes, hole], branches);
    }

    /// <summary>Adds a side branch.</summary>
    /// <inheritdoc cref="SideBranch(Length, Bore, string)"/>
    public BoreBuilder Branch(Length position, Bore bore, string? name = null)
    {
        return new BoreBuilder(sections, holes, [.. branches, new SideBranch(position, bore, name)]);
    }

    /// <summary>Completes the bore with an open end standing free in the room.</summary>
    /// <param name="wall">Thickness of the wall at the rim; 0 for a thin edge.</param>
    /// <returns>The finished bore.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The thickness is negative or not a number.</exception>
    public Bore OpenEnd(Length wall = default) => End(new OpenEnd(wall));

    /// <summary>Completes the bore with an open end flush with a large rigid plane.</summary>
    /// <returns>The finished bore.</returns>
    public Bore BaffledEnd() => End(new BaffledEnd());

    /// <summary>Completes the bore with a rigid stop.</summary>
    /// <returns>The finished bore.</returns>
    public Bore ClosedEnd() => End(new ClosedEnd());

    /// <summary>Completes the bore with the textbook open end: no pressure, no radiation, no end correction.</summary>
    /// <returns>The finished bore.</returns>
    public Bore IdealOpenEnd() => End(new IdealOpenEnd());

    /// <summary>Completes the bore.</summary>
    /// <param name="farEnd">The finish of the far end.</param>
    /// <returns>The finished bore.</returns>
    /// <exception cref="ArgumentException">No section was added, or a hole or branch does not fit the bore.</exception>
    public Bore End(BoreEnd farEnd) => new(sections, farEnd, holes, branches);

    /// <summary>The parts so far, in the invariant culture.</summary>
    /// <returns>The parts so far, as text.</returns>
    public override string ToString() =>
        string.Join("; ", [.. sections, .. holes, .. branches, "not finished"]);
}
