using MathNet.Numerics.Interpolation;
using UnitsNet;

namespace AirColumn;

/// <summary>A measured bore: diameters at several places, joined by straight or smooth walls.</summary>
public sealed record ProfileSection : Section
{
    private readonly EquatableArray<double> positions; // m, from the inlet
    private readonly EquatableArray<Section> pieces; // between them

    /// <summary>Makes a profile of straight pieces.</summary>
    /// <param name="points">
    /// At least two points, the first at position 0, positions strictly increasing by at least 1 µm, diameters
    /// 0.01 mm to 10 m.
    /// </param>
    /// <exception cref="ArgumentException">There are fewer than two points, the first is not at position 0, or positions do not increase.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is outside its range or not a number.</exception>
    public ProfileSection(params IReadOnlyList<ProfilePoint> points)
        : this(points, ProfileJoin.Straight) { }

    /// <summary>Makes a profile.</summary>
    /// <param name="points">
    /// At least two points, the first at position 0, positions strictly increasing by at least 1 µm, diameters
    /// 0.01 mm to 10 m.
    /// </param>
    /// <param name="join">The course of the wall between the points.</param>
    /// <exception cref="ArgumentException">There are fewer than two points, the first is not at position 0, or positions do not increase.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is outside its range or not a number, or the join is not a defined value.</exception>
    public ProfileSection(IReadOnlyList<ProfilePoint> points, ProfileJoin join)
        : this(Require.Named(join), Places(points), Cones(points)) { }

    private ProfileSection(ProfileJoin join, double[] positions, ConeSection[] cones)
        : base(positions[^1])
    {
        Join = join;
        this.positions = new EquatableArray<double>(positions);
        // Two points have one straight line through them, however it is called.
        pieces = new EquatableArray<Section>(
            join == ProfileJoin.Straight || cones.Length == 1 ? cones : Cubics(positions, cones)
        );
    }

    /// <summary>The course of the wall between the points.</summary>
    public ProfileJoin Join { get; }

    /// <summary>The points, from the inlet to the outlet.</summary>
    public IReadOnlyList<ProfilePoint> Points =>
        [
            .. Enumerable
                .Range(0, positions.Count)
                .Select(i => new ProfilePoint(Dimension.InMillimeters(positions[i]), DiameterAt(i))),
        ];

    /// <summary>Where the points lie, m from the inlet.</summary>
    internal IReadOnlyList<double> Positions => positions;

    internal override double LargestRadius => pieces.Max(piece => piece.LargestRadius);

    internal override IReadOnlyList<Section> SmoothParts => pieces;

    /// <inheritdoc/>
    public override ProfileSection WithLength(Length length)
    {
        var stretch = Dimension.AxialLength(length) / LengthMetres;
        return new ProfileSection(
            [
                .. Points.Select(
                    (point, i) => point with { Position = Length.FromMeters(positions[i] * stretch) }
                ),
            ],
            Join
        );
    }

    /// <summary>This profile with one point replaced.</summary>
    /// <param name="index">The index of the point: 0 is the inlet.</param>
    /// <param name="point">The new point.</param>
    /// <returns>The new profile.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no point of that index, or a dimension is out of range.</exception>
    /// <exception cref="ArgumentException">The first point is not at position 0, or positions do not increase.</exception>
    public ProfileSection WithPoint(int index, ProfilePoint point)
    {
        Require.InRange(index, 0, positions.Count - 1, "");
        return new ProfileSection([.. Points.Select((old, i) => i == index ? point : old)], Join);
    }

    internal override ProfileSection WithEnds(double inlet, double outlet)
    {
        var last = positions.Count - 1;
        return new ProfileSection(
            [
                .. Points.Select(
                    (point, i) =>
                        i == 0 ? point with { Diameter = Length.FromMeters(2 * inlet) }
                        : i == last ? point with { Diameter = Length.FromMeters(2 * outlet) }
                        : point
                ),
            ],
            Join
        );
    }

    internal override Wall WallAt(double x)
    {
        // The first piece that does not end before it.
        var (low, high) = (0, pieces.Count - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = x > positions[middle + 1] ? (middle + 1, high) : (low, middle);
        }

        return pieces[low].WallAt(Math.Min(x - positions[low], pieces[low].LengthMetres));
    }

    private Length DiameterAt(int point) =>
        point == 0 ? pieces[0].InletDiameter : pieces[point - 1].OutletDiameter;

    private static CubicSection[] Cubics(double[] positions, ConeSection[] cones)
    {
        double[] radii =
        [
            cones[0].WallAt(0).Radius,
            .. cones.Select(cone => cone.WallAt(cone.LengthMetres).Radius),
        ];
        var spline = CubicSpline.InterpolatePchipSorted(positions, radii);
        return
        [
            .. cones.Select(
                (cone, i) =>
                    new CubicSection(
                        radii[i],
                        radii[i + 1],
                        spline.Differentiate(positions[i]),
                        spline.Differentiate(positions[i + 1]),
                        cone.LengthMetres
                    )
            ),
        ];
    }

    private static double[] Places(IReadOnlyList<ProfilePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return [.. points.Select(point => point.Position.Meters).DefaultIfEmpty()];
    }

    private static ConeSection[] Cones(IReadOnlyList<ProfilePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count < 2)
        {
            throw new ArgumentException(
                $"A profile has {points.Count} points; it needs at least 2, from its inlet to its outlet.",
                nameof(points)
            );
        }

        if (points[0].Position.Meters != 0)
        {
            throw new ArgumentException(
                $"The first profile point is at {Require.Show(points[0].Position.Millimeters, "mm")}; "
                    + "positions are measured from the section's inlet, so it must be at 0 mm.",
                nameof(points)
            );
        }

        for (var i = 0; i < points.Count; i++)
        {
            Dimension.RadiusOf(points[i].Diameter, $"Diameter of profile point {i + 1}", nameof(points));
        }

        var cones = new ConeSection[points.Count - 1];
        for (var i = 0; i < cones.Length; i++)
        {
            var (start, end) = (points[i], points[i + 1]);
            if (!(end.Position.Meters > start.Position.Meters))
            {
                throw new ArgumentException(
                    $"Profile point {i + 2} is at {Require.Show(end.Position.Millimeters, "mm")}, point {i + 1} at "
                        + $"{Require.Show(start.Position.Millimeters, "mm")}; positions must increase. "
                        + "For a sudden change of diameter, use two sections.",
                    nameof(points)
                );
            }

            cones[i] = new ConeSection(
                start.Diameter,
                end.Diameter,
                Length.FromMeters(end.Position.Meters - start.Position.Meters)
            );
        }

        Dimension.AxialLength(points[^1].Position, nameof(points));
        return cones;
    }
}
