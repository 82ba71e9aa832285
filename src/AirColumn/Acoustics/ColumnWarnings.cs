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

        var steepest = column.Options.Wavefronts is Wavefronts.Curved or Wavefronts.Sloped
            ? column.Bore.Sections.Max(section => section.SteepestSlope)
            : 0;
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
