using System.Globalization;
using System.Net;
using System.Text;

namespace AirColumn.Workshop.Sheets;

/// <summary>A page of HTML that needs nothing else, its drawings in SVG; every text is escaped.</summary>
internal sealed class HtmlPage : SheetPage
{
    private const string Style = """
        :root { color-scheme: light; }
        body { font: 15px/1.45 system-ui, sans-serif; color: #1a1a1a; background: #fff; max-width: 760px; margin: 0 auto; padding: 14px; }
        h1 { font-size: 1.45em; margin: 0 0 .2em; }
        h2 { font-size: 1.05em; margin: 1.1em 0 .3em; border-bottom: 1px solid #999; }
        p { margin: .3em 0; }
        .note { color: #555; font-size: .85em; }
        .mind { background: #fdf3dc; padding: .3em .6em; border-left: 4px solid #c77700; }
        table { border-collapse: collapse; width: 100%; font-size: .92em; }
        th, td { text-align: left; padding: .18em .5em .18em 0; border-bottom: 1px solid #ddd; vertical-align: top; }
        th { font-weight: 600; }
        ol, ul { margin: .3em 0; padding-left: 1.4em; }
        svg { width: 100%; height: auto; display: block; }
        svg text { font: 11px system-ui, sans-serif; fill: #1a1a1a; }
        .bore { fill: #dce8f3; stroke: #16476b; stroke-width: 1.6; stroke-linejoin: miter; }
        .axis { stroke: #16476b; stroke-width: .6; stroke-dasharray: 9 3 2 3; }
        .ruler { stroke: #444; stroke-width: 1; }
        .lead { stroke: #888; stroke-width: .7; }
        .callout { fill: #fff; stroke: #16476b; }
        text.middle, text.strong, text.small { text-anchor: middle; }
        text.end { text-anchor: end; }
        .grid { stroke: #e2e2e2; stroke-width: 1; }
        .harmonic { stroke: #c77700; stroke-width: 1; stroke-dasharray: 3 3; }
        .curve { fill: none; stroke: #16476b; stroke-width: 1.5; }
        .peak { fill: #16476b; }
        text.strong { font-weight: 600; }
        text.small { font-size: 10px; fill: #444; }
        @media print { body { font-size: 8.8pt; line-height: 1.32; max-width: none; padding: 0; } svg { max-height: 44mm; } h2 { margin-top: .8em; break-after: avoid; } table, svg, ol, li { break-inside: avoid; } }
        @page { margin: 11mm; }
        """;

    private readonly StringBuilder text = new();

    public HtmlPage(string title) =>
        text.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
            .Append(Escaped(title))
            .Append("</title>\n<style>\n")
            .Append(Style.ReplaceLineEndings("\n"))
            .Append("\n</style>\n</head>\n<body>\n<h1>")
            .Append(Escaped(title))
            .Append("</h1>\n");

    /// <summary>All of it.</summary>
    public override string ToString() => $"{text}</body>\n</html>\n";

    public override void Heading(string text) => Element("h2", text);

    public override void Paragraph(string text, ParagraphStyle style = ParagraphStyle.Plain) =>
        Element(
            "p",
            text,
            style switch
            {
                ParagraphStyle.Note => "note",
                ParagraphStyle.Mind => "mind",
                _ => "",
            }
        );

    public override void List(IEnumerable<string> items, bool isOrdered)
    {
        var tag = isOrdered ? "ol" : "ul";
        text.Append('<').Append(tag).Append(">\n");
        foreach (var item in items)
        {
            Element("li", item);
        }

        text.Append("</").Append(tag).Append(">\n");
    }

    public override void Table(IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows)
    {
        text.Append("<table>\n<thead><tr>");
        foreach (var cell in head)
        {
            text.Append("<th>").Append(Escaped(cell)).Append("</th>");
        }

        text.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in rows)
        {
            text.Append("<tr>");
            foreach (var cell in row)
            {
                text.Append("<td>").Append(Escaped(cell)).Append("</td>");
            }

            text.Append("</tr>\n");
        }

        text.Append("</tbody>\n</table>\n");
    }

    public override void Draw(Drawing drawing)
    {
        Add(
            $"<svg viewBox=\"0 0 {drawing.Width:0.##} {drawing.Height:0.##}\" role=\"img\" aria-label=\"{Escaped(drawing.Label)}\">\n"
        );
        foreach (var shape in drawing.Shapes)
        {
            switch (shape)
            {
                case Outline { IsClosed: true } outline:
                    Add($"<path class=\"{outline.Style}\" d=\"M{Points(outline)} Z\"/>\n");
                    break;
                case Outline outline:
                    Add($"<polyline class=\"{outline.Style}\" points=\"{Points(outline)}\"/>\n");
                    break;
                case Circle circle:
                    Add(
                        $"<circle class=\"{circle.Style}\" cx=\"{circle.X:0.##}\" cy=\"{circle.Y:0.##}\" r=\"{circle.Radius:0.##}\"/>\n"
                    );
                    break;
                case Label label:
                    Add(
                        $"<text class=\"{label.Style}\" x=\"{label.X:0.##}\" y=\"{label.Y:0.##}\">{Escaped(label.Text)}</text>\n"
                    );
                    break;
            }
        }

        text.Append("</svg>\n");
    }

    private static string Points(Outline outline) =>
        string.Join(
            ' ',
            outline.Points.Select(point => FormattableString.Invariant($"{point.X:0.##},{point.Y:0.##}"))
        );

    private static string Escaped(string text) => WebUtility.HtmlEncode(text);

    private void Element(string tag, string content, string style = "") =>
        text.Append('<')
            .Append(tag)
            .Append(style.Length == 0 ? "" : $" class=\"{style}\"")
            .Append('>')
            .Append(Escaped(content))
            .Append("</")
            .Append(tag)
            .Append(">\n");

    private void Add(FormattableString markup) => text.Append(markup.ToString(CultureInfo.InvariantCulture));
}
