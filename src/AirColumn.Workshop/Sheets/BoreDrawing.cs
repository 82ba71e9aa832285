using System.Globalization;
using AirColumn.Bores;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Sheets;

/// <summary>A side view of a bore to scale: lengths and heights each to their own scale, which it states.</summary>
internal static class BoreDrawing
{
    private const double Width = 720; // of the drawing
    private const double Margin = 20;
    private const double TallestHalf = 62;
    private const double Middle = TallestHalf + 34;

    /// <summary>The drawing, and what to say below it.</summary>
    public static (Drawing Drawing, string Note) Of(AssembledTube tube, Sizes sizes)
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
        var drawing = new Drawing(Width, 2 * Middle + 26, SheetWords.SideView);
        var (top, bottom) = (new List<(double X, double Y)>(), new List<(double X, double Y)>());
        var callouts = new double[] { 0, 0 };
        var x = 0.0;
        for (var i = 0; i < bore.Sections.Count; i++)
        {
            var section = bore.Sections[i];
            foreach (var share in new[] { 0.0, 1 })
            {
                var (at, radius) = (X(x + share * section.Length.Millimeters), RadiusAt(section, share) * up);
                top.Add((at, Middle - radius));
                bottom.Add((at, Middle + radius));
            }

            Callout(
                drawing,
                i + 1,
                X(x + section.Length.Millimeters / 2),
                RadiusAt(section, 0.5) * up,
                callouts
            );
            x += section.Length.Millimeters;
        }

        bottom.Reverse();
        drawing.Outline("bore", [.. top, .. bottom], true);
        drawing.Line("axis", X(0), Middle, X(length), Middle);
        const double Ruler = 2 * Middle - 8;
        drawing.Line("ruler", X(0), Ruler, X(length), Ruler);
        drawing.Line("ruler", X(0), Ruler - 5, X(0), Ruler + 5);
        drawing.Line("ruler", X(length), Ruler - 5, X(length), Ruler + 5);
        drawing.Text("middle", X(length / 2), Ruler + 18, SheetWords.InAll(sizes.Tape(bore.Length)));
        drawing.Text("start", X(0), Ruler + 18, SheetWords.Lips);
        drawing.Text("end", X(length), Ruler + 18, SheetWords.OpenEnd);
        return (
            drawing,
            (up > 1.05 * across ? SheetWords.DrawnHigher(up / across) : SheetWords.DrawnToScale)
                + (bore.Sections.Any(section => section is BendSection) ? SheetWords.BendsDrawnStraight : "")
        );

        double X(double millimetres) => Margin + millimetres * across;
    }

    // Straight from end to end: parts of the shop are cylinders and cones.
    private static double RadiusAt(Section section, double share) =>
        (
            section.InletDiameter.Millimeters
            + share * (section.OutletDiameter.Millimeters - section.InletDiameter.Millimeters)
        ) / 2;

    // Below and above in turn, moved on where the last on the same side is too near.
    private static void Callout(Drawing drawing, int number, double x, double radius, double[] lastOnSide)
    {
        var (side, sign) = number % 2 == 0 ? (0, -1) : (1, 1);
        var y = Middle + sign * (TallestHalf + 7);
        var at = Math.Max(x, lastOnSide[side] + 19);
        if (at > Width - 9)
        {
            // No more room: the table has them all.
            return;
        }

        lastOnSide[side] = at;
        drawing.Line("lead", at, y - sign * 8, x, Middle + sign * radius);
        drawing.Circle("callout", at, y, 8);
        drawing.Text("middle", at, y + 3.5, number.ToString(CultureInfo.InvariantCulture));
    }
}
