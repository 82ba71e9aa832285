using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Tubes;

/// <summary>What may leak, tear or be a slip of the pen, part by part.</summary>
internal static class PartRemarks
{
    /// <summary>
    /// The least radius of a bend's centreline, in outside diameters of its pipe: the tightest that tube is bent to on a mandrel (memory).
    /// </summary>
    public const double TightestBend = 1;

    /// <summary>
    /// How many times wider heat makes a pipe at most: pipe that is drawn in the factory is drawn to about twice (memory); half as much again,
    /// a choice.
    /// </summary>
    public const double WidestBell = 3;

    // The inner edge of a bend in outside diameters of the pipe: as a bulletin of a pipe maker on bending plastic pipe asks, for sizes above 3/4.
    private const double EasyBend = 6;

    // Beyond, a bell is said to stretch its pipe: a choice. Sockets that are formed on pipe stretch it by a fifth.
    private const double EasyBell = 1.5;

    // What tape around an insert or a tight joint fills, mm in diameter: a choice.
    private const double Filled = 1;

    // What cement fills between a pipe and the bottom of its socket, mm in diameter: a choice; sockets of standards are narrower there than
    // their pipe.
    private const double Cemented = 0.5;

    // Wider holes are said to leak, mm: a choice, about as wide as the tip of a finger of a grown-up hand.
    private const double WidestCovered = 12;

    // Narrower walls beside a hole are said to break out, mm: a choice.
    private const double ThinWall = 3;

    private static readonly string[] FormedByHeat = ["PVC", "PVC-U", "CPVC", "ABS", "PP", "PE", "acrylic"];

    /// <summary>Whether heat forms it; so it does where the material is not known.</summary>
    public static bool IsFormedByHeat(PipePart pipe) =>
        pipe.Stock is null || FormedByHeat.Contains(pipe.Stock.Material, StringComparer.OrdinalIgnoreCase);

    public static IEnumerable<PartRemark> Of(TubeAssembly tube)
    {
        for (var i = 0; i < tube.Parts.Count; i++)
        {
            foreach (var text in Of(tube, i))
            {
                yield return new PartRemark(i, text);
            }
        }
    }

    private static IEnumerable<string> Of(TubeAssembly tube, int i)
    {
        var part = tube.Parts[i];
        var (before, after) = (tube.Beside(i, -1), tube.Beside(i, 1));
        return part switch
        {
            PipePart pipe => [.. Unconfirmed(tube, pipe, i), .. Joint(pipe, before), .. Shared(tube, i)],
            InsertPart insert => Loose(insert, (PipePart)(before ?? after)!),
            JoinPart join => [.. Turn(join), .. Loose(tube, join, i)],
            BendPart bend => [.. Material(bend, tube.PipeAt(i)), .. Turn(bend, tube.PipeAt(i))],
            HolePart hole => [.. Drilled(tube, hole, i), .. Thin(tube, hole, i)],
            BellPart bell => [.. Material(bell, tube.PipeAt(i)), .. Stretch(bell, tube.PipeAt(i))],
            _ => [],
        };
    }

    private static IEnumerable<string> Unconfirmed(TubeAssembly tube, PipePart pipe, int i)
    {
        if (
            pipe is { IsMeasured: false, Stock.Certainty: DataCertainty.Memory or DataCertainty.Inferred }
            && tube.PieceOf(i) == i
        )
        {
            yield return RemarkWords.Unconfirmed(pipe.Stock);
        }
    }

    private static IEnumerable<string> Joint(PipePart pipe, TubePart? before)
    {
        if (before is PipePart or BendPart or BellPart)
        {
            yield return RemarkWords.Butted(before, pipe);
        }
        else if (before is JoinPart { After: null })
        {
            yield return RemarkWords.NoSocket(before, pipe);
        }
    }

    private static IEnumerable<string> Shared(TubeAssembly tube, int i)
    {
        var (pipe, first) = ((PipePart)tube.Parts[i], tube.PieceOf(i));
        if (first != i && !pipe.IsMeasured)
        {
            yield return RemarkWords.OneLength(tube.Parts[first], pipe);
        }
    }

    private static IEnumerable<string> Loose(InsertPart insert, PipePart into)
    {
        var room = into.Inside - insert.Outside;
        if (room.Millimeters > Filled)
        {
            yield return RemarkWords.LooseInsert(insert, into, room);
        }
    }

    private static IEnumerable<string> Loose(TubeAssembly tube, JoinPart join, int i)
    {
        foreach (
            var (socket, at) in new[]
            {
                (join.Before, tube.PlaceBeside(i, -1)),
                (join.After, tube.PlaceBeside(i, 1)),
            }
        )
        {
            if (socket is not null && tube.PipeInSocket(at) is { } pipe)
            {
                var room = socket.Bottom - pipe.Outside;
                if (room.Millimeters > Cemented)
                {
                    yield return RemarkWords.LooseSocket(pipe, join, room);
                }
            }
        }

        if (join.Before is null && tube.Beside(i, -1) is PipePart or BendPart or BellPart)
        {
            yield return RemarkWords.NoSocket(join, tube.Beside(i, -1)!);
        }
    }

    private static IEnumerable<string> Turn(JoinPart join)
    {
        var degrees = join.BendRadius is { } radius
            ? join.Between.Millimeters / radius.Millimeters * 180 / Math.PI
            : 0;
        if (degrees > 180 + 1e-6)
        {
            yield return RemarkWords.TurnsBack(join, degrees);
        }
    }

    private static IEnumerable<string> Turn(BendPart bend, PipePart pipe)
    {
        if (bend.Angle.Degrees > 180 + 1e-6)
        {
            yield return RemarkWords.TurnsBack(bend, bend.Angle.Degrees);
        }

        var easy = (EasyBend + 0.5) * pipe.Outside;
        if (bend.Radius < easy)
        {
            yield return RemarkWords.TightBend(bend, pipe, EasyBend, easy);
        }
    }

    private static IEnumerable<string> Material(TubePart formed, PipePart pipe)
    {
        if (!IsFormedByHeat(pipe))
        {
            yield return RemarkWords.NotFormedByHeat(formed, pipe);
        }
    }

    private static IEnumerable<string> Stretch(BellPart bell, PipePart pipe)
    {
        var times = bell.EndInside / pipe.Inside;
        if (times > EasyBell)
        {
            yield return RemarkWords.WideBell(bell, pipe, times);
        }
    }

    private static IEnumerable<string> Drilled(TubeAssembly tube, HolePart hole, int i)
    {
        if (ReferenceEquals(tube.PipeAt(i), tube.FreePipe) && hole.From == tube.TrimmedEnd)
        {
            yield return HoleWords.DrillAfterTrimming(hole);
        }

        if (hole.Diameter.Millimeters > WidestCovered)
        {
            yield return HoleWords.Wide(hole, WidestCovered);
        }
    }

    private static IEnumerable<string> Thin(TubeAssembly tube, HolePart hole, int i)
    {
        var holes = PipeHoles.Of(tube, tube.Place(tube.PipeAt(i)));
        if (PipeHoles.ToTheEnd(hole) is < ThinWall and var left)
        {
            yield return HoleWords.ThinToTheEnd(hole, left);
        }

        foreach (var (one, other) in holes.Neighbours())
        {
            if (other.Part == i && holes.Apart(one.Hole, other.Hole) is < ThinWall and var between)
            {
                yield return HoleWords.ThinBetween(one.Hole, other.Hole, between);
            }
        }
    }
}
