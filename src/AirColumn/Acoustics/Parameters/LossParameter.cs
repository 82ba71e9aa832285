using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics.Parameters;

/// <summary>By how much more than a smooth wall the walls of the column take.</summary>
internal sealed record LossParameter : IColumnChange
{
    public string Unit => "";

    public double StepAt(in ColumnParts parts) => 1e-3 * Of(parts);

    public double Of(in ColumnParts parts) =>
        parts.Options.Losses != WallLosses.None
            ? parts.Options.LossFactor
            : throw new ArgumentException($"The column has no {this}: its losses are none.", nameof(parts));

    public ColumnParts With(in ColumnParts parts, double value)
    {
        _ = Of(parts);
        return parts with { Options = parts.Options with { LossFactor = value } };
    }

    /// <summary>The name of the parameter.</summary>
    public override string ToString() => "losses at the wall";
}
