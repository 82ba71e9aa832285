using System.Globalization;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Sheets;

/// <summary>
/// A side view of a bore: to one scale where it bends, else lengths and heights each to their own, which it states. What is formed by heat
/// lies between marks.
/// </summary>
internal static class BoreDrawing
{
    private const double Width = 340; // of the drawing
    private const double Margin = 12;
    private const double Around = 26; // above and below, for the numbers
    private const double Tallest = 110; // a straight bore
    private const double TallestBent = 250;

    /// <summary>The drawing, and what to say below it.</summary>
    public static (Drawing Drawing, string Note) Of(
        AssembledTube tube,
        Sizes sizes,
        IReadOnlyList<string> sections
    )
    {
        var path = PathOf(tube);
        var room = path.Fit(Width - 2 * Margin, path.IsBent ? TallestBent : Tallest, Margin, Around);
        // As tall as there is room for, up to eight times the scale of the length.
        var up = path.IsBent ? 1 : Math.Clamp(Tallest / room.Height, 1, 8);
        var tall = up * room.Height;
        room = room with
        {
            X = room.X + Spare(path, room),
            Y = room.Y + (tall - room.Height) / 2,
            Height = tall,
        };
        var drawing = new Drawing(
            Width,
            tall + 2 * Around + 38,
            SheetWords.SideView,
            $"{SheetWords.InAll(sizes.Tape(tube.Bore.Length))}. {string.Join("; ", sections)}."
        );
        drawing.Outline("bore", Outline(path, room, up), true);
        foreach (var hot in path.Pieces.Where(piece => piece.IsHot))
        {
            drawing.Outline("heat", hot.Outline(room, up), true);
            Mark(drawing, hot.Places[0], room, up);
            Mark(drawing, hot.Places[^1], room, up);
        }

        drawing.Outline(
            "axis",
            [.. path.Pieces.SelectMany(piece => piece.Places).Select(place => room.At((place.X, place.Y)))],
            false
        );
        HoleMarks.Draw(drawing, tube, path, room);
        Numbers(drawing, path, room, up);
        Ends(drawing, path, room, tall + 2 * Around);
        drawing.Text(
            "middle",
            Width / 2,
            tall + 2 * Around + 32,
            SheetWords.InAll(sizes.Tape(tube.Bore.Length))
        );
        return (
            drawing,
            (up > 1.05 ? SheetWords.DrawnHigher(up) : SheetWords.DrawnToScale)
                + (path.IsBent ? SheetWords.BendsDrawn : "")
                + (path.Pieces.Any(piece => piece.IsHot) ? SheetWords.HeatMarks : "")
        );
    }

    private static Centreline PathOf(AssembledTube tube)
    {
        var path = new Centreline(4);
        for (var i = 0; i < tube.Bore.Sections.Count; i++)
        {
            var section = tube.Bore.Sections[i];
            var (from, to) = (section.InletDiameter.Millimeters / 2, section.OutletDiameter.Millimeters / 2);
            var part = tube.SectionParts[i];
            if (section is BendSection bend)
            {
                path.Turn(
                    section.Length.Millimeters / bend.CurvatureRadius.Millimeters,
                    bend.CurvatureRadius.Millimeters,
                    from,
                    part is BendPart
                );
            }
            else
            {
                // Parts of the shop are cylinders and cones.
                path.Straight(section.Length.Millimeters, from, to, part is BellPart);
            }
        }

        return path;
    }

    // What is left beside a tube that is tall rather than long.
    private static double Spare(Centreline path, Centreline.Room room)
    {
        var all = path.Pieces.SelectMany(piece => piece.Corners).ToList();
        return (Width - 2 * Margin - room.Scale * (all.Max(p => p.X) - all.Min(p => p.X))) / 2;
    }

    private static List<(double X, double Y)> Outline(Centreline path, Centreline.Room room, double up)
    {
        var places = path.Pieces.SelectMany(piece => piece.Places).ToList();
        return
        [
            .. places.Select(place => room.At(place.Beside(-up * place.Radius))),
            .. places.AsEnumerable().Reverse().Select(place => room.At(place.Beside(up * place.Radius))),
        ];
    }

    private static void Mark(Drawing drawing, Centreline.Place place, Centreline.Room room, double up)
    {
        var beyond = up * place.Radius + 5 / room.Scale;
        var (from, to) = (room.At(place.Beside(-beyond)), room.At(place.Beside(beyond)));
        drawing.Line("mark", from.X, from.Y, to.X, to.Y);
    }

    // Beside the pieces, below and above in turn; where neither side has room the table has them all.
    private static void Numbers(Drawing drawing, Centreline path, Centreline.Room room, double up)
    {
        var taken = new List<(double X, double Y)>();
        for (var i = 0; i < path.Pieces.Count; i++)
        {
            var middle = path.Pieces[i].Middle;
            foreach (var side in i % 2 == 0 ? [1, -1] : new[] { -1, 1 })
            {
                var edge = room.At(middle.Beside(side * up * middle.Radius));
                var place = room.At(middle.Beside(side * (up * middle.Radius + 17 / room.Scale)));
                place = (
                    Math.Clamp(place.X, 10, Width - 10),
                    Math.Clamp(place.Y, 10, room.Height + 2 * Around - 10)
                );
                // Along a straight tube a number may move on to where there is room.
                if (!path.IsBent)
                {
                    place.X = taken
                        .Where(other => Math.Abs(other.Y - place.Y) < 20)
                        .Select(other => other.X + 20)
                        .Append(place.X)
                        .Max();
                }

                if (
                    place.X > Width - 10
                    || taken.Any(other =>
                        Math.Abs(other.X - place.X) < 19.5 && Math.Abs(other.Y - place.Y) < 19.5
                    )
                )
                {
                    continue;
                }

                taken.Add(place);
                drawing.Line("lead", place.X, place.Y, edge.X, edge.Y);
                drawing.Circle("callout", place.X, place.Y, 9);
                drawing.Text(
                    "middle",
                    place.X,
                    place.Y + 4.2,
                    (i + 1).ToString(CultureInfo.InvariantCulture)
                );
                break;
            }
        }
    }

    private static void Ends(Drawing drawing, Centreline path, Centreline.Room room, double bottom)
    {
        var (first, last) = (path.Pieces[0].Places[0], path.Pieces[^1].Places[^1]);
        var (lips, open) = (room.At((first.X, first.Y)), room.At((last.X, last.Y)));
        if (path.IsBent)
        {
            // On the ends themselves, which may lie anywhere.
            Name(drawing, lips, first.Radius * room.Scale, SheetWords.Lips, bottom / 2);
            Name(drawing, open, last.Radius * room.Scale, SheetWords.OpenEnd, bottom / 2);
            return;
        }

        drawing.Line("ruler", lips.X, bottom, open.X, bottom);
        drawing.Line("ruler", lips.X, bottom - 5, lips.X, bottom + 5);
        drawing.Line("ruler", open.X, bottom - 5, open.X, bottom + 5);
        drawing.Text("start", lips.X, bottom + 17, SheetWords.Lips);
        drawing.Text("end", open.X, bottom + 17, SheetWords.OpenEnd);
    }

    // Outside of the tube: above what lies in the upper half, below the rest.
    private static void Name(
        Drawing drawing,
        (double X, double Y) end,
        double radius,
        string name,
        double middle
    )
    {
        var half = 3.6 * name.Length + 2;
        drawing.Circle("peak", end.X, end.Y, 2.5);
        drawing.Text(
            "middle",
            Math.Clamp(end.X, half, Width - half),
            end.Y <= middle ? end.Y - radius - 6 : end.Y + radius + 15,
            name
        );
    }
}
