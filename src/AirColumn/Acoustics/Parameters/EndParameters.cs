using AirColumn.Acoustics.Line;
using UnitsNet;

namespace AirColumn.Acoustics.Parameters;

/// <summary>The wall at the rim of a free open far end.</summary>
internal sealed record WallParameter : IColumnChange
{
    public string Unit => "m";

    // What a thin wall adds grows as its thickness to 2/3, so that without any nothing smooth begins.
    public double StepAt(in ColumnParts parts)
    {
        var last = parts.Bore.Sections[^1];
        return 1e-3 * Math.Min(last.WallAt(last.LengthMetres).Radius, 10 * Of(parts));
    }

    public double Of(in ColumnParts parts) =>
        parts.Bore.FarEnd is OpenEnd end
            ? end.WallMetres
            : throw new ArgumentException(
                $"The column has no {this}: its far end is {parts.Bore.FarEnd}, not a free open end.",
                nameof(parts)
            );

    public ColumnParts With(in ColumnParts parts, double value)
    {
        _ = Of(parts);
        return parts with { Bore = parts.Bore.WithFarEnd(new OpenEnd(Length.FromMeters(value))) };
    }

    /// <summary>The name of the parameter.</summary>
    public override string ToString() => "wall at the far end";
}

/// <summary>The given correction of an open blown end.</summary>
internal sealed record BlownParameter : IColumnChange
{
    public string Unit => "m";

    public double StepAt(in ColumnParts parts) => 1e-3 * parts.Bore.Sections[0].WallAt(0).Radius;

    public double Of(in ColumnParts parts) =>
        parts.Options.BlownEnd is { IsOpen: true, IsFree: false } end
            ? end.CorrectionMetres
            : throw new ArgumentException(
                $"The column has no {this}: it has a {parts.Options.BlownEnd}.",
                nameof(parts)
            );

    public ColumnParts With(in ColumnParts parts, double value)
    {
        _ = Of(parts);
        return parts with
        {
            Options = parts.Options with { BlownEnd = BlownEnd.Open(Length.FromMeters(value)) },
        };
    }

    /// <summary>The name of the parameter.</summary>
    public override string ToString() => "correction of the blown end";
}
