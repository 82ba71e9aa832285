using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics;

/// <summary>What a user should know of a column's answers.</summary>
internal static class ColumnWarnings
{
    /// <summary>Up to a frequency in Hz, with all that ends something and the steepest slope that the model of the fronts minds.</summary>
    public static IReadOnlyList<string> Of(Column column, FarEndLoad[] loads, double steepest, double hertz)
    {
        var warnings = new List<string>(column.Compiled.Warnings);
        warnings.AddRange(loads.Select(end => end.Warning).OfType<string>().Distinct());
        warnings.AddRange(OpeningWarnings.Of(column.Bore, column.Options.Fingering, hertz, column.Gas));

        if (steepest > 1)
        {
            warnings.Add(
                $"The wall slopes by up to {Require.Show(Math.Round(steepest, 2), "")} (more than 45°), where the model of curved "
                    + "wave fronts is beyond its expansion in the slope. A short flare so steep may be off by a few cents; ask "
                    + "for multimodal wave fronts, or automatic ones, to have it right."
            );
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
