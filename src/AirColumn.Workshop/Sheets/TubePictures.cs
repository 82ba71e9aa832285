using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Sheets;

/// <summary>The drawings of a tube as SVG, for pages that have styles for their classes.</summary>
/// <remarks>
/// Classes: bore, heat (formed by heat), axis, ruler, lead, grid, harmonic, curve, peak; of text middle, strong, start, end.
/// </remarks>
public static class TubePictures
{
    /// <summary>A side view to one scale with its dimensions. The shape of each part carries the part's index, from 0, as data-part.</summary>
    /// <param name="tube">The tube.</param>
    /// <param name="width">The width of the drawing, in units in which letters are 12 high: 200 to 2000.</param>
    /// <param name="units">The units in which lengths are written.</param>
    /// <returns>The SVG drawing.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The width is out of range, or the units are not defined.</exception>
    public static string Side(AssembledTube tube, double width, LengthUnits units)
    {
        ArgumentNullException.ThrowIfNull(tube);
        Require.InRange(width, 200, 2000, "", nameof(width));
        return SvgText.Of(SideView.Of(tube, width, new Sizes(Require.Named(units))), "side", "side");
    }

    /// <summary>The impedance at the lips against frequency, with the nearest note at each peak.</summary>
    /// <param name="cut">The tube, cut to the note.</param>
    /// <param name="note">The wanted note.</param>
    /// <param name="tuning">The tuning that gives the note its frequency.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The SVG drawing.</returns>
    /// <exception cref="ArgumentException">The cut has no solution.</exception>
    public static string Impedance(
        ExactCut cut,
        Pitch note,
        Tuning tuning,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(cut);
        ArgumentNullException.ThrowIfNull(tuning);
        return cut.IsSolved
            ? SvgText.Of(
                ImpedanceChart.Of(note, tuning, cut.Exact, cut.Resonances, cancellationToken),
                "impedance",
                "chart"
            )
            : throw new ArgumentException(cut.ExplanationIn(LengthUnits.Both), nameof(cut));
    }
}
