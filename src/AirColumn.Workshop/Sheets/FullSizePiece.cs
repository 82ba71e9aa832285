using System.Globalization;
using System.Text;

namespace AirColumn.Workshop.Sheets;

/// <summary>A drawing whose units are millimetres of paper.</summary>
/// <param name="width">mm.</param>
/// <param name="height">mm.</param>
/// <param name="label">What it shows.</param>
internal sealed class FullSizePiece(double width, double height, string label)
{
    private readonly StringBuilder text = new();

    public double Width => width;

    public double Height => height;

    public string Label => label;

    public void Line(string style, double x1, double y1, double x2, double y2) =>
        Add(
            $"<line class=\"{style}\" x1=\"{x1:0.###}\" y1=\"{y1:0.###}\" x2=\"{x2:0.###}\" y2=\"{y2:0.###}\"/>"
        );

    public void Box(string style, double x, double y, double wide, double high) =>
        Add(
            $"<rect class=\"{style}\" x=\"{x:0.###}\" y=\"{y:0.###}\" width=\"{wide:0.###}\" height=\"{high:0.###}\"/>"
        );

    public void Circle(string style, double x, double y, double radius) =>
        Add($"<circle class=\"{style}\" cx=\"{x:0.###}\" cy=\"{y:0.###}\" r=\"{radius:0.###}\"/>");

    public void Outline(string style, IEnumerable<(double X, double Y)> points) =>
        Add(
            $"<polyline class=\"{style}\" points=\"{string.Join(' ', points.Select(p => FormattableString.Invariant($"{p.X:0.###},{p.Y:0.###}")))}\"/>"
        );

    public void Text(string style, double x, double y, string words) =>
        Add($"<text class=\"{style}\" x=\"{x:0.###}\" y=\"{y:0.###}\">{SvgText.Escaped(words)}</text>");

    public override string ToString() => text.ToString();

    private void Add(FormattableString markup) =>
        text.Append(markup.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
