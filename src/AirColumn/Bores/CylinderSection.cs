using UnitsNet;

namespace AirColumn;

/// <summary>A section of constant diameter.</summary>
public sealed record CylinderSection : Section
{
    private readonly double radius;

    /// <summary>Makes a cylinder.</summary>
    /// <param name="diameter">Inside diameter: 0.01 mm to 10 m.</param>
    /// <param name="length">Axial length: 1 µm to 1 km.</param>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is outside its range or not a number.</exception>
    public CylinderSection(Length diameter, Length length)
        : base(Dimension.AxialLength(length))
    {
        radius = Dimension.RadiusOf(diameter);
    }

    /// <summary>A cylinder of a radius and a length in metres, not checked.</summary>
    internal CylinderSection(double radius, double lengthMetres)
        : base(lengthMetres)
    {
        this.radius = radius;
    }

    /// <summary>Inside diameter.</summary>
    public Length Diameter => Dimension.InMillimeters(2 * radius);

    internal override double LargestRadius => radius;

    /// <inheritdoc/>
    public override CylinderSection WithLength(Length length) => new(Length.FromMeters(2 * radius), length);

    internal override Section WithEnds(double inlet, double outlet) =>
        inlet.Equals(outlet)
            ? new CylinderSection(Length.FromMeters(2 * inlet), Length.FromMeters(LengthMetres))
            : new ConeSection(
                Length.FromMeters(2 * inlet),
                Length.FromMeters(2 * outlet),
                Length.FromMeters(LengthMetres)
            );

    internal override CylinderSection Slice(double from, double to) => new(radius, to - from);

    internal override Wall WallAt(double x) => new(radius, 0, 0);
}
