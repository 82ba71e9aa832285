using System.Globalization;
using System.Text;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Fonts.Standard14Fonts;
using UglyToad.PdfPig.Writer;

namespace AirColumn.Workshop.Sheets;

/// <summary>
/// Pages of A4 as PDF, in fonts that every reader has and nothing embeds: they are written in ASCII here, signs in words, letters without
/// their marks, what is left as a question mark.
/// </summary>
internal sealed class PdfPage : SheetPage, IDisposable
{
    private const double Margin = 36; // points
    private const double Body = 8.8;
    private const double Leading = 1.32;
    private const double Gap = 8; // between columns of a table
    private const double TallestDrawing = 130;

    private readonly PdfDocumentBuilder document = new();
    private readonly PdfDocumentBuilder.AddedFont plain;
    private readonly PdfDocumentBuilder.AddedFont bold;
    private string? heading; // that waits for what comes below it
    private readonly double width;
    private PdfPageBuilder page = null!;
    private double top; // from below

    public PdfPage(string title)
    {
        plain = document.AddStandard14Font(Standard14Font.Helvetica);
        bold = document.AddStandard14Font(Standard14Font.HelveticaBold);
        NewPage();
        width = page.PageSize.Width - 2 * Margin;
        Lines(title, Margin, width, 14, bold);
    }

    /// <summary>All pages.</summary>
    public byte[] ToBytes() => document.Build();

    public void Dispose() => document.Dispose();

    // Written with what comes below it, so that it never stands alone at the foot of a page.
    public override void Heading(string text) => heading = text;

    public override void Paragraph(string text, ParagraphStyle style = ParagraphStyle.Plain)
    {
        Head(2 * Body * Leading);
        var size = style == ParagraphStyle.Note ? Body - 1 : Body;
        var indent = style == ParagraphStyle.Mind ? 8 : 0;
        var before = top;
        Lines(text, Margin + indent, width - indent, size, plain);
        if (style == ParagraphStyle.Mind && before > top)
        {
            page.SetStrokeColor(199, 119, 0);
            page.DrawLine(new PdfPoint(Margin + 2, before), new PdfPoint(Margin + 2, top + 2), 2.5);
            page.ResetColor();
        }

        top -= 2;
    }

    public override void List(IEnumerable<string> items, bool isOrdered)
    {
        Head(2 * Body * Leading);
        var number = 0;
        foreach (var item in items)
        {
            number++;
            Room(Body * Leading);
            Write(
                isOrdered ? string.Create(CultureInfo.InvariantCulture, $"{number}.") : "-",
                Margin + 2,
                top - Body,
                Body,
                plain
            );
            Lines(item, Margin + 14, width - 14, Body, plain);
        }

        top -= 2;
    }

    public override void Table(IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows)
    {
        Head(4 * Body * Leading);
        var all = rows.Prepend(head).Select(row => row.Select(Readable).ToList()).ToList();
        // As wide as their widest cells, all made narrower alike where that is too much.
        var natural = Enumerable
            .Range(0, head.Count)
            .Select(column => all.Max(row => Measure(row[column], Body, bold)) + Gap)
            .ToList();
        var share = Math.Min(1, width / natural.Sum());
        for (var n = 0; n < all.Count; n++)
        {
            var font = n == 0 ? bold : plain;
            var cells = all[n]
                .Select((cell, column) => Wrapped(cell, natural[column] * share - Gap, Body, font))
                .ToList();
            Room(cells.Max(lines => lines.Count) * Body * Leading + 2);
            var (start, x) = (top, Margin);
            for (var column = 0; column < cells.Count; column++)
            {
                for (var line = 0; line < cells[column].Count; line++)
                {
                    Write(cells[column][line], x, start - Body - line * Body * Leading, Body, font);
                }

                x += natural[column] * share;
            }

            top = start - cells.Max(lines => lines.Count) * Body * Leading - 1;
            Rule(0.3, 215);
        }

        top -= 2;
    }

    public override void Draw(Drawing drawing)
    {
        var scale = Math.Min(width / drawing.Width, TallestDrawing / drawing.Height);
        Head(drawing.Height * scale + 4);
        Room(drawing.Height * scale + 4);
        var (left, up) = (Margin + (width - drawing.Width * scale) / 2, top);
        foreach (var shape in drawing.Shapes)
        {
            Ink(shape.Style);
            switch (shape)
            {
                case Outline outline:
                    var points = outline.IsClosed ? [.. outline.Points, outline.Points[0]] : outline.Points;
                    for (var i = 1; i < points.Count; i++)
                    {
                        page.DrawLine(At(points[i - 1]), At(points[i]), Thickness(shape.Style));
                    }

                    break;
                case Circle circle:
                    page.DrawCircle(
                        At((circle.X, circle.Y)),
                        2 * circle.Radius * scale,
                        0.6,
                        shape.Style == "peak"
                    );
                    break;
                case Label label:
                    var font = label.Style == "strong" ? bold : plain;
                    var text = Readable(label.Text);
                    var shift =
                        label.Style is "middle" or "strong" or "small" ? 0.5
                        : label.Style == "end" ? 1
                        : 0;
                    var place = At((label.X, label.Y));
                    Write(text, place.X - shift * Measure(text, 7, font), place.Y, 7, font);
                    break;
            }

            page.ResetColor();
        }

        top -= drawing.Height * scale + 4;

        PdfPoint At((double X, double Y) point) => new(left + scale * point.X, up - scale * point.Y);
    }

    private static double Thickness(string style) =>
        style switch
        {
            "bore" => 1.1,
            "curve" => 0.9,
            "ruler" => 0.7,
            _ => 0.4,
        };

    private void Ink(string style)
    {
        switch (style)
        {
            case "bore" or "curve" or "axis" or "callout" or "peak":
                page.SetStrokeColor(22, 71, 107);
                break;
            case "harmonic":
                page.SetStrokeColor(235, 200, 150);
                break;
            case "grid":
                page.SetStrokeColor(226, 226, 226);
                break;
            case "lead":
                page.SetStrokeColor(136, 136, 136);
                break;
        }

        if (style == "peak")
        {
            page.SetTextAndFillColor(22, 71, 107);
        }
    }

    private void Lines(string text, double x, double room, double size, PdfDocumentBuilder.AddedFont font)
    {
        foreach (var line in Wrapped(Readable(text), room, size, font))
        {
            Room(size * Leading);
            Write(line, x, top - size, size, font);
            top -= size * Leading;
        }
    }

    private List<string> Wrapped(string text, double room, double size, PdfDocumentBuilder.AddedFont font)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Measure(longer, size, font) > room)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        lines.Add(line);
        return lines;
    }

    private void Rule(double thickness, byte grey)
    {
        page.SetStrokeColor(grey, grey, grey);
        page.DrawLine(new PdfPoint(Margin, top), new PdfPoint(Margin + width, top), thickness);
        page.ResetColor();
        top -= 2;
    }

    private void Room(double height)
    {
        if (top - height < Margin)
        {
            NewPage();
        }
    }

    private void NewPage()
    {
        page = document.AddPage(PageSize.A4);
        top = page.PageSize.Height - Margin;
    }

    private void Write(string text, double x, double y, double size, PdfDocumentBuilder.AddedFont font)
    {
        if (text.Length > 0)
        {
            page.AddText(text, size, new PdfPoint(x, y), font);
        }
    }

    private double Measure(string text, double size, PdfDocumentBuilder.AddedFont font)
    {
        if (text.Length == 0)
        {
            return 0;
        }

        var letters = page.MeasureText(text, size, new PdfPoint(0, 0), font);
        return letters[^1].EndBaseLine.X;
    }

    private void Head(double below)
    {
        if (heading is not { } text)
        {
            return;
        }

        heading = null;
        Room(10.5 * Leading + 8 + below);
        top -= 6;
        Lines(text, Margin, width, 10.5, bold);
        Rule(0.6, 150);
    }

    private static string Readable(string text)
    {
        var result = new StringBuilder();
        foreach (var sign in text.Normalize(NormalizationForm.FormD))
        {
            _ = sign switch
            {
                >= ' ' and <= '~' => result.Append(sign),
                '°' => result.Append("deg "),
                '±' => result.Append("+/-"),
                '−' or '–' => result.Append('-'),
                _ when CharUnicodeInfo.GetUnicodeCategory(sign) == UnicodeCategory.NonSpacingMark => result,
                _ => result.Append('?'),
            };
        }

        return result.ToString();
    }
}
