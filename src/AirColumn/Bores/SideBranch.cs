using UnitsNet;

namespace AirColumn;

/// <summary>
/// A bore of its own that opens into the side of another: a closed stub, a valve loop's dead end, a mouth hole with the cavity behind it.
/// Immutable, equal by value.
/// </summary>
public sealed record SideBranch
{
    private const int Deepest = 16;

    /// <summary>Makes a side branch.</summary>
    /// <param name="position">Distance of its axis from the blown end of the main bore, along the main bore: 1 µm to 1 km.</param>
    /// <param name="bore">Its shape, beginning at the wall of the main bore; it may have branches but no tone holes.</param>
    /// <param name="name">Its name for people; null if it has none.</param>
    /// <exception cref="ArgumentNullException">The bore is null.</exception>
    /// <exception cref="ArgumentException">The branch has tone holes, or branches of branches more than 16 deep.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The position is outside its range or not a number.</exception>
    public SideBranch(Length position, Bore bore, string? name = null)
    {
        ArgumentNullException.ThrowIfNull(bore);
        PositionMetres = Dimension.AxialLength(position);
        if (bore.Holes.Count > 0 || bore.Branches.Any(branch => branch.Bore.Holes.Count > 0))
        {
            throw new ArgumentException(
                "A side branch has tone holes, which a fingering of the main bore cannot reach; give it branches with open ends instead.",
                nameof(bore)
            );
        }

        Depth = 1 + bore.Branches.Select(branch => branch.Depth).DefaultIfEmpty().Max();
        if (Depth > Deepest)
        {
            throw new ArgumentException(
                $"The side branch has branches of branches {Depth} deep; at most {Deepest} are allowed.",
                nameof(bore)
            );
        }

        Bore = bore;
        Name = name;
    }

    /// <summary>Distance of its axis from the blown end of the main bore, along the main bore.</summary>
    public Length Position => Dimension.InMillimeters(PositionMetres);

    /// <summary>Its shape, beginning at the wall of the main bore.</summary>
    public Bore Bore { get; }

    /// <summary>Its name for people; null if it has none.</summary>
    public string? Name { get; }

    internal double PositionMetres { get; }

    /// <summary>How deep branches of branches go, this one included.</summary>
    internal int Depth { get; }

    internal double FootRadius => Bore.Sections[0].WallAt(0).Radius;

    /// <summary>Name, place and shape, in the invariant culture.</summary>
    /// <returns>Name, place and shape, as text.</returns>
    public override string ToString() =>
        $"branch {(Name is null ? "" : $"{Name} ")}at {Dimension.Text(Position)} ({Bore})";
}
