using AirColumn.Workshop.Instruments;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>
/// Pages of HTML to print at full size, on A4 or Letter, and to wrap round a pipe or to lay a bend on; each page has a line to measure first.
/// </summary>
public static class Templates
{
    private const double StripWidth = 50; // along the pipe, mm
    private const double Tab = 8; // what goes under the other end, mm
    private const double PieceLength = 170; // of a flute, mm

    /// <summary>A strip to wrap round a pipe, whose line is a square cut.</summary>
    /// <param name="outside">Outside diameter of the pipe: 5 mm to 600 mm.</param>
    /// <param name="units">In which units lengths are written.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is out of range, or the units are not among the named ones.</exception>
    public static string SquareCut(Length outside, LengthUnits units)
    {
        Require.InRange(outside.Millimeters, 5, 600, "mm", nameof(outside));
        var sizes = new Sizes(Require.Named(units));
        var around = Math.PI * outside.Millimeters;
        var page = new TemplatePage(
            TemplateWords.CutTitle,
            TemplateWords.CutNote(sizes.Caliper(outside), sizes.Tape(Length.FromMillimeters(around)))
        );
        var count = (int)Math.Ceiling(around / (TemplatePage.Highest - Tab));
        for (var i = 0; i < count; i++)
        {
            page.Add(CutPiece(around / count, i, count));
        }

        return page.ToString();
    }

    /// <summary>The finger holes of a flute, to wrap round it, in as many pieces as it takes.</summary>
    /// <param name="flute">The flute.</param>
    /// <param name="units">In which units lengths are written.</param>
    /// <exception cref="ArgumentOutOfRangeException">The units are not among the named ones, or the pipe is too wide for a page.</exception>
    public static string Holes(FingeredFlute flute, LengthUnits units)
    {
        ArgumentNullException.ThrowIfNull(flute);
        var sizes = new Sizes(Require.Named(units));
        var around = Math.PI * flute.Outside.Millimeters;
        Require.InRange(around, 15, TemplatePage.Highest - Tab, "mm around", nameof(flute));
        var page = new TemplatePage(
            TemplateWords.HolesTitle,
            TemplateWords.HolesNote(sizes.Caliper(flute.Outside))
        );
        var covered = flute.Holes.Max(hole => hole.FromEnd.Millimeters) + 20;
        var count = (int)Math.Ceiling(covered / PieceLength);
        for (var i = 0; i < count; i++)
        {
            page.Add(HolePiece(flute, i, count, around, sizes));
        }

        return page.ToString();
    }

    /// <summary>A bend to lay a heated pipe on.</summary>
    /// <param name="radius">Radius to the middle of the pipe: 10 mm to 10 m.</param>
    /// <param name="angle">How far it turns: above 0 to 3600°.</param>
    /// <param name="outside">Outside diameter of the pipe: 5 mm to 150 mm, and less than twice the radius.</param>
    /// <param name="units">In which units lengths are written.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is out of range, or the units are not among the named ones.</exception>
    public static string Bend(Length radius, Angle angle, Length outside, LengthUnits units)
    {
        Require.InRange(radius.Millimeters, 10, 10_000, "mm", nameof(radius));
        Require.InRange(angle.Degrees, 1e-3, 3600, "°", nameof(angle));
        Require.InRange(outside.Millimeters, 5, Math.Min(150, 2 * radius.Millimeters), "mm", nameof(outside));
        var sizes = new Sizes(Require.Named(units));
        var (middle, half) = (radius.Millimeters, outside.Millimeters / 2);
        var count = 1;
        while (!Fits(middle, half, angle.Radians / count))
        {
            count++;
        }

        var page = new TemplatePage(
            TemplateWords.BendTitle,
            TemplateWords.BendNote(
                sizes.Tape(radius),
                FormattableString.Invariant($"{angle.Degrees:0.#}°"),
                sizes.Tape(Length.FromMillimeters(middle * angle.Radians))
            ) + TemplateWords.Turned(count, angle.Degrees / count)
        );
        page.Add(BendPiece(middle, half, angle.Radians / count));
        return page.ToString();
    }

    // The line lies in the middle of the strip, the pipe's way round downwards.
    private static FullSizePiece CutPiece(double length, int number, int count)
    {
        var piece = new FullSizePiece(StripWidth, length + Tab, TemplateWords.CutTitle);
        piece.Box("scissors", 0, 0, StripWidth, length + Tab);
        piece.Line("saw", StripWidth / 2, 0, StripWidth / 2, length);
        piece.Line("thin", 0, length, StripWidth, length);
        piece.Text("", 2, 5, TemplateWords.CutHere);
        piece.Text("middle", StripWidth / 2, length + 5, TemplateWords.Overlap);
        if (count > 1)
        {
            piece.Text("end", StripWidth - 2, 5, Letter(number + count - 1, count));
            piece.Text("end", StripWidth - 2, length - 2, Letter(number, count));
        }

        return piece;
    }

    // The open end is at the right of the first piece; the pipe's way round is downwards, its holes along the middle.
    private static FullSizePiece HolePiece(
        FingeredFlute flute,
        int number,
        int count,
        double around,
        Sizes sizes
    )
    {
        var piece = new FullSizePiece(PieceLength, around + Tab, TemplateWords.HolesTitle);
        var axis = around / 2;
        piece.Box("scissors", 0, 0, PieceLength, around + Tab);
        piece.Line("thin", 0, axis, PieceLength, axis);
        piece.Line("thin", 0, around, PieceLength, around);
        piece.Text("middle", PieceLength / 2, around + 5, TemplateWords.Overlap);
        piece.Text(
            "end",
            PieceLength - 2,
            5,
            number == 0 ? TemplateWords.ToTheEnd : Letter(number - 1, count)
        );
        piece.Text("", 2, 5, number == count - 1 ? TemplateWords.ToTheMouth : Letter(number, count));
        for (var at = 0; at <= PieceLength; at += 10)
        {
            piece.Line("thin", PieceLength - at, around - 2, PieceLength - at, around);
        }

        foreach (var hole in flute.Holes)
        {
            var x = PieceLength - (hole.FromEnd.Millimeters - number * PieceLength);
            var radius = hole.Diameter.Millimeters / 2;
            // A hole that lies on a joint is on both pieces.
            if (x < -radius || x > PieceLength + radius)
            {
                continue;
            }

            piece.Circle("hole", x, axis, radius);
            piece.Line("thin", x, axis - radius - 3, x, axis + radius + 3);
            piece.Text(
                "middle",
                Math.Clamp(x, 14, PieceLength - 14),
                axis - radius - 4,
                TemplateWords.Hole(hole.Number, sizes.Gap(hole.Diameter))
            );
        }

        return piece;
    }

    private static bool Fits(double middle, double half, double angle)
    {
        var (width, height) = Box(middle, half, angle);
        return angle <= 2 * Math.PI && width <= TemplatePage.Widest && height <= TemplatePage.Highest;
    }

    // The sector turns from straight up, to the right.
    private static (double Width, double Height) Box(double middle, double half, double angle)
    {
        var corners = Corners(middle, half, angle).ToList();
        return (corners.Max(p => p.X) - corners.Min(p => p.X), corners.Max(p => p.Y) - corners.Min(p => p.Y));
    }

    private static IEnumerable<(double X, double Y)> Corners(double middle, double half, double angle) =>
        Arc(middle - half, angle).Concat(Arc(middle + half, angle));

    private static IEnumerable<(double X, double Y)> Arc(double radius, double angle) =>
        Enumerable
            .Range(0, 181)
            .Select(i => i * angle / 180)
            .Select(at => (-radius * Math.Cos(at), -radius * Math.Sin(at)));

    private static FullSizePiece BendPiece(double middle, double half, double angle)
    {
        var corners = Corners(middle, half, angle).ToList();
        var (left, top) = (corners.Min(p => p.X), corners.Min(p => p.Y));
        var (width, height) = Box(middle, half, angle);
        var piece = new FullSizePiece(width, height, TemplateWords.BendTitle);
        List<(double X, double Y)> Placed(double radius) =>
            [.. Arc(radius, angle).Select(p => (p.X - left, p.Y - top))];

        var (inner, outer) = (Placed(middle - half), Placed(middle + half));
        piece.Outline("tube", [.. inner, .. outer.AsEnumerable().Reverse(), inner[0]]);
        piece.Outline("thin", Placed(middle));
        return piece;
    }

    private static string Letter(int number, int count) =>
        $"{TemplateWords.Join} {(char)('A' + number % count)}";
}
