using System.Globalization;
using System.Text;
using AirColumn.Acoustics;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Sheets;

/// <summary>
/// |Z| at the lips against frequency, as SVG: each resonance with the note nearest to it, and the multiples of the note aimed at.
/// </summary>
internal static class ImpedanceChart
{
    private const double Width = 720;
    private const double Height = 250;
    private const double Left = 46;
    private const double Right = 14;
    private const double Top = 40;
    private const double Bottom = 36;
    private const int Points = 1400;

    public static string Of(TubeBuild build, BuiltTube built)
    {
        var target = build.Tuning.FrequencyOf(build.Note).Hertz;
        var highest = Math.Min(9.5 * target, 0.99 * built.Column.HighestFrequency.Hertz);
        var lowest = 0.4 * target;
        var curve = built.Column.Impedance(FrequencyGrid.Linear(lowest, highest, Points));
        var level = new double[Points];
        for (var i = 0; i < Points; i++)
        {
            level[i] = 20 * Math.Log10(curve[i].Magnitude / built.Column.CharacteristicImpedance);
        }

        var (floor, ceiling) = (10 * Math.Floor(level.Min() / 10), 10 * Math.Ceiling(level.Max() / 10));
        var svg = new StringBuilder();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg viewBox=\"0 0 {Width:0} {Height:0}\" role=\"img\" aria-label=\"{SheetWords.ResonanceChart}\">\n"
        );
        for (var db = floor; db <= ceiling; db += 10)
        {
            Line(svg, "grid", Left, Y(db), Width - Right, Y(db));
            Text(svg, "tick", Left - 6, Y(db) + 4, db.ToString("0", CultureInfo.InvariantCulture));
        }

        for (var multiple = 1; multiple * target <= highest; multiple++)
        {
            Line(svg, "harmonic", X(multiple * target), Top, X(multiple * target), Height - Bottom);
            Text(
                svg,
                "tickx",
                X(multiple * target),
                Height - Bottom + 14,
                (multiple * target).ToString("0", CultureInfo.InvariantCulture)
            );
        }

        svg.Append("<polyline class=\"curve\" points=\"");
        for (var i = 0; i < Points; i++)
        {
            svg.Append(CultureInfo.InvariantCulture, $"{X(curve.Grid.Hertz[i]):0.#},{Y(level[i]):0.#} ");
        }

        svg.Append("\"/>\n");
        foreach (var resonance in build.Resonances!.Where(r => r.Frequency.Hertz < highest))
        {
            var reading = resonance.Nearest(build.Tuning);
            var (x, y) = (
                X(resonance.Frequency.Hertz),
                Y(20 * Math.Log10(resonance.Magnitude / built.Column.CharacteristicImpedance))
            );
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<circle class=\"peak\" cx=\"{x:0.#}\" cy=\"{y:0.#}\" r=\"3.5\"/>\n"
            );
            Text(svg, "peakname", x, y - 18, reading.Pitch.ToString());
            Text(svg, "peakcents", x, y - 7, FormattableString.Invariant($"{reading.Cents:+0;-0;0}"));
        }

        Text(svg, "axisname", (Left + Width - Right) / 2, Height - 6, SheetWords.FrequencyAxis);
        Text(svg, "left", 4, 14, SheetWords.LevelAxis);
        svg.Append("</svg>\n");
        return svg.ToString();

        double X(double hertz) => Left + (Width - Left - Right) * (hertz - lowest) / (highest - lowest);
        double Y(double db) => Top + (Height - Top - Bottom) * (ceiling - db) / (ceiling - floor);
    }

    private static void Line(StringBuilder svg, string style, double x1, double y1, double x2, double y2) =>
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<line class=\"{style}\" x1=\"{x1:0.#}\" y1=\"{y1:0.#}\" x2=\"{x2:0.#}\" y2=\"{y2:0.#}\"/>\n"
        );

    private static void Text(StringBuilder svg, string style, double x, double y, string text) =>
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<text class=\"{style}\" x=\"{x:0.#}\" y=\"{y:0.#}\">{Html.Escaped(text)}</text>\n"
        );
}
