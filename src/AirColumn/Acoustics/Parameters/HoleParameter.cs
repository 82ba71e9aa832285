using AirColumn.Acoustics.Line;
using UnitsNet;

namespace AirColumn.Acoustics.Parameters;

/// <summary>A dimension of a tone hole.</summary>
internal sealed record HoleParameter(int Hole, HoleDimension Dimension) : IColumnChange
{
    public string Unit => "m";

    public double StepAt(in ColumnParts parts)
    {
        var hole = HoleOf(parts);
        return 1e-3
            * (Dimension == HoleDimension.Height ? Math.Max(hole.HeightMetres, hole.Radius) : hole.Radius);
    }

    public double Of(in ColumnParts parts)
    {
        var hole = HoleOf(parts);
        return Dimension switch
        {
            HoleDimension.Position => hole.PositionMetres,
            HoleDimension.Diameter => 2 * hole.Radius,
            _ => hole.HeightMetres,
        };
    }

    public ColumnParts With(in ColumnParts parts, double value)
    {
        var hole = HoleOf(parts);
        var length = Length.FromMeters(value);
        var changed = new ToneHole(
            Dimension == HoleDimension.Position ? length : Length.FromMeters(hole.PositionMetres),
            Dimension == HoleDimension.Diameter ? length : Length.FromMeters(2 * hole.Radius),
            Dimension == HoleDimension.Height ? length : Length.FromMeters(hole.HeightMetres)
        )
        {
            ChimneyWall = hole.ChimneyWall,
            Pad = hole.Pad,
            Name = hole.Name,
        };
        return parts with { Bore = parts.Bore.WithHole(Hole, changed) };
    }

    private ToneHole HoleOf(in ColumnParts parts) =>
        Hole < parts.Bore.Holes.Count
            ? parts.Bore.Holes[Hole]
            : throw new ArgumentException(
                $"The column has no {this}: it has {parts.Bore.Holes.Count} holes.",
                nameof(parts)
            );

    /// <summary>Which dimension of which hole, counted from 1.</summary>
    public override string ToString() =>
        $"{(Dimension == HoleDimension.Position ? "place" : Dimension == HoleDimension.Diameter ? "diameter" : "height")} of hole {Hole + 1}";
}

/// <summary>What of a tone hole.</summary>
internal enum HoleDimension
{
    /// <summary>Distance of its axis from the blown end.</summary>
    Position,

    /// <summary>Its diameter.</summary>
    Diameter,

    /// <summary>Its height.</summary>
    Height,
}
