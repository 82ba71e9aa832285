using UnitsNet;

namespace AirColumn;

/// <summary>A hole in the side of a bore that a finger or a pad can close. Immutable, equal by its dimensions.</summary>
public sealed record ToneHole
{
    private readonly double? chimneyWall;

    /// <summary>Makes a tone hole.</summary>
    /// <param name="position">Distance of its axis from the blown end, along the axis of the bore: 1 µm to 1 km.</param>
    /// <param name="diameter">Its diameter: 0.01 mm to 10 m.</param>
    /// <param name="height">
    /// Its height along its own axis, from the wall of the bore to its outer end: 0 to 10 m. This is the thickness of the wall for a drilled hole,
    /// and the length of the chimney for a hole with a chimney.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is outside its range or not a number.</exception>
    public ToneHole(Length position, Length diameter, Length height)
    {
        PositionMetres = Dimension.AxialLength(position);
        Radius = Dimension.RadiusOf(diameter);
        HeightMetres = Dimension.ZeroOrMore(height);
    }

    /// <summary>Distance of its axis from the blown end, along the axis of the bore.</summary>
    public Length Position => Dimension.InMillimeters(PositionMetres);

    /// <summary>Its diameter.</summary>
    public Length Diameter => Dimension.InMillimeters(2 * Radius);

    /// <summary>Its height, from the wall of the bore to its outer end.</summary>
    public Length Height => Dimension.InMillimeters(HeightMetres);

    /// <summary>
    /// Thickness of the wall at the rim of a chimney that stands out from the bore: 0 to 10 m; null if the hole is drilled through the wall and has
    /// no chimney.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The thickness is negative, too large or not a number.</exception>
    public Length? ChimneyWall
    {
        get => chimneyWall is { } wall ? Dimension.InMillimeters(wall) : null;
        init => chimneyWall = value is { } wall ? Dimension.ZeroOrMore(wall, nameof(ChimneyWall)) : null;
    }

    /// <summary>The pad that hangs above the hole when it is open; null if there is none.</summary>
    public HolePad? Pad { get; init; }

    /// <summary>Its name for people, such as "register"; null if it has none. Texts put the word "hole" in front.</summary>
    public string? Name { get; init; }

    internal double PositionMetres { get; private init; }

    internal double Radius { get; }

    internal double HeightMetres { get; }

    internal double? ChimneyWallMetres => chimneyWall;

    /// <summary>The same hole so much farther from the blown end, m.</summary>
    internal ToneHole MovedBy(double metres) =>
        this with
        {
            PositionMetres = Dimension.AxialLength(Length.FromMeters(PositionMetres + metres)),
        };

    /// <summary>Name, dimensions and place, in the invariant culture.</summary>
    /// <returns>Name, dimensions and place, as text.</returns>
    public override string ToString() =>
        $"hole {(Name is null ? "" : $"{Name} ")}{Dimension.Text(Diameter)} at {Dimension.Text(Position)}, "
        + $"{Dimension.Text(Height)} high"
        + (ChimneyWall is { } wall ? $", chimney wall {Dimension.Text(wall)}" : "")
        + (Pad is { } pad ? $", {pad}" : "");
}
