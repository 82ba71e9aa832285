using System.Net;
using System.Text;

namespace AirColumn.Workshop.Sheets;

/// <summary>Pieces of a page: every text is escaped.</summary>
internal static class Html
{
    public static string Escaped(string text) => WebUtility.HtmlEncode(text);

    public static void Heading(this StringBuilder page, string text) =>
        page.Append("<h2>").Append(Escaped(text)).Append("</h2>\n");

    public static void Paragraph(this StringBuilder page, string text, string style = "") =>
        page.Append(style.Length == 0 ? "<p>" : $"<p class=\"{style}\">")
            .Append(Escaped(text))
            .Append("</p>\n");

    public static void List(this StringBuilder page, IEnumerable<string> items, bool isOrdered)
    {
        var tag = isOrdered ? "ol" : "ul";
        page.Append('<').Append(tag).Append(">\n");
        foreach (var item in items)
        {
            page.Append("<li>").Append(Escaped(item)).Append("</li>\n");
        }

        page.Append("</").Append(tag).Append(">\n");
    }

    public static void Table(
        this StringBuilder page,
        IReadOnlyList<string> head,
        IEnumerable<IReadOnlyList<string>> rows
    )
    {
        page.Append("<table>\n<thead><tr>");
        foreach (var cell in head)
        {
            page.Append("<th>").Append(Escaped(cell)).Append("</th>");
        }

        page.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in rows)
        {
            page.Append("<tr>");
            foreach (var cell in row)
            {
                page.Append("<td>").Append(Escaped(cell)).Append("</td>");
            }

            page.Append("</tr>\n");
        }

        page.Append("</tbody>\n</table>\n");
    }
}
