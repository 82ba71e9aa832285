using UnitsNet;

namespace AirColumn;

/// <summary>A section of constant diameter whose centreline runs along an arc of a circle: part of a torus.</summary>
public sealed record BendSection : Section
{
    private const double MostDegrees = 36_000;
    private const double LargestCurvatureRadius = 1e6;

    private readonly double radius;
    private readonly double centreline;

    /// <summary>Makes a bend.</summary>
    /// <param name="diameter">Inside diameter: 0.01 mm to 10 m.</param>
    /// <param name="curvatureRadius">
    /// Radius of the arc of the centreline: at least half the diameter, where the inside of the bend is a sharp corner, to 1000 km.
    /// </param>
    /// <param name="angle">The angle of the turn: above 0, up to 36 000° for a coil.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A dimension is outside its range or not a number, or the length along the centreline is outside 1 µm to 1 km.
    /// </exception>
    public BendSection(Length diameter, Length curvatureRadius, Angle angle)
        : base(ArcLength(curvatureRadius, angle))
    {
        radius = Dimension.RadiusOf(diameter);
        centreline = curvatureRadius.Meters;
        Require.InRange(
            curvatureRadius.Millimeters,
            radius * 1000,
            LargestCurvatureRadius * 1000,
            "mm",
            nameof(curvatureRadius)
        );
    }

    private BendSection(double radius, double centreline, double length)
        : base(length)
    {
        this.radius = radius;
        this.centreline = centreline;
    }

    internal double CurvatureRadiusMetres => centreline;

    /// <summary>Inside diameter.</summary>
    public Length Diameter => Dimension.InMillimeters(2 * radius);

    /// <summary>Radius of the arc of the centreline.</summary>
    public Length CurvatureRadius => Dimension.InMillimeters(centreline);

    /// <summary>The angle of the turn.</summary>
    public Angle Angle => Angle.FromDegrees(LengthMetres / centreline * 180 / Math.PI);

    /// <summary>A bend of a length along its centreline; throws as the constructor does.</summary>
    internal static BendSection OfLength(Length diameter, Length curvatureRadius, Length length)
    {
        Dimension.AxialLength(length);
        Require.Positive(curvatureRadius.Millimeters, "mm", nameof(curvatureRadius));
        Require.InRange(length.Meters / curvatureRadius.Meters * 180 / Math.PI, 0, MostDegrees, "°", "angle");
        var bend = new BendSection(
            diameter,
            curvatureRadius,
            Angle.FromRadians(length.Meters / curvatureRadius.Meters)
        );
        return new BendSection(bend.radius, bend.centreline, length.Meters);
    }

    internal override double LargestRadius => radius;

    /// <summary>B = a/R, bore radius over that of the centreline: 0 to 1.</summary>
    internal double Tightness => Math.Min(1, radius / centreline);

    /// <summary>
    /// (1 + √(1 − B²))/2: the potential flow in a torus is as 1/distance from its axis, so that the inside carries more of
    /// it (source: nederveen1998torus).
    /// </summary>
    internal override double InertiaFactor => (1 + Math.Sqrt(1 - Tightness * Tightness)) / 2;

    /// <summary>This bend with another angle of turn; its diameter and the radius of its arc stay the same.</summary>
    /// <param name="length">The new length along the centreline: 1 µm to 1 km.</param>
    /// <returns>The new bend.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside that range, or too long for a bend.</exception>
    public override BendSection WithLength(Length length) =>
        new(
            Length.FromMeters(2 * radius),
            Length.FromMeters(centreline),
            Angle.FromRadians(Dimension.AxialLength(length) / centreline)
        );

    internal override BendSection WithEnds(double inlet, double outlet) =>
        inlet.Equals(outlet)
            ? new(
                Length.FromMeters(2 * inlet),
                Length.FromMeters(centreline),
                Angle.FromRadians(LengthMetres / centreline)
            )
            : throw new NotSupportedException("A bend has one diameter; change both its ends together.");

    internal override BendSection Slice(double from, double to) => new(radius, centreline, to - from);

    internal override Wall WallAt(double x) => new(radius, 0, 0);

    private static double ArcLength(Length curvatureRadius, Angle angle)
    {
        Require.Positive(curvatureRadius.Millimeters, "mm", nameof(curvatureRadius));
        Require.Positive(angle.Degrees, "°", nameof(angle));
        Require.InRange(angle.Degrees, 0, MostDegrees, "°", nameof(angle));
        return Dimension.AxialLength(
            Length.FromMeters(curvatureRadius.Meters * angle.Radians),
            nameof(angle)
        );
    }
}
