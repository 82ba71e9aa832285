using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>
/// A side view to one scale, bends bent, with its dimensions: lengths in a chain below, inside diameters above. What is drawn of a part is
/// marked with its place among the parts, so that a page can point at it.
/// </summary>
internal static class SideView
{
    private const double Margin = 14;
    private const double TallestBent = 300;
    private const double Letter = 7.4; // how wide one is about, of twelve units
    private const double Height = 12; // of a number
    private const double Row = 15; // from one row of numbers to the next
    private const int Rows = 3;

    public static Drawing Of(AssembledTube tube, double width, Sizes sizes)
    {
        var path = PathOf(tube);
        var above = Rows * Row + 14;
        var room = path.Fit(width - 2 * Margin, path.IsBent ? TallestBent : 160, Margin, above);
        var below = path.IsBent ? 10 : 22 + Rows * Row;
        var drawing = new Drawing(
            width,
            above + room.Height + below,
            SheetWords.SideView,
            SheetWords.InAll(sizes.Tape(tube.Bore.Length))
        );
        for (var i = 0; i < path.Pieces.Count; i++)
        {
            drawing.Part = PlaceOf(tube, i);
            drawing.Outline(path.Pieces[i].IsHot ? "heat" : "bore", path.Pieces[i].Outline(room, 1), true);
        }

        drawing.Part = null;
        drawing.Outline(
            "axis",
            [.. path.Pieces.SelectMany(piece => piece.Places).Select(place => room.At((place.X, place.Y)))],
            false
        );
        var holes = HoleMarks.Draw(drawing, tube, path, room);
        Diameters(drawing, tube, path, room, sizes, holes);
        if (path.IsBent)
        {
            Lengths(drawing, tube, path, room, sizes);
        }
        else
        {
            Chain(drawing, tube, path, room, sizes, above + room.Height + 10);
        }

        return drawing;
    }

    private static int PlaceOf(AssembledTube tube, int section) =>
        tube
            .Assembly.Parts.Index()
            .First(part => ReferenceEquals(part.Item, tube.SectionParts[section]))
            .Index;

    private static Centreline PathOf(AssembledTube tube)
    {
        var path = new Centreline(8);
        foreach (var (i, section) in tube.Bore.Sections.Index())
        {
            var (from, to) = (section.InletDiameter.Millimeters / 2, section.OutletDiameter.Millimeters / 2);
            var part = tube.SectionParts[i];
            if (section is BendSection bend)
            {
                var radius = bend.CurvatureRadius.Millimeters;
                path.Turn(section.Length.Millimeters / radius, radius, from, part is BendPart);
            }
            else
            {
                path.Straight(section.Length.Millimeters, from, to, part is BellPart);
            }
        }

        return path;
    }

    // Of each part that of its longest section, where a bell ends its end; in the lowest row that has room.
    private static void Diameters(
        Drawing drawing,
        AssembledTube tube,
        Centreline path,
        Centreline.Room room,
        Sizes sizes,
        List<DrawnHole> holes
    )
    {
        var labels = new List<(int Part, double X, double Y, double Edge, string Text)>();
        foreach (var run in Runs(tube))
        {
            var longest = Enumerable
                .Range(run.First, run.Last - run.First + 1)
                .MaxBy(i => tube.Bore.Sections[i].Length.Millimeters);
            var (section, piece) = (tube.Bore.Sections[longest], path.Pieces[longest]);
            var widens = section.OutletDiameter > section.InletDiameter;
            var place = widens ? piece.Places[^1] : piece.Middle;
            var edge = room.At(place.Beside(-place.Radius));
            labels.Add(
                (
                    PlaceOf(tube, run.First),
                    edge.X,
                    edge.Y,
                    edge.Y,
                    $"⌀ {sizes.Gap(widens ? section.OutletDiameter : section.InletDiameter)}"
                )
            );
        }

        labels.AddRange(HoleMarks.Sizes(holes, sizes));
        var texts = new List<(int Part, double X, double Y, double Half, string Text)>();
        var ends = new double[Rows];
        foreach (var (part, toX, toY, edge, text) in labels.OrderBy(label => label.X))
        {
            var half = Letter * text.Length / 2;
            var x = Math.Clamp(toX, half + 2, drawing.Width - half - 2);
            double Y(int row) => Math.Max(Row, edge - 8 - Row * row);
            // Rows begin at the edge of each part, so that one of a wide part may be as high as the next of a narrow one.
            bool IsFree(double y) =>
                texts.All(other => Math.Abs(other.Y - y) >= Height || other.X + other.Half + 4 < x - half);
            var row = Array.FindIndex(ends, end => x - half > end);
            while (row >= 0 && !IsFree(Y(row)))
            {
                row = Array.FindIndex(ends, row + 1, end => x - half > end);
            }

            if (row < 0)
            {
                continue;
            }

            ends[row] = x + half + 4;
            drawing.Part = part;
            drawing.Line("lead", x, Y(row) + 3, toX, toY);
            texts.Add((part, x, Y(row), half, text));
        }

        // On top of all lines, so that none goes through a number.
        foreach (var (part, x, y, _, text) in texts)
        {
            drawing.Part = part;
            drawing.Text("middle", x, y, text);
        }

        drawing.Part = null;
    }

    // What each part adds to the length, and all of it.
    private static void Chain(
        Drawing drawing,
        AssembledTube tube,
        Centreline path,
        Centreline.Room room,
        Sizes sizes,
        double top
    )
    {
        var first = room.At((path.Pieces[0].Places[0].X, 0)).X;
        var last = room.At((path.Pieces[^1].Places[^1].X, 0)).X;
        drawing.Line("ruler", first, top, last, top);
        drawing.Line("ruler", first, top - 4, first, top + 4);
        var ends = new double[Rows - 1];
        foreach (var run in Runs(tube))
        {
            var from = room.At((path.Pieces[run.First].Places[0].X, 0)).X;
            var to = room.At((path.Pieces[run.Last].Places[^1].X, 0)).X;
            drawing.Part = PlaceOf(tube, run.First);
            drawing.Line("ruler", to, top - 4, to, top + 4);
            var text = sizes.Gap(run.Length);
            var half = Letter * text.Length / 2;
            var x = Math.Clamp((from + to) / 2, half + 2, drawing.Width - half - 2);
            var row = Array.FindIndex(ends, end => x - half > end);
            if (row >= 0)
            {
                ends[row] = x + half + 4;
                drawing.Text("middle", x, top + 14 + Row * row, text);
            }
        }

        drawing.Part = null;
        drawing.Text(
            "strong",
            drawing.Width / 2,
            top + 14 + Row * (Rows - 1) + 2,
            SheetWords.InAll(sizes.Tape(tube.Bore.Length))
        );
    }

    private static void Lengths(
        Drawing drawing,
        AssembledTube tube,
        Centreline path,
        Centreline.Room room,
        Sizes sizes
    )
    {
        foreach (var run in Runs(tube))
        {
            var middle = path.Pieces[(run.First + run.Last) / 2].Middle;
            var text = sizes.Gap(run.Length);
            var half = Letter * text.Length / 2;
            var place = room.At(middle.Beside(middle.Radius + 12 / room.Scale));
            drawing.Part = PlaceOf(tube, run.First);
            drawing.Text(
                "middle",
                Math.Clamp(place.X, half + 2, drawing.Width - half - 2),
                Math.Clamp(place.Y + 4, Row, drawing.Height - 4),
                text
            );
        }

        drawing.Part = null;
    }

    // The sections of one part beside each other.
    private static IEnumerable<(int First, int Last, Length Length)> Runs(AssembledTube tube)
    {
        var first = 0;
        for (var i = 1; i <= tube.SectionParts.Count; i++)
        {
            if (
                i < tube.SectionParts.Count
                && ReferenceEquals(tube.SectionParts[i], tube.SectionParts[first])
            )
            {
                continue;
            }

            yield return (
                first,
                i - 1,
                Length.FromMillimeters(
                    tube.Bore.Sections.Skip(first).Take(i - first).Sum(one => one.Length.Millimeters)
                )
            );
            first = i;
        }
    }
}
