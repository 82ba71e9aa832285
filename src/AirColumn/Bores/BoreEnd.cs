using UnitsNet;

namespace AirColumn.Bores;

/// <summary>How the far end of a bore is finished: geometry only; what it radiates is the acoustics' affair.</summary>
public abstract record BoreEnd
{
    private protected BoreEnd() { }
}

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
}

/// <summary>An open end flush with a large rigid plane.</summary>
public sealed record BaffledEnd : BoreEnd;

/// <summary>An end stopped by a rigid plug: no flow.</summary>
public sealed record ClosedEnd : BoreEnd;

/// <summary>The textbook open end, at which the sound pressure vanishes: no radiation and no end correction.</summary>
public sealed record IdealOpenEnd : BoreEnd;
