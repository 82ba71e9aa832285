using System.Globalization;
using System.Text;

namespace AirColumn.Workshop.Sheets;

/// <summary>Drawings as SVG, to stand in a page of HTML that has their styles.</summary>
internal static class SvgText
{
    /// <summary>The drawing, with its label and description for those who cannot see it.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="id">A name that no other drawing of the page has.</param>
    /// <param name="style">The style of the whole.</param>
    public static string Of(Drawing drawing, string id, string style)
    {
        var text = new StringBuilder();
        Add(
            $"<svg class=\"{style}\" viewBox=\"0 0 {drawing.Width:0.##} {drawing.Height:0.##}\" role=\"img\" aria-labelledby=\"{id}-title\" aria-describedby=\"{id}-data\">\n"
        );
        Add(
            $"<title id=\"{id}-title\">{Escaped(drawing.Label)}</title><desc id=\"{id}-data\">{Escaped(drawing.Description)}</desc>\n"
        );
        foreach (var shape in drawing.Shapes)
        {
            switch (shape)
            {
                case Outline { IsClosed: true } outline:
                    Add($"<path{Part(shape)} class=\"{outline.Style}\" d=\"M{Points(outline)} Z\"/>\n");
                    break;
                case Outline outline:
                    Add($"<polyline{Part(shape)} class=\"{outline.Style}\" points=\"{Points(outline)}\"/>\n");
                    break;
                case Circle circle:
                    Add(
                        $"<circle{Part(shape)} class=\"{circle.Style}\" cx=\"{circle.X:0.##}\" cy=\"{circle.Y:0.##}\" r=\"{circle.Radius:0.##}\"/>\n"
                    );
                    break;
                case Label label:
                    Add(
                        $"<text{Part(shape)} class=\"{label.Style}\" x=\"{label.X:0.##}\" y=\"{label.Y:0.##}\">{Escaped(label.Text)}</text>\n"
                    );
                    break;
            }
        }

        return text.Append("</svg>\n").ToString();

        void Add(FormattableString markup) => text.Append(markup.ToString(CultureInfo.InvariantCulture));
    }

    private static string Part(Shape shape) =>
        shape.Part is { } part ? string.Create(CultureInfo.InvariantCulture, $" data-part=\"{part}\"") : "";

    private static string Points(Outline outline) =>
        string.Join(
            ' ',
            outline.Points.Select(point => FormattableString.Invariant($"{point.X:0.##},{point.Y:0.##}"))
        );

    /// <summary>A text as markup: letters of every script stay as they are.</summary>
    public static string Escaped(string text) =>
        text.Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal)
            .Replace("\"", "&quot;", StringComparison.Ordinal);
}
