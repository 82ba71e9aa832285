using System.Globalization;
using System.Text;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Sheets;

/// <summary>
/// Drawings to be printed at full size, on A4 or Letter: no piece is larger than what both leave within their margins, and each page of it
/// begins with a line to measure.
/// </summary>
internal sealed class TemplatePage
{
    /// <summary>How wide a piece may be, mm.</summary>
    public const double Widest = 186;

    /// <summary>How high, mm, below the ruler.</summary>
    public const double Highest = 205;

    private readonly StringBuilder text = new();
    private readonly string title;
    private readonly string note;

    public TemplatePage(string title, string note)
    {
        (this.title, this.note) = (title, note);
        text.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
            .Append(SvgText.Escaped(title))
            .Append("</title>\n<style>\n")
            .Append(Css.ReplaceLineEndings("\n"))
            .Append("\n</style>\n</head>\n<body>\n<main>\n");
    }

    private const string Css = """
        @page { margin: 10mm; }
        body { margin: 0; background: #ffffff; color: #000000; font: 3.6mm/1.35 'Atkinson Hyperlegible', system-ui, sans-serif; }
        main { padding: 3mm; }
        section { break-after: page; break-inside: avoid; } section:last-child { break-after: auto; }
        h1 { font-size: 5mm; margin: 0 0 1mm; } p { margin: 0 0 1.5mm; max-width: 180mm; }
        svg { display: block; margin: 0 0 2mm; overflow: visible; }
        svg text { font: 3.4px 'Atkinson Hyperlegible', system-ui, sans-serif; fill: #000000; }
        text.middle { text-anchor: middle; } text.end { text-anchor: end; }
        .scissors { fill: none; stroke: #000000; stroke-width: .25; stroke-dasharray: 2 1; }
        .saw { fill: none; stroke: #8f3207; stroke-width: .7; }
        .thin { fill: none; stroke: #333333; stroke-width: .2; }
        .hole { fill: none; stroke: #0b5a5a; stroke-width: .5; }
        .tube { fill: #e2efee; stroke: #0b5a5a; stroke-width: .4; }
        @media print { main { padding: 0; } }
        """;

    /// <summary>A piece with a page to itself, below what it is and the ruler.</summary>
    public void Add(FullSizePiece piece)
    {
        text.Append("<section>\n<h1>")
            .Append(SvgText.Escaped(title))
            .Append("</h1>\n<p>")
            .Append(SvgText.Escaped(note))
            .Append("</p>\n");
        var ruler = new FullSizePiece(104, 6, TemplateWords.Ruler);
        ruler.Line("saw", 2, 3, 102, 3);
        for (var at = 0; at <= 100; at += 10)
        {
            ruler.Line("thin", 2 + at, 1, 2 + at, 5);
        }

        Append(ruler);
        text.Append("<p>").Append(SvgText.Escaped(TemplateWords.Ruler)).Append("</p>\n");
        Append(piece);
        text.Append("</section>\n");
    }

    public override string ToString() => $"{text}</main>\n</body>\n</html>\n";

    private void Append(FullSizePiece piece) =>
        text.Append(
                CultureInfo.InvariantCulture,
                $"<svg role=\"img\" aria-label=\"{SvgText.Escaped(piece.Label)}\" width=\"{piece.Width:0.###}mm\" height=\"{piece.Height:0.###}mm\" viewBox=\"0 0 {piece.Width:0.###} {piece.Height:0.###}\">\n"
            )
            .Append(piece)
            .Append("</svg>\n");
}
