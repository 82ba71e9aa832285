namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// The outside of a pipe behind its mouth, in units of the mouth's radius: a wall of even thickness, measured across the axis, around
/// the bore; beyond a depth, or where the bore has a step, a cylinder.
/// </summary>
internal sealed class OuterProfile
{
    private const double Deepest = 3;
    private const int Places = 64;
    private const double Straight = 1e-6;

    private readonly Bore bore;
    private readonly double radius; // of the mouth, m
    private readonly double wall; // over it

    private OuterProfile(Bore bore, double wall)
    {
        this.bore = bore;
        var sections = bore.Sections;
        radius = sections[^1].WallAt(sections[^1].LengthMetres).Radius;
        this.wall = wall;
        var smooth = sections[^1].LengthMetres;
        for (var i = sections.Count - 1; i > 0 && !Bore.IsStep(sections[i - 1], sections[i]); i--)
        {
            smooth += sections[i - 1].LengthMetres;
        }

        Depth = Math.Min(Deepest, smooth / radius);
        Samples = [.. Enumerable.Range(0, Places + 1).Select(i => At(Depth * i / Places).Radius)];
        Largest = Samples.Max();
    }

    /// <summary>Radii along it, which tell one from another.</summary>
    public double[] Samples { get; }

    /// <summary>How far behind the mouth it is followed.</summary>
    public double Depth { get; }

    /// <summary>The largest radius there.</summary>
    public double Largest { get; }

    /// <summary>That of a bore with a wall of this share of the mouth's radius; null where it is a cylinder.</summary>
    public static OuterProfile? Of(Bore bore, double wall)
    {
        var profile = new OuterProfile(bore, wall);
        return profile.Samples.Any(sample => Math.Abs(sample - wall - 1) > Straight) ? profile : null;
    }

    /// <summary>Outer radius at a distance behind the mouth, and how it changes with that.</summary>
    public (double Radius, double Slope) At(double behind)
    {
        // From the mouth on: the same to the last digit whatever lies farther behind, so that a mouth is known again.
        var left = behind * radius;
        for (var i = bore.Sections.Count - 1; ; i--)
        {
            var section = bore.Sections[i];
            if (left <= section.LengthMetres || i == 0)
            {
                var at = section.WallAt(Math.Max(section.LengthMetres - left, 0));
                return (at.Radius / radius + wall, -at.Slope);
            }

            left -= section.LengthMetres;
        }
    }
}
