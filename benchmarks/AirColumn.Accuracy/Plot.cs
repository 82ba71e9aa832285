using System.Globalization;
using System.Text;

namespace AirColumn.Accuracy;

/// <summary>One set of points in a plot.</summary>
internal sealed record Series(string Name, IReadOnlyList<(double X, double Y)> Points);

/// <summary>
/// A chart of errors as SVG: points joined by lines, a decade axis where values span many, a band where something is asked.
/// </summary>
internal sealed record Plot(string File, string Title, string X, string Y, IReadOnlyList<Series> Series)
{
    private const int Width = 760;
    private const int Height = 340;
    private const int Left = 74;
    private const int Right = 190;
    private const int Top = 40;
    private const int Bottom = 52;

    // Distinct to colour-blind readers as well, and by the shape of the mark (Okabe and Ito's set).
    private static readonly string[] Colours =
    [
        "#0072B2",
        "#D55E00",
        "#009E73",
        "#CC79A7",
        "#56B4E9",
        "#E69F00",
        "#000000",
        "#8C6D31",
    ];

    /// <summary>Whether the axis shows decades.</summary>
    public bool LogX { get; init; }

    /// <summary>Whether the axis shows decades of the absolute value.</summary>
    public bool LogY { get; init; }

    /// <summary>Half the height of the band around zero that is asked for, or its top on a decade axis.</summary>
    public double? Band { get; init; }

    public string Svg()
    {
        var points = Series.SelectMany(series => series.Points).ToList();
        var x = Axis.Of(points.Select(point => point.X), LogX);
        var values = points.Select(point => LogY ? Math.Abs(point.Y) : point.Y);
        var y = Axis.Of(Band is { } band ? values.Append(band).Append(LogY ? band : -band) : values, LogY);
        var svg = new StringBuilder();
        Line(
            svg,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {Height}\" width=\"{Width}\" height=\"{Height}\" "
                + "font-family=\"sans-serif\" font-size=\"12\" fill=\"#222\">"
        );
        Line(svg, $"<rect width=\"{Width}\" height=\"{Height}\" fill=\"#fff\"/>");
        Text(svg, Left, 22, Title, "start", "font-size=\"14\" font-weight=\"bold\"");
        if (Band is { } asked)
        {
            var (high, low) = (Place(y, asked, true), LogY ? Height - Bottom : Place(y, -asked, true));
            Line(
                svg,
                $"<rect x=\"{Left}\" y=\"{Show(high)}\" width=\"{Width - Left - Right}\" height=\"{Show(low - high)}\" fill=\"#009E73\" fill-opacity=\"0.10\"/>"
            );
        }

        Ticks(svg, x, y);
        for (var i = 0; i < Series.Count; i++)
        {
            Draw(svg, Series[i], Colours[i % Colours.Length], i, x, y);
        }

        Line(svg, "</svg>");
        return svg.ToString();
    }

    private void Ticks(StringBuilder svg, Axis x, Axis y)
    {
        var (right, bottom) = (Width - Right, Height - Bottom);
        foreach (var tick in y.Ticks)
        {
            var at = Show(Place(y, tick, true));
            var colour = !LogY && tick == 0 ? "#666" : "#ddd";
            Line(svg, $"<line x1=\"{Left}\" y1=\"{at}\" x2=\"{right}\" y2=\"{at}\" stroke=\"{colour}\"/>");
            Text(svg, Left - 8, Place(y, tick, true) + 4, Label(tick, LogY), "end");
        }

        foreach (var tick in x.Ticks)
        {
            var at = Show(Place(x, tick, false));
            Line(svg, $"<line x1=\"{at}\" y1=\"{bottom}\" x2=\"{at}\" y2=\"{bottom + 5}\" stroke=\"#222\"/>");
            Text(svg, Place(x, tick, false), bottom + 20, Label(tick, LogX), "middle");
        }

        Line(svg, $"<path d=\"M{Left} {Top}V{bottom}H{right}\" fill=\"none\" stroke=\"#222\"/>");
        Text(svg, (Left + right) / 2.0, Height - 12, X, "middle");
        Line(
            svg,
            $"<text transform=\"translate(18 {Show((Top + bottom) / 2.0)}) rotate(-90)\" text-anchor=\"middle\">{Escape(Y)}</text>"
        );
    }

    private void Draw(StringBuilder svg, Series series, string colour, int index, Axis x, Axis y)
    {
        var places = series
            .Points.OrderBy(point => point.X)
            .Select(point =>
                (X: Place(x, point.X, false), Y: Place(y, LogY ? Math.Abs(point.Y) : point.Y, true))
            )
            .ToList();
        var path = string.Join('L', places.Select(place => $"{Show(place.X)} {Show(place.Y)}"));
        Line(
            svg,
            $"<path d=\"M{path}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"1.2\" stroke-opacity=\"0.6\"/>"
        );
        foreach (var place in places)
        {
            Line(svg, Mark(index, place.X, place.Y, colour));
        }

        var row = Top + 8 + 20 * index;
        Line(svg, Mark(index, Width - Right + 18, row, colour));
        Text(svg, Width - Right + 30, row + 4, series.Name, "start");
    }

    private static string Mark(int index, double x, double y, string colour) =>
        (index % 3) switch
        {
            0 => $"<circle cx=\"{Show(x)}\" cy=\"{Show(y)}\" r=\"3\" fill=\"{colour}\"/>",
            1 =>
                $"<rect x=\"{Show(x - 3)}\" y=\"{Show(y - 3)}\" width=\"6\" height=\"6\" fill=\"{colour}\"/>",
            _ => $"<path d=\"M{Show(x - 4)} {Show(y + 3)}h8l-4 -7z\" fill=\"{colour}\"/>",
        };

    private static double Place(Axis axis, double value, bool vertical)
    {
        var share = axis.Share(value);
        return vertical
            ? Height - Bottom - share * (Height - Bottom - Top)
            : Left + share * (Width - Left - Right);
    }

    private static void Text(
        StringBuilder svg,
        double x,
        double y,
        string text,
        string anchor,
        string style = ""
    ) =>
        Line(
            svg,
            $"<text x=\"{Show(x)}\" y=\"{Show(y)}\" text-anchor=\"{anchor}\"{(style.Length > 0 ? " " + style : "")}>{Escape(text)}</text>"
        );

    private static void Line(StringBuilder svg, string text) => svg.Append(text).Append('\n');

    private static string Escape(string text) =>
        text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal);

    private static string Show(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Label(double value, bool log) =>
        log && (value < 1e-2 || value >= 1e4)
            ? "1e" + Math.Round(Math.Log10(value)).ToString(CultureInfo.InvariantCulture)
            : value.ToString("G6", CultureInfo.InvariantCulture);
}
