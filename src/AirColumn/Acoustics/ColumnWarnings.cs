using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics;

/// <summary>What a user should know of a column's answers.</summary>
internal static class ColumnWarnings
{
    /// <summary>Up to a frequency in Hz.</summary>
    public static IReadOnlyList<string> Of(ColumnModel column, double hertz)
    {
        var warnings = new List<string>(column.Line.Warnings);
        warnings.AddRange(column.Ends.Select(end => end.Warning).OfType<string>().Distinct());
        warnings.AddRange(OpeningWarnings.Of(column.Bore, column.Options.Fingering, hertz, column.Gas));

        if (column.WavefrontWarning is { } fronts)
        {
            warnings.Add(fronts);
        }

        if (hertz > column.CutOnHertz)
        {
            warnings.Add(
                $"Frequencies reach {Require.Show(hertz, "Hz")}; plane-wave theory ends at "
                    + $"{Require.Show(Math.Round(column.CutOnHertz, 1), "Hz")}, where the first radial mode begins to propagate "
                    + "in the widest part. Above it the result is that of the one-dimensional model only."
            );
        }

        return warnings;
    }
}
