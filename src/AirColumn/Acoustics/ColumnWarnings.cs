using AirColumn.Acoustics.Line;

namespace AirColumn;

/// <summary>What a user should know of a column's answers.</summary>
internal static class ColumnWarnings
{
    private const double ShortestOverWidest = 0.1;

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

        if (
            column.Options is { MutualRadiation: true, Wavefronts: Wavefronts.Multimodal }
            && OutsideOpenings.Of(column.Line, column.OpenHoles) is not null
        )
        {
            warnings.Add(
                "Radial modes leave out that open holes and the open end hear each other outside. This moves resonances, usually by a few cents. Compute "
                    + "the column with curved wave fronts (Wavefronts.Curved), with MutualRadiation on and off, to see by how many."
            );
        }

        // Nearly always two arguments in the wrong order.
        var (length, widest) = (1000 * column.Bore.LengthMetres, 2000 * column.Bore.LargestRadius);
        if (length < ShortestOverWidest * widest)
        {
            warnings.Add(
                $"The bore is {Require.Show(Math.Round(length, 3), "mm")} long and {Require.Show(Math.Round(widest, 3), "mm")} wide: too short for waves "
                    + "along its axis. Check whether a length and a diameter were swapped."
            );
        }

        if (hertz > column.CutOnHertz)
        {
            warnings.Add(
                $"Frequencies reach {Require.Show(hertz, "Hz")}; plane-wave theory ends at "
                    + $"{Require.Show(Math.Round(column.CutOnHertz, 1), "Hz")}, where the first radial mode begins to propagate "
                    + "in the widest part. Above that frequency the result is from the one-dimensional model only."
            );
        }

        return warnings;
    }
}
