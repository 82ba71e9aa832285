using System.Globalization;
using AirColumn.Workshop.Instruments;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>
/// Pages of HTML to print at full size, on A4 or Letter, and to wrap round a pipe or to lay a bend on; each page has a line to measure first.
/// </summary>
public static class Templates
{
    private const double StripWidth = 50; // along the pipe, mm

    /// <summary>A strip to wrap round a pipe. Its line marks a square cut.</summary>
    /// <param name="outside">Outside diameter of the pipe: 5 mm to 600 mm.</param>
    /// <param name="units">The units in which lengths are written.</param>
    /// <returns>The HTML page.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is out of range, or the units are not defined.</exception>
    public static string SquareCut(Length outside, LengthUnits units)
    {
        Require.InRange(outside.Millimeters, 5, 600, "mm", nameof(outside));
        var sizes = new Sizes(Require.Named(units));
        var around = Math.PI * outside.Millimeters;
        var page = new TemplatePage(
            TemplateWords.CutTitle,
            TemplateWords.CutNote(sizes.Caliper(outside), sizes.Tape(Length.FromMillimeters(around)))
        );
        var count = (int)Math.Ceiling(around / (TemplatePage.Highest - HoleTemplate.Tab));
        for (var i = 0; i < count; i++)
        {
            page.Add(CutPiece(around / count, i, count));
        }

        return page.ToString();
    }

    /// <summary>The finger holes of a flute, to wrap round it, on as many pages as needed.</summary>
    /// <param name="flute">The flute.</param>
    /// <param name="units">The units in which lengths are written.</param>
    /// <returns>The HTML page.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined, or the pipe is too wide for a page.</exception>
    public static string Holes(FingeredFlute flute, LengthUnits units)
    {
        ArgumentNullException.ThrowIfNull(flute);
        var sizes = new Sizes(Require.Named(units));
        return new HoleTemplate(flute.Outside, TemplateWords.ToTheEnd, TemplateWords.ToTheMouth).Page(
            [
                .. flute.Holes.Select(hole =>
                    (
                        TemplateWords.Hole(
                            hole.Number.ToString(CultureInfo.InvariantCulture),
                            sizes.Gap(hole.Diameter)
                        ),
                        hole.Diameter,
                        hole.FromEnd
                    )
                ),
            ],
            TemplateWords.HolesNote(sizes.Caliper(flute.Outside), TemplateWords.ToTheEnd)
        );
    }

    /// <summary>
    /// The template for a part of a tube. For a pipe it is the saw line, for a bend the arc. For a hole it shows all holes of the pipe that
    /// are measured from the same end.
    /// </summary>
    /// <param name="assembly">The parts.</param>
    /// <param name="part">The index of the part: 0 is at the blown end.</param>
    /// <param name="units">The units in which lengths are written.</param>
    /// <returns>The HTML page.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// There is no such part, the part is too large for a page, or the units are not defined.
    /// </exception>
    /// <exception cref="ArgumentException">There is nothing to print for such a part.</exception>
    public static string Of(TubeAssembly assembly, int part, LengthUnits units)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        Require.InRange(part, 0, assembly.Parts.Count - 1, "");
        return assembly.Parts[part] switch
        {
            PipePart pipe => SquareCut(pipe.Outside, units),
            BendPart bend => Bend(bend.Radius, bend.Angle, assembly.PipeAt(part).Outside, units),
            HolePart hole => Holes(assembly, part, hole.From, units),
            var other => throw new ArgumentException(TemplateWords.NoTemplate(other), nameof(part)),
        };
    }

    private static string Holes(TubeAssembly assembly, int part, PipeEnd from, LengthUnits units)
    {
        var sizes = new Sizes(Require.Named(units));
        var pipe = assembly.PipeAt(part);
        var (edge, away) =
            from == PipeEnd.Lips
                ? (TemplateWords.LipsEdge, TemplateWords.ToTheOpenEnd)
                : (TemplateWords.OpenEdge, TemplateWords.ToTheLips);
        return new HoleTemplate(pipe.Outside, edge, away).Page(
            [
                .. assembly
                    .Parts.Where(
                        (other, i) =>
                            other is HolePart hole
                            && hole.From == from
                            && ReferenceEquals(assembly.PipeAt(i), pipe)
                    )
                    .Cast<HolePart>()
                    .Select(hole =>
                        (TemplateWords.Hole(hole.Name, sizes.Gap(hole.Diameter)), hole.Diameter, hole.At)
                    ),
            ],
            TemplateWords.HolesNote(sizes.Caliper(pipe.Outside), edge)
        );
    }

    /// <summary>A bend to lay a heated pipe on.</summary>
    /// <param name="radius">Radius to the middle of the pipe: 10 mm to 10 m.</param>
    /// <param name="angle">The angle of the turn: above 0, up to 3600°.</param>
    /// <param name="outside">Outside diameter of the pipe: 5 mm to 150 mm, and less than twice the radius.</param>
    /// <param name="units">The units in which lengths are written.</param>
    /// <returns>The HTML page.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A size is out of range, or the units are not defined.</exception>
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
        var piece = new FullSizePiece(StripWidth, length + HoleTemplate.Tab, TemplateWords.CutTitle);
        piece.Box("scissors", 0, 0, StripWidth, length + HoleTemplate.Tab);
        piece.Line("saw", StripWidth / 2, 0, StripWidth / 2, length);
        piece.Line("thin", 0, length, StripWidth, length);
        piece.Text("", 2, 5, TemplateWords.CutHere);
        piece.Text("middle", StripWidth / 2, length + 5, TemplateWords.Overlap);
        if (count > 1)
        {
            piece.Text("end", StripWidth - 2, 5, TemplateWords.JoinAt(number + count - 1, count));
            piece.Text("end", StripWidth - 2, length - 2, TemplateWords.JoinAt(number, count));
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
}
