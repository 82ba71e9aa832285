using UnitsNet;

namespace AirColumn;

/// <summary>
/// The shape of an air column: its sections in order from the blown end, its tone holes and side branches, and its far end.
/// </summary>
/// <remarks>Immutable, equal by value, safe to share between threads.</remarks>
public sealed record Bore
{
    // Diameters that differ by less than this fraction are one diameter written in two ways.
    private const double SameDiameter = 1e-9;

    private readonly EquatableArray<Section> sections;
    private readonly EquatableArray<double> ends; // of the sections, m from the blown end
    private readonly EquatableArray<ToneHole> holes;
    private readonly EquatableArray<SideBranch> branches;

    /// <summary>Makes a bore.</summary>
    /// <param name="sections">At least one section, from the blown end to the far end.</param>
    /// <param name="farEnd">The finish of the far end.</param>
    /// <param name="holes">Its tone holes, in any order. Default: none.</param>
    /// <param name="branches">Its side branches, in any order. Default: none.</param>
    /// <exception cref="ArgumentException">
    /// There is no section, or a hole or branch does not fit: it reaches beyond an end of the bore, is wider than the bore at
    /// its place, or overlaps another.
    /// </exception>
    /// <exception cref="ArgumentNullException">An argument, a section, a hole or a branch is null.</exception>
    public Bore(
        IEnumerable<Section> sections,
        BoreEnd farEnd,
        IEnumerable<ToneHole>? holes = null,
        IEnumerable<SideBranch>? branches = null
    )
    {
        ArgumentNullException.ThrowIfNull(sections);
        ArgumentNullException.ThrowIfNull(farEnd);
        this.sections = new EquatableArray<Section>(sections);
        if (this.sections.Count == 0)
        {
            throw new ArgumentException("A bore has no sections; it needs at least 1.", nameof(sections));
        }

        foreach (var section in this.sections)
        {
            ArgumentNullException.ThrowIfNull(section, nameof(sections));
        }

        ends = Ends(this.sections);
        FarEnd = farEnd;
        this.holes = InOrder(holes, hole => hole.PositionMetres, nameof(holes));
        this.branches = InOrder(branches, branch => branch.PositionMetres, nameof(branches));
        RequireFitting();
    }

    // Of parts that are known to be there.
    private Bore(
        EquatableArray<Section> sections,
        BoreEnd farEnd,
        EquatableArray<ToneHole> holes,
        EquatableArray<SideBranch> branches
    )
    {
        (this.sections, FarEnd, this.holes, this.branches) = (sections, farEnd, holes, branches);
        ends = Ends(sections);
        RequireFitting();
    }

    /// <summary>The sections, from the blown end to the far end.</summary>
    public IReadOnlyList<Section> Sections => sections;

    /// <summary>The finish of the far end.</summary>
    public BoreEnd FarEnd { get; }

    /// <summary>The tone holes, from the blown end.</summary>
    public IReadOnlyList<ToneHole> Holes => holes;

    /// <summary>The side branches, from the blown end.</summary>
    public IReadOnlyList<SideBranch> Branches => branches;

    /// <summary>Length along the axis of all sections together.</summary>
    public Length Length => Dimension.InMillimeters(LengthMetres);

    /// <summary>The places where neighbouring sections differ in diameter, from the blown end.</summary>
    public IReadOnlyList<BoreStep> Steps
    {
        get
        {
            var steps = new List<BoreStep>();
            var position = 0.0;
            for (var i = 0; i + 1 < sections.Count; i++)
            {
                position += sections[i].LengthMetres;
                if (IsStep(sections[i], sections[i + 1]))
                {
                    steps.Add(
                        new BoreStep(
                            Dimension.InMillimeters(position),
                            sections[i].OutletDiameter,
                            sections[i + 1].InletDiameter
                        )
                    );
                }
            }

            return steps;
        }
    }

    internal double LengthMetres => ends[ends.Count - 1];

    /// <summary>The length of all passages together, branches and holes included, m.</summary>
    internal double PassageMetres =>
        LengthMetres
        + holes.Sum(hole => hole.HeightMetres)
        + branches.Sum(branch => branch.Bore.PassageMetres);

    /// <summary>Where the last hole or branch ends, m from the blown end; 0 where there is none.</summary>
    internal double LastOpeningMetres => LengthMetres - SpareMetres(0);

    /// <summary>The largest radius, branches included, m.</summary>
    internal double LargestRadius =>
        sections
            .Select(section => section.LargestRadius)
            .Concat(branches.Select(branch => branch.Bore.LargestRadius))
            .Max();

    /// <summary>
    /// Begins a bore at its blown end. Add its sections in order; <see cref="BoreBuilder.OpenEnd"/>, <see cref="BoreBuilder.ClosedEnd"/> or another far
    /// end completes it.
    /// </summary>
    /// <returns>A builder without sections.</returns>
    public static BoreBuilder Build() => BoreBuilder.Empty;

    /// <summary>This bore with one section replaced; holes and branches keep their distance from the blown end.</summary>
    /// <param name="index">The index of the section: 0 is at the blown end.</param>
    /// <param name="section">The replacement.</param>
    /// <returns>The new bore.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no section of that index.</exception>
    /// <exception cref="ArgumentException">A hole or branch does not fit the new shape.</exception>
    public Bore WithSection(int index, Section section)
    {
        ArgumentNullException.ThrowIfNull(section);
        RequireIndex(index);
        return new Bore(sections.With(index, section), FarEnd, holes, branches);
    }

    /// <summary>
    /// This bore with one section stretched or shortened along the axis; holes and branches keep their distance from the
    /// blown end.
    /// </summary>
    /// <param name="index">The index of the section: 0 is at the blown end.</param>
    /// <param name="length">Its new length: 1 µm to 1 km.</param>
    /// <returns>The new bore.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no section of that index, or the length is out of range.</exception>
    /// <exception cref="ArgumentException">A hole or branch does not fit the new shape.</exception>
    public Bore WithSectionLength(int index, Length length)
    {
        RequireIndex(index);
        return WithSection(index, sections[index].WithLength(length));
    }

    /// <summary>The same, the last so many holes keeping their distance from the far end instead.</summary>
    internal Bore WithSectionLength(int index, Length length, int holesFromFarEnd)
    {
        if (holesFromFarEnd == 0)
        {
            return WithSectionLength(index, length);
        }

        RequireIndex(index);
        var section = sections[index].WithLength(length);
        var by = section.LengthMetres - sections[index].LengthMetres;
        return new Bore(
            sections.With(index, section),
            FarEnd,
            holes.Select((hole, i) => i < holes.Count - holesFromFarEnd ? hole : hole.MovedBy(by)),
            branches
        );
    }

    /// <summary>How much the bore can be shortened, m, before what keeps its distance from the far end meets what does not.</summary>
    /// <param name="holesFromFarEnd">How many holes, the last ones, keep their distance from the far end.</param>
    internal double SpareMetres(int holesFromFarEnd)
    {
        var staying = holes.Count - holesFromFarEnd;
        var last = holes
            .Take(staying)
            .Select(hole => hole.PositionMetres + hole.Radius)
            .Concat(branches.Select(branch => branch.PositionMetres + branch.FootRadius))
            .Where(place => holesFromFarEnd == 0 || place < holes[staying].PositionMetres)
            .DefaultIfEmpty()
            .Max();
        var end = holesFromFarEnd > 0 ? holes[staying].PositionMetres - holes[staying].Radius : LengthMetres;
        return end - last;
    }

    /// <summary>Whether a hole or branch lies between two places, m.</summary>
    internal bool HasOpening(double from, double to)
    {
        foreach (var hole in holes)
        {
            if (hole.PositionMetres >= from && hole.PositionMetres <= to)
            {
                return true;
            }
        }

        foreach (var branch in branches)
        {
            if (branch.PositionMetres >= from && branch.PositionMetres <= to)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>This bore with one tone hole replaced.</summary>
    /// <param name="index">The index of the hole: 0 is nearest to the blown end.</param>
    /// <param name="hole">The replacement.</param>
    /// <returns>The new bore.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no hole of that index.</exception>
    /// <exception cref="ArgumentException">The hole does not fit.</exception>
    public Bore WithHole(int index, ToneHole hole)
    {
        ArgumentNullException.ThrowIfNull(hole);
        Require.InRange(index, 0, holes.Count - 1, "");
        return new Bore(sections, FarEnd, holes.Select((old, i) => i == index ? hole : old), branches);
    }

    /// <summary>This bore with another far end.</summary>
    /// <param name="farEnd">The finish of the far end.</param>
    /// <returns>The new bore.</returns>
    public Bore WithFarEnd(BoreEnd farEnd)
    {
        ArgumentNullException.ThrowIfNull(farEnd);
        return new Bore(sections, farEnd, holes, branches);
    }

    /// <summary>The radius at a place, m from the blown end; the smaller one where two sections meet.</summary>
    internal double RadiusAt(double position)
    {
        // The first section that does not end before it.
        var (low, high) = (0, sections.Count - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = ends[middle] < position ? (middle + 1, high) : (low, middle);
        }

        var section = sections[low];
        var start = low == 0 ? 0 : ends[low - 1];
        return position == ends[low] && low + 1 < sections.Count
            ? Math.Min(section.WallAt(section.LengthMetres).Radius, sections[low + 1].WallAt(0).Radius)
            : section.WallAt(Math.Clamp(position - start, 0, section.LengthMetres)).Radius;
    }

    internal static bool IsStep(Section before, Section after) =>
        IsStep(before.WallAt(before.LengthMetres).Radius, after.WallAt(0).Radius);

    /// <summary>Whether the bore has a step where these radii meet.</summary>
    internal static bool IsStep(double before, double after) =>
        Math.Abs(before - after) > SameDiameter * Math.Max(before, after);

    private static EquatableArray<double> Ends(EquatableArray<Section> sections)
    {
        var ends = new double[sections.Count];
        var total = 0.0;
        for (var i = 0; i < ends.Length; i++)
        {
            ends[i] = total += sections[i].LengthMetres;
        }

        return new EquatableArray<double>(ends);
    }

    private static EquatableArray<T> InOrder<T>(
        IEnumerable<T>? items,
        Func<T, double> position,
        string parameter
    )
        where T : class, IEquatable<T>
    {
        var list = items?.ToList() ?? [];
        list.ForEach(item => ArgumentNullException.ThrowIfNull(item, parameter));
        return new EquatableArray<T>(list.OrderBy(position));
    }

    private void RequireFitting()
    {
        if (holes.Count + branches.Count == 0)
        {
            return;
        }

        var openings = holes
            .Select(hole => new Opening(hole.PositionMetres, hole.Radius, hole, nameof(holes)))
            .Concat(
                branches.Select(branch => new Opening(
                    branch.PositionMetres,
                    branch.FootRadius,
                    branch,
                    nameof(branches)
                ))
            )
            .OrderBy(opening => opening.Position)
            .ToList();
        var length = LengthMetres;
        for (var i = 0; i < openings.Count; i++)
        {
            var (position, radius, opening, from) = openings[i];
            if (position - radius < -SameDiameter * length || position + radius > (1 + SameDiameter) * length)
            {
                throw new ArgumentException(
                    $"The {opening} reaches beyond the bore, which is {Dimension.Text(Length)} long; place it so that all of it "
                        + "lies between the ends.",
                    from
                );
            }

            var bore = RadiusAt(position);
            if (radius > bore * (1 + SameDiameter))
            {
                throw new ArgumentException(
                    $"The {opening} is wider than the bore there, {Dimension.Text(Dimension.InMillimeters(2 * bore))}; "
                        + "it may be at most as wide as the bore.",
                    from
                );
            }

            if (
                i > 0
                && position - radius
                    < (openings[i - 1].Position + openings[i - 1].Radius) * (1 - SameDiameter)
            )
            {
                throw new ArgumentException(
                    $"The {opening} overlaps the {openings[i - 1].What}; move them apart along the bore.",
                    from
                );
            }
        }
    }

    // A hole or a branch; told in words only where it does not fit.
    private readonly record struct Opening(double Position, double Radius, object What, string From);

    private void RequireIndex(int index) => Require.Index(index, sections.Count, "section");

    /// <summary>
    /// The sections from the blown end, the far end, and holes and branches where there are any, in the invariant culture.
    /// </summary>
    /// <returns>The parts, as text.</returns>
    public override string ToString() => string.Join("; ", [.. sections, FarEnd, .. holes, .. branches]);
}
