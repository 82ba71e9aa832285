using UnitsNet;

namespace AirColumn;

/// <summary>
/// One length of bore of circular cross-section, described from the blown end towards the far end: geometry only.
/// </summary>
/// <remarks>
/// Immutable. Two sections are equal when their dimensions in metres are equal, whatever units they were given in.
/// Lengths are measured along the axis, never along the wall.
/// </remarks>
public abstract record Section
{
    private protected Section(double lengthMetres)
    {
        LengthMetres = lengthMetres;
    }

    /// <summary>Axial length.</summary>
    public Length Length => Dimension.InMillimeters(LengthMetres);

    /// <summary>Inside diameter at the end nearer the blown end.</summary>
    public Length InletDiameter => Dimension.InMillimeters(2 * WallAt(0).Radius);

    /// <summary>Inside diameter at the end nearer the far end.</summary>
    public Length OutletDiameter => Dimension.InMillimeters(2 * WallAt(LengthMetres).Radius);

    internal double LengthMetres { get; }

    /// <summary>The smallest radius in the section, m: no wall here has a waist between its ends.</summary>
    internal virtual double SmallestRadius => Math.Min(WallAt(0).Radius, WallAt(LengthMetres).Radius);

    /// <summary>The largest radius in the section, m.</summary>
    internal abstract double LargestRadius { get; }

    /// <summary>What multiplies the mass of the air as it moves along the section: 1 but in a bend.</summary>
    internal virtual double InertiaFactor => 1;

    /// <summary>The largest |da/dx| in the section: at an end or half way along each smooth part, as walls go here.</summary>
    internal double SteepestSlope =>
        SmoothParts.Max(part =>
            Math.Max(
                Math.Abs(part.WallAt(part.LengthMetres / 2).Slope),
                Math.Max(Math.Abs(part.WallAt(0).Slope), Math.Abs(part.WallAt(part.LengthMetres).Slope))
            )
        );

    /// <summary>
    /// The section as parts in which the wall is smooth, in order; a section without corners is its own only part.
    /// </summary>
    internal virtual IReadOnlyList<Section> SmoothParts => [this];

    /// <summary>What lies between two places, m from the inlet; only of a smooth part.</summary>
    internal virtual Section Slice(double from, double to) => new SectionSlice(this, from, to);

    /// <summary>Inside diameter at a place in the section.</summary>
    /// <param name="distance">Distance from the section's end nearer the blown end, along the axis: 0 to <see cref="Length"/>.</param>
    /// <returns>The inside diameter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distance is outside that range or not a number.</exception>
    public Length DiameterAt(Length distance)
    {
        // A length given in millimetres may come out a last digit beyond the end.
        var allowed = Length.Millimeters * (1 + 1e-9);
        Require.InRange(distance.Millimeters, 0, allowed, "mm", nameof(distance));
        return Dimension.InMillimeters(2 * WallAt(Math.Min(distance.Meters, LengthMetres)).Radius);
    }

    /// <summary>This section stretched or shortened along the axis; its diameters stay the same.</summary>
    /// <param name="length">The new axial length: 1 µm to 1 km.</param>
    /// <returns>The new section.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside that range or not a number.</exception>
    public abstract Section WithLength(Length length);

    /// <summary>This section with other radii at its ends, m; not of a part of a section.</summary>
    internal abstract Section WithEnds(double inlet, double outlet);

    /// <summary>The wall at <paramref name="x"/> metres from the inlet, 0 to <see cref="LengthMetres"/>.</summary>
    internal abstract Wall WallAt(double x);

    /// <summary>Diameters and length, such as "38 mm to 70 mm, 90 mm long", in the invariant culture.</summary>
    /// <returns>Diameters and length, as text.</returns>
    public sealed override string ToString() =>
        $"{Dimension.Text(InletDiameter)} to {Dimension.Text(OutletDiameter)}, {Dimension.Text(Length)} long";
}
