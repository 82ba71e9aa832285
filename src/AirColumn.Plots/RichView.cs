using System.Globalization;
using System.Net;
using System.Text;
using AirColumn.Plots.Drawing;

namespace AirColumn.Plots;

/// <summary>
/// Views of bores, columns, curves and resonances for a notebook or a page of your own: HTML with pictures in it,
/// no scripts, nothing to load. Notebooks that reference the package use it without a call.
/// </summary>
public static class RichView
{
    private const int UsualResonances = 6;
    private const double Finer = 1.5;

    /// <summary>A bore: its side view.</summary>
    /// <param name="bore">The bore.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The HTML.</returns>
    public static string Of(Bore bore, CancellationToken cancellationToken = default) =>
        Of(BorePicture.Of(bore), cancellationToken);

    /// <summary>A column: its bore, its impedance, and a table of its first six resonances.</summary>
    /// <param name="column">The column.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The HTML.</returns>
    public static string Of(Column column, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(column);
        return Of(BorePicture.Of(column.Bore), cancellationToken)
            + Of(ImpedancePicture.Of(column, null, cancellationToken), cancellationToken)
            + Table(column.FirstResonances(UsualResonances, cancellationToken));
    }

    /// <summary>A curve of impedance: magnitude and phase.</summary>
    /// <param name="curve">The curve; a curve with fewer than two frequencies at which it is finite and not zero becomes a line of text.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The HTML.</returns>
    public static string Of(ImpedanceCurve curve, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(curve);
        var usable = 0;
        for (var i = 0; i < curve.Count; i++)
        {
            usable += curve[i].Magnitude is > 0 and < double.PositiveInfinity ? 1 : 0;
        }

        return usable < 2
            ? $"<p>Input impedance at {Numbers.Plain(curve.Count)} frequencies</p>"
            : Of(ImpedancePicture.OfCurve(curve), cancellationToken) + Warnings(curve.Warnings);
    }

    /// <summary>Resonances: how far they are from notes, and a table.</summary>
    /// <param name="resonances">The resonances.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The HTML.</returns>
    public static string Of(ResonanceList resonances, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(resonances);
        Resonance[] named = [.. resonances.Where(HasName)];
        return (named.Length == 0 ? "" : Of(TuningPicture.Of(named), cancellationToken)) + Table(resonances);
    }

    /// <summary>Any other answer, such as a length that was solved for: a table of its values, each named with its unit.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The HTML.</returns>
    public static string Of(IJsonAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return AnswerTable.Of(answer);
    }

    /// <summary>A picture, with its description for those who cannot see it.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The HTML.</returns>
    public static string Of(Picture picture, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(picture);
        // More pixels, for screens that have them.
        var fine = picture.Size.Scale >= Finer ? picture : picture.At(picture.Size.AtScale(Finer));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"<img width=\"{picture.Width:0}\" height=\"{picture.Height:0}\" alt=\"{WebUtility.HtmlEncode(picture.Description)}\" src=\"data:image/png;base64,{Convert.ToBase64String(fine.Png(cancellationToken))}\">"
        );
    }

    private static string Table(ResonanceList resonances)
    {
        var text = new StringBuilder(
            "<table><thead><tr><th></th><th>frequency, Hz</th><th>nearest note</th><th>Q</th><th>|Z|, Pa·s/m³</th></tr></thead><tbody>"
        );
        for (var i = 0; i < resonances.Count; i++)
        {
            var resonance = resonances[i];
            var note = HasName(resonance) ? resonance.Nearest(Tuning.Concert).ToString() : "";
            text.Append(
                CultureInfo.InvariantCulture,
                $"<tr><td>{i + 1}</td><td>{resonance.Frequency.Hertz:F2}</td><td>{note}</td><td>{resonance.QualityFactor:F0}</td><td>{resonance.Magnitude:0.###e0}</td></tr>"
            );
        }

        return text.Append("</tbody></table>").ToString() + Warnings(resonances.Warnings);
    }

    private static bool HasName(Resonance resonance) => resonance.Frequency.Hertz is >= 1 and <= 100_000;

    private static string Warnings(IReadOnlyList<string> warnings) =>
        string.Concat(warnings.Select(warning => $"<p>{WebUtility.HtmlEncode(warning)}</p>"));
}
