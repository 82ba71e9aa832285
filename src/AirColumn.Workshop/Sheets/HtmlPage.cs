using System.Text;
using System.Text.RegularExpressions;

namespace AirColumn.Workshop.Sheets;

/// <summary>
/// A page of HTML that needs nothing else: blocks from top to bottom, drawings as SVG. Every text is escaped; a number stays on one line with
/// its fraction and its unit.
/// </summary>
internal sealed partial class HtmlPage
{
    // No text has it: it is taken out of what comes in.
    private const string MayBreak = "\u200b";

    private readonly StringBuilder text = new();
    private int drawings;
    private int sections;

    /// <param name="kind">What kind of page it is.</param>
    /// <param name="title">What stands above it.</param>
    public HtmlPage(string kind, string title) =>
        text.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
            .Append(Escaped(title))
            .Append("</title>\n<style>\n")
            .Append(SheetStyle.Css.ReplaceLineEndings("\n"))
            .Append("\n</style>\n</head>\n<body>\n<main>\n<p class=\"kind\">")
            .Append(Escaped(kind))
            .Append("</p>\n<h1>")
            .Append(Escaped(title))
            .Append("</h1>\n");

    /// <summary>All of it.</summary>
    public override string ToString() =>
        $"{text}{(sections > 0 ? "</section>\n" : "")}</main>\n</body>\n</html>\n";

    /// <summary>A heading, which begins a section.</summary>
    public void Heading(string heading)
    {
        text.Append(sections++ > 0 ? "</section>\n" : "").Append("<section>\n");
        Element("h2", heading);
    }

    /// <summary>What matters most, large, between what it is and what to do then.</summary>
    public void First(string what, IReadOnlyList<string> choices, string or, string then)
    {
        text.Append("<div class=\"first\">\n");
        Element("p", what);
        text.Append("<p class=\"cut\">")
            .AppendJoin(
                ' ',
                choices.Select(
                    (choice, i) =>
                        (i > 0 ? $"<span><span class=\"or\">{Escaped(or)}</span> " : "<span>")
                        + $"{Marked(choice)}</span>"
                )
            )
            .Append("</p>\n");
        Element("p", then);
        text.Append("</div>\n");
    }

    /// <summary>A paragraph.</summary>
    public void Paragraph(string paragraph) => Element("p", paragraph);

    /// <summary>A small paragraph beside what it is about.</summary>
    public void Note(string note) => Element("p", note, "note");

    /// <summary>A paragraph in a frame.</summary>
    public void Remark(string remark) => Element("p", remark, "remark");

    /// <summary>Cautions, each marked by its colour, its bar and its sign.</summary>
    public void Cautions(IEnumerable<Caution> cautions, string source)
    {
        text.Append("<div class=\"cautions\">\n");
        foreach (var caution in cautions)
        {
            text.Append("<div class=\"caution\" role=\"note\"><p><strong>")
                .Append(Escaped(caution.Title))
                .Append(".</strong> ")
                .Append(Marked(caution.Text))
                .Append(
                    // Figures are always said to be from somewhere.
                    caution.Text.Any(char.IsDigit)
                        ? $" <span class=\"source\">({Marked($"{source}: {caution.Source}")})</span>"
                        : ""
                )
                .Append("</p></div>\n");
        }

        text.Append("</div>\n");
    }

    /// <summary>A list.</summary>
    public void List(IEnumerable<string> items)
    {
        text.Append("<ul>\n");
        foreach (var item in items)
        {
            Element("li", item);
        }

        text.Append("</ul>\n");
    }

    /// <summary>Steps, each beside its picture.</summary>
    public void Steps(IEnumerable<FitStep> steps)
    {
        text.Append("<ol class=\"steps\">\n");
        foreach (var step in steps)
        {
            text.Append("<li>\n").Append(Svg(step.Picture, "step")).Append("<div>\n");
            Element("p", step.Text);
            Element("p", step.Uses, "uses");
            foreach (var remark in step.Remarks)
            {
                Remark(remark);
            }

            text.Append("</div>\n</li>\n");
        }

        text.Append("</ol>\n");
    }

    /// <summary>A table; the first cell of each row heads the row.</summary>
    public void Table(string caption, IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows)
    {
        text.Append("<table>\n<caption>").Append(Marked(caption)).Append("</caption>\n<thead><tr>");
        foreach (var cell in head)
        {
            text.Append("<th scope=\"col\">").Append(Marked(cell)).Append("</th>");
        }

        text.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in rows)
        {
            text.Append("<tr><th scope=\"row\">").Append(Marked(row[0])).Append("</th>");
            foreach (var cell in row.Skip(1))
            {
                text.Append("<td>").Append(Marked(cell)).Append("</td>");
            }

            text.Append("</tr>\n");
        }

        text.Append("</tbody>\n</table>\n");
    }

    /// <summary>A drawing as wide as the page.</summary>
    public void Figure(Drawing drawing, string caption)
    {
        text.Append("<figure>\n").Append(Svg(drawing, "wide"));
        Element("figcaption", caption);
        text.Append("</figure>\n");
    }

    private string Svg(Drawing drawing, string style) => SvgText.Of(drawing, $"picture-{++drawings}", style);

    private void Element(string tag, string content, string style = "") =>
        text.Append('<')
            .Append(tag)
            .Append(style.Length == 0 ? "" : $" class=\"{style}\"")
            .Append('>')
            .Append(Marked(content))
            .Append("</")
            .Append(tag)
            .Append(">\n");

    // Not by spaces that do not break: what is copied from the page must still be read by a program.
    private static string Marked(string content) =>
        Quantity()
            .Replace(
                Escaped(
                    LongWord().Replace(content.Replace(MayBreak, "", StringComparison.Ordinal), Breakable)
                ),
                "<span class=\"q\">$0</span>"
            )
            .Replace(MayBreak, "<wbr>", StringComparison.Ordinal);

    // A name as long as a line must not burst a table.
    private static string Breakable(Match word) =>
        string.Concat(
            word.Value.Select(
                (c, i) => i > 0 && i % 10 == 0 && !char.IsLowSurrogate(c) ? $"{MayBreak}{c}" : $"{c}"
            )
        );

    private static string Escaped(string text) => SvgText.Escaped(text);

    [GeneratedRegex(@"\S{15,}", RegexOptions.CultureInvariant)]
    private static partial Regex LongWord();

    [GeneratedRegex(
        @"\(?±?[-+]?\d+(?:\.\d+)?(?:-\d+)?(?:/\d+| \d+/\d+)? ?(?:mm|in|ft|m|cents?|Hz|dB|°C|°F|°|%|s)(?!\w)\)?",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Quantity();
}
