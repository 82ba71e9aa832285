using System.Globalization;
using System.Text;
using AirColumn.Bores;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>A side view of a bore to scale, as SVG: lengths and heights each to their own scale, which it states.</summary>
internal static class BoreDrawing
{
    private const double Width = 720; // of the drawing, in SVG units
    private const double Margin = 20;
    private const double TallestHalf = 62;
    private const double Samples = 24; // of a section that is not straight

    public static string Of(AssembledTube tube, Sizes sizes)
    {
        var bore = tube.Bore;
        var length = bore.Length.Millimeters;
        var widest = bore.Sections.Max(section =>
            Math.Max(section.InletDiameter.Millimeters, section.OutletDiameter.Millimeters)
        );
        // As long as there is room for; a wide short bore less, so that its height fits.
        var across = Math.Min((Width - 2 * Margin) / length, 2 * TallestHalf / widest);
        // As tall as there is room for, up to eight times the scale of the length.
        var up = Math.Min(8 * across, 2 * TallestHalf / widest);
        var middle = TallestHalf + 34;
        var svg = new StringBuilder();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg viewBox=\"0 0 {Width:0} {2 * middle + 26:0}\" role=\"img\" aria-label=\"{SheetWords.SideView}\">\n"
        );
        var (top, bottom) = (new StringBuilder(), new StringBuilder());
        var x = 0.0;
        double[] lastOnSide = [0, 0];
        for (var i = 0; i < bore.Sections.Count; i++)
        {
            var section = bore.Sections[i];
            var steps = section is CylinderSection or BendSection or ConeSection ? 1 : Samples;
            for (var n = 0; n <= steps; n++)
            {
                var at = section.Length.Millimeters * n / steps;
                var radius = RadiusAt(section, n / steps) * up;
                Point(top, X(x + at), middle - radius);
                bottom.Insert(0, PointText(X(x + at), middle + radius));
            }

            Callout(
                svg,
                i + 1,
                X(x + section.Length.Millimeters / 2),
                middle,
                RadiusAt(section, 0.5) * up,
                lastOnSide
            );
            x += section.Length.Millimeters;
        }

        svg.Append(
            CultureInfo.InvariantCulture,
            $"<path class=\"bore\" d=\"M{top.ToString().Trim()} L{bottom.ToString().Trim()} Z\"/>\n"
        );
        Line(svg, "axis", X(0), middle, X(length), middle);
        var ruler = 2 * middle - 8;
        Line(svg, "ruler", X(0), ruler, X(length), ruler);
        Line(svg, "ruler", X(0), ruler - 5, X(0), ruler + 5);
        Line(svg, "ruler", X(length), ruler - 5, X(length), ruler + 5);
        Text(svg, "size", X(length / 2), ruler + 18, SheetWords.InAll(sizes.Tape(bore.Length)));
        Text(svg, "left", X(0), ruler + 18, SheetWords.Lips);
        Text(svg, "right", X(length), ruler + 18, SheetWords.OpenEnd);
        svg.Append("</svg>\n");
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<p class=\"note\">{(up > 1.05 * across ? SheetWords.DrawnHigher(up / across) : SheetWords.DrawnToScale)}{(bore.Sections.Any(section => section is BendSection) ? SheetWords.BendsDrawnStraight : "")}</p>\n"
        );
        return svg.ToString();

        double X(double millimetres) => Margin + millimetres * across;
    }

    // Through the diameters that a section shows: parts of the shop are straight or slightly conical.
    private static double RadiusAt(Section section, double share) =>
        (
            section.InletDiameter.Millimeters
            + share * (section.OutletDiameter.Millimeters - section.InletDiameter.Millimeters)
        ) / 2;

    // Above and below in turn, moved on where the last on the same side is too near.
    private static void Callout(
        StringBuilder svg,
        int number,
        double x,
        double middle,
        double radius,
        double[] lastOnSide
    )
    {
        var side = number % 2;
        var y = side == 0 ? middle - TallestHalf - 10 : middle + TallestHalf + 4;
        var at = Math.Max(x, lastOnSide[side] + 19);
        if (at > Width - 9)
        {
            // No more room: the table has them all.
            return;
        }

        lastOnSide[side] = at;
        Line(svg, "lead", at, side == 0 ? y + 8 : y - 8, x, middle + (side == 0 ? -radius : radius));
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<circle class=\"callout\" cx=\"{at:0.##}\" cy=\"{y:0.##}\" r=\"8\"/>\n"
        );
        Text(svg, "number", at, y + 3.5, number.ToString(CultureInfo.InvariantCulture));
    }

    private static void Point(StringBuilder path, double x, double y) => path.Append(PointText(x, y));

    private static string PointText(double x, double y) => FormattableString.Invariant($" {x:0.##},{y:0.##}");

    private static void Line(StringBuilder svg, string style, double x1, double y1, double x2, double y2) =>
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<line class=\"{style}\" x1=\"{x1:0.##}\" y1=\"{y1:0.##}\" x2=\"{x2:0.##}\" y2=\"{y2:0.##}\"/>\n"
        );

    private static void Text(StringBuilder svg, string style, double x, double y, string text) =>
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<text class=\"{style}\" x=\"{x:0.##}\" y=\"{y:0.##}\">{Html.Escaped(text)}</text>\n"
        );
}
