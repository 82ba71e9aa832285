using UnitsNet;

namespace AirColumn.Bores;

/// <summary>A measured bore: diameters at several places, joined by straight walls.</summary>
public sealed record ProfileSection : Section
{
    private readonly EquatableArray<ConeSection> cones;

    /// <summary>Makes a profile of straight pieces.</summary>
    /// <param name="points">
    /// At least two points, the first at position 0, positions strictly increasing by at least 1 µm, diameters
    /// 0.01 mm to 10 m.
    /// </param>
    /// <exception cref="ArgumentException">Too few points, the first is not at 0, or positions do not increase.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is outside its range or not a number.</exception>
    public ProfileSection(params IReadOnlyList<ProfilePoint> points)
        : this(Join(points)) { }

    private ProfileSection(ConeSection[] cones)
        : base(cones.Sum(cone => cone.LengthMetres))
    {
        this.cones = new EquatableArray<ConeSection>(cones);
    }

    /// <summary>The points, from the inlet to the outlet.</summary>
    public IReadOnlyList<ProfilePoint> Points
    {
        get
        {
            var points = new List<ProfilePoint> { new(Length.Zero, cones[0].InletDiameter) };
            var position = 0.0;
            foreach (var cone in cones)
            {
                position += cone.LengthMetres;
                points.Add(new ProfilePoint(Dimension.InMillimeters(position), cone.OutletDiameter));
            }

            return points;
        }
    }

    internal override double LargestRadius => cones.Max(cone => cone.LargestRadius);

    internal override IReadOnlyList<Section> SmoothParts => cones;

    /// <inheritdoc/>
    public override ProfileSection WithLength(Length length)
    {
        var stretch = Dimension.AxialLength(length) / LengthMetres;
        return new ProfileSection([
            .. cones.Select(cone => cone.WithLength(Length.FromMeters(cone.LengthMetres * stretch))),
        ]);
    }

    internal override Wall WallAt(double x)
    {
        var last = cones.Count - 1;
        for (var i = 0; i < last; i++)
        {
            if (x <= cones[i].LengthMetres)
            {
                return cones[i].WallAt(x);
            }

            x -= cones[i].LengthMetres;
        }

        return cones[last].WallAt(Math.Min(x, cones[last].LengthMetres));
    }

    private static ConeSection[] Join(IReadOnlyList<ProfilePoint> points)
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

            cones[i] = new ConeSection(start.Diameter, end.Diameter, end.Position - start.Position);
        }

        return cones;
    }
}
