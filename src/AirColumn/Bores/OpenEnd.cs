using UnitsNet;

namespace AirColumn;

/// <summary>An open end standing free in the room, cut square.</summary>
public sealed record OpenEnd : BoreEnd
{
    /// <summary>Makes a free open end.</summary>
    /// <param name="wall">Thickness of the wall at the rim: 0 (a thin edge) to 10 m.</param>
    /// <exception cref="ArgumentOutOfRangeException">The thickness is negative, too large or not a number.</exception>
    public OpenEnd(Length wall)
    {
        WallMetres = Dimension.ZeroOrMore(wall);
    }

    /// <summary>Thickness of the wall at the rim.</summary>
    public Length Wall => Dimension.InMillimeters(WallMetres);

    internal double WallMetres { get; }

    /// <summary>Kind and wall, in the invariant culture.</summary>
    /// <returns>The kind of end and its wall, as text.</returns>
    public override string ToString() => $"open end, wall {Dimension.Text(Wall)}";
}
