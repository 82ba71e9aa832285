using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Sheets;

/// <summary>The small pictures beside the steps of fitting up: not to scale, the lips to the left.</summary>
internal sealed class StepPicture(Sizes sizes)
{
    private const double Width = 150;
    private const double Height = 128;
    private const double Middle = 54; // of the pipe
    private const double Bore = 12; // half of the pipe's bore
    private const double Thick = 4; // a wall

    /// <summary>A pipe is sawn to length.</summary>
    public static Drawing Cut(NamedCut cut, string description)
    {
        var drawing = New(SheetWords.PictureOfCut(cut.Letter), description);
        Pipe(drawing, false, 8, 128);
        Broken(drawing, false, 74);
        Letter(drawing, 34, cut.Letter);
        // The saw: a blade with teeth across the pipe.
        var teeth = new List<(double, double)>();
        for (var y = Middle - 32; y <= Middle + 26; y += 4)
        {
            teeth.Add((128 + ((y - Middle) % 8 == 0 ? 0 : 4), y));
        }

        drawing.Outline("saw", teeth, false);
        Size(drawing, false, 8, 128, Middle + 34, string.Join('\n', cut.Sizes));
        return drawing;
    }

    /// <summary>An insert goes into the end of a pipe.</summary>
    /// <param name="insert">The insert.</param>
    /// <param name="letter">Of the pipe.</param>
    /// <param name="isLast">Whether it goes into the far end.</param>
    /// <param name="description">What it shows, with its data.</param>
    public Drawing PushIn(InsertPart insert, string letter, bool isLast, string description)
    {
        var drawing = New(SheetWords.PictureOfJoint(insert.Name, letter), description);
        var isFlush = insert.Protrudes <= Length.Zero;
        var (outer, end) = (isFlush ? 62 : 30, 104);
        Pipe(drawing, isLast, 62, 142);
        foreach (var side in new[] { -1, 1 })
        {
            drawing.Box(
                "part",
                X(isLast, outer),
                Middle + side * Bore,
                X(isLast, end),
                Middle + side * (Bore - Thick)
            );
        }

        Letter(drawing, X(isLast, 128), letter);
        Arrow(drawing, isLast, 4, isFlush ? 54 : 24);
        Size(drawing, isLast, 62, end, Middle + 28, sizes.Tape(insert.Inserted));
        if (!isFlush)
        {
            Above(drawing, isLast, outer, 62, sizes.Tape(insert.Protrudes));
        }

        return drawing;
    }

    /// <summary>A pipe goes into the socket of a fitting.</summary>
    /// <param name="socket">The socket.</param>
    /// <param name="join">The fitting.</param>
    /// <param name="letter">Of the pipe.</param>
    /// <param name="isAfter">Whether the pipe comes after the fitting.</param>
    /// <param name="description">What it shows, with its data.</param>
    public Drawing PushInto(
        FittingSocket socket,
        JoinPart join,
        string letter,
        bool isAfter,
        string description
    )
    {
        var drawing = New(SheetWords.PictureOfJoint(join.Name, letter), description);
        var end = socket.Gap > Length.Zero ? 96 : 102;
        Pipe(drawing, isAfter, 6, end);
        foreach (var side in new[] { -1, 1 })
        {
            // Around the pipe up to the stop, then as narrow as the fitting is between its stops.
            drawing.Outline(
                "part",
                [
                    (X(isAfter, 62), Middle + side * (Bore + Thick + 1)),
                    (X(isAfter, 102), Middle + side * (Bore + Thick + 1)),
                    (X(isAfter, 102), Middle + side * Bore),
                    (X(isAfter, 142), Middle + side * Bore),
                    (X(isAfter, 142), Middle + side * (Bore + 2 * Thick + 1)),
                    (X(isAfter, 62), Middle + side * (Bore + 2 * Thick + 1)),
                ],
                true
            );
        }

        Letter(drawing, X(isAfter, 44), letter);
        Arrow(drawing, isAfter, 10, 30);
        Size(
            drawing,
            isAfter,
            62,
            end,
            Middle + 31,
            sizes.Tape(Length.FromMillimeters(socket.Depth.Millimeters - socket.Gap.Millimeters))
        );
        if (socket.Gap > Length.Zero)
        {
            drawing.Line("lead", X(isAfter, 99), Middle, X(isAfter, 104), 18);
            drawing.Text(
                isAfter ? "start" : "end",
                X(isAfter, 108),
                14,
                SheetWords.Left(sizes.Gap(socket.Gap))
            );
        }

        return drawing;
    }

    /// <summary>A pipe is bent over the length between two marks.</summary>
    /// <param name="bend">The bend.</param>
    /// <param name="arc">How much of the pipe it takes.</param>
    /// <param name="letter">Of the pipe.</param>
    /// <param name="description">What it shows, with its data.</param>
    public Drawing Bend(BendPart bend, Length arc, string letter, string description)
    {
        var drawing = New(SheetWords.PictureOfHeat(letter), description);
        const double Top = 16;
        drawing.Box("bore", 8, Top - 7, 142, Top + 7);
        drawing.Box("heat", 60, Top - 7, 104, Top + 7);
        foreach (var x in new[] { 60.0, 104 })
        {
            drawing.Line("mark", x, Top - 12, x, Top + 12);
        }

        Letter(drawing, 34, Top, letter);
        var first = sizes.Tape(arc).Split(" (");
        drawing.Text("middle", 82, Top + 24, first[0]);
        if (first.Length > 1)
        {
            drawing.Text("middle", 82, Top + 37, $"({first[1]}");
        }

        // Bent, as far as there is room: more than a half turn looks like one.
        var angle = Math.Min(bend.Angle.Radians, Math.PI);
        var path = new Centreline(2);
        path.Straight(40, 6, false);
        path.Turn(angle, 14, 6, true);
        path.Straight(30, 6, false);
        var room = path.Fit(60, 44, 8, 62);
        foreach (var piece in path.Pieces)
        {
            drawing.Outline(piece.IsHot ? "heat" : "bore", piece.Outline(room, 1), true);
        }

        drawing.Text("start", 82, 92, SheetWords.Degrees(bend.Angle.Degrees));
        return drawing;
    }

    /// <summary>The end of a pipe is flared.</summary>
    public Drawing Bell(BellPart bell, string letter, string description)
    {
        var drawing = New(SheetWords.PictureOfHeat(letter), description);
        Pipe(drawing, false, 8, 84);
        drawing.Outline(
            "heat",
            [
                (84, Middle - Bore - Thick),
                (140, Middle - 30),
                (140, Middle + 30),
                (84, Middle + Bore + Thick),
            ],
            true
        );
        drawing.Line("mark", 84, Middle - 28, 84, Middle + 28);
        Letter(drawing, 34, letter);
        Size(drawing, false, 84, 140, Middle + 40, sizes.Tape(bell.Formed));
        drawing.Line("lead", 138, Middle - 28, 138, Middle + 28);
        drawing.Text("end", 132, 14, sizes.Narrow(bell.EndInside));
        return drawing;
    }

    /// <summary>A hole is drilled.</summary>
    public Drawing Drill(HolePart hole, string letter, string description)
    {
        var drawing = New(HoleWords.PictureOfDrilling(letter), description);
        var isMirrored = hole.From == PipeEnd.Open;
        const double At = 96;
        const double Radius = 6;
        Pipe(drawing, isMirrored, 8, 142);
        Broken(drawing, isMirrored, 56);
        Letter(drawing, X(isMirrored, 28), letter);
        drawing.Box(
            "gap",
            X(isMirrored, At - Radius),
            Middle - Bore - Thick,
            X(isMirrored, At + Radius),
            Middle - Bore
        );
        drawing.Line("saw", X(isMirrored, At), 8, X(isMirrored, At), Middle - Bore - Thick - 4);
        Size(drawing, isMirrored, 8, At, Middle + 31, sizes.Tape(hole.At));
        drawing.Text(
            isMirrored ? "start" : "end",
            X(isMirrored, At - 8),
            14,
            $"⌀ {sizes.Gap(hole.Diameter)}"
        );
        return drawing;
    }

    /// <summary>A fitting is put on.</summary>
    public Drawing PutOn(AddedPart added, string? letter, bool isFirst, string description)
    {
        var drawing = New(SheetWords.PictureOfJoint(added.Name, letter ?? ""), description);
        Pipe(drawing, isFirst, 6, 88);
        foreach (var side in new[] { -1, 1 })
        {
            drawing.Outline(
                "part",
                [
                    (X(isFirst, 66), Middle + side * (Bore + Thick + 1)),
                    (X(isFirst, 88), Middle + side * (Bore + Thick + 1)),
                    (X(isFirst, 88), Middle + side * Bore),
                    (X(isFirst, 138), Middle + side * Bore),
                    (X(isFirst, 138), Middle + side * (Bore + 2 * Thick + 1)),
                    (X(isFirst, 66), Middle + side * (Bore + 2 * Thick + 1)),
                ],
                true
            );
        }

        if (letter is not null)
        {
            Letter(drawing, X(isFirst, 34), letter);
        }

        Size(drawing, isFirst, 88, 138, Middle + 31, sizes.Tape(added.Adds));
        return drawing;
    }

    private static Drawing New(string label, string description) => new(Width, Height, label, description);

    // Mirrored where the far end is what is worked on.
    private static double X(bool isMirrored, double x) => isMirrored ? Width - x : x;

    private static void Pipe(Drawing drawing, bool isMirrored, double from, double to)
    {
        var (a, b) = (X(isMirrored, from), X(isMirrored, to));
        drawing.Box("bore", a, Middle - Bore, b, Middle + Bore);
        drawing.Box("wall", a, Middle - Bore - Thick, b, Middle - Bore);
        drawing.Box("wall", a, Middle + Bore, b, Middle + Bore + Thick);
    }

    // Longer than is drawn.
    private static void Broken(Drawing drawing, bool isMirrored, double at)
    {
        const double Half = Bore + Thick + 3;
        (double, double)[] left =
        [
            (X(isMirrored, at - 6), Middle + Half),
            (X(isMirrored, at + 2), Middle - Half),
        ];
        (double, double)[] right =
        [
            (X(isMirrored, at + 8), Middle - Half),
            (X(isMirrored, at), Middle + Half),
        ];
        drawing.Outline("gap", [.. left, .. right], true);
        drawing.Outline("edge", left, false);
        drawing.Outline("edge", right, false);
    }

    private static void Letter(Drawing drawing, double x, string letter) =>
        Letter(drawing, x, Middle, letter);

    private static void Letter(Drawing drawing, double x, double y, string letter)
    {
        drawing.Circle("callout", x, y, 9);
        drawing.Text("strong", x, y + 4.2, letter);
    }

    private static void Arrow(Drawing drawing, bool isMirrored, double from, double to)
    {
        drawing.Line("arrow", X(isMirrored, from), Middle, X(isMirrored, to), Middle);
        drawing.Outline(
            "arrow",
            [
                (X(isMirrored, to - 5), Middle - 4),
                (X(isMirrored, to), Middle),
                (X(isMirrored, to - 5), Middle + 4),
            ],
            false
        );
    }

    // A line between two edges and the size below it, one unit a line.
    private static void Size(Drawing drawing, bool isMirrored, double from, double to, double y, string size)
    {
        var (a, b) = (X(isMirrored, from), X(isMirrored, to));
        drawing.Line("size", a, y, b, y);
        drawing.Line("size", a, y - 4, a, y + 4);
        drawing.Line("size", b, y - 4, b, y + 4);
        Lines(drawing, (a + b) / 2, y + 15, size);
    }

    private static void Above(Drawing drawing, bool isMirrored, double from, double to, string size)
    {
        var (a, b) = (X(isMirrored, from), X(isMirrored, to));
        const double Y = 31;
        drawing.Line("size", a, Y, b, Y);
        drawing.Line("size", a, Y - 3, a, Y + 3);
        drawing.Line("size", b, Y - 3, b, Y + 3);
        Lines(drawing, (a + b) / 2, 12, size);
    }

    // Kept within the picture: a line of twelve units takes about six and a half a letter.
    private static void Lines(Drawing drawing, double x, double y, string size)
    {
        var lines = size.Replace(" (", "\n(", StringComparison.Ordinal).Split('\n');
        var half = lines.Max(line => line.Length) * 3.25;
        var at = Math.Clamp(x, half, Width - half);
        for (var i = 0; i < lines.Length; i++)
        {
            drawing.Text("middle", at, y + 13 * i, lines[i]);
        }
    }
}
