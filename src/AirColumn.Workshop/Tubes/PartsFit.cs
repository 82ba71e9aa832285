using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>Whether parts go together: what enters what, and what is formed from what.</summary>
internal static class PartsFit
{
    // A pipe that has this much more room in its socket is another size.
    private const double LoosestFit = 3;

    /// <summary>Refuses a part that does not go with those beside it.</summary>
    public static void Require(TubeAssembly tube, int i)
    {
        var part = tube.Parts[i];
        var (before, after) = (tube.Beside(i, -1), tube.Beside(i, 1));
        switch (part)
        {
            case PipePart pipe when before is PipePart other:
                RequireTouching(other, pipe);
                break;
            case InsertPart insert:
                if ((before is null) == (after is null) || (before ?? after) is not PipePart into)
                {
                    throw Wrong(
                        $"The insert '{part.Name}' must be the first or the last part, with a pipe beside it."
                    );
                }

                if (insert.Outside > into.Inside)
                {
                    throw Wrong(
                        $"The insert '{part.Name}', {Wording.Size(insert.Outside)} outside, does not go into the pipe '{into.Name}', "
                            + $"{Wording.Size(into.Inside)} inside. Measure both, or choose another."
                    );
                }

                break;
            case JoinPart join:
                RequireEnters(tube, join, join.Before, tube.PlaceBeside(i, -1), "before it");
                RequireEnters(tube, join, join.After, tube.PlaceBeside(i, 1), "after it");
                break;
            case HolePart hole when FirstBefore(tube, i) is not PipePart:
                throw Wrong(HoleWords.NoPipe(hole));
            case BellPart bell:
                RequireFormedFromPipe(before, part);
                if (bell.EndInside <= tube.PipeAt(i).Inside)
                {
                    throw Wrong(
                        $"The bell '{part.Name}' ends {Wording.Size(bell.EndInside)} wide, but its pipe is {Wording.Size(tube.PipeAt(i).Inside)} wide; a bell must be wider than its pipe."
                    );
                }

                if (bell.EndInside > PartRemarks.WidestBell * tube.PipeAt(i).Inside)
                {
                    throw Wrong(
                        $"The bell '{part.Name}' ends {Wording.Size(bell.EndInside)} wide, its pipe is {Wording.Size(tube.PipeAt(i).Inside)}: heat does not widen a pipe to more than "
                            + $"{PartRemarks.WidestBell:0} times. Choose a narrower bell, or join a wider pipe with a reducer."
                    );
                }

                if (after is BellPart or BendPart)
                {
                    throw Wrong($"After the bell '{part.Name}' nothing more can be formed.");
                }

                break;
            case BendPart bend:
                RequireFormedFromPipe(before, part);
                var tightest = PartRemarks.TightestBend * tube.PipeAt(i).Outside;
                if (bend.Radius < tightest)
                {
                    throw Wrong(
                        $"The bend '{part.Name}' has a radius of {Wording.Millimetres(bend.Radius)}, its pipe is {Wording.Size(tube.PipeAt(i).Outside)} outside: so tight a curve folds shut. "
                            + $"Choose {Wording.Millimetres(tightest)} or more, or an elbow."
                    );
                }

                break;
        }
    }

    // Ends that are butted must at least close the tube: with the wider pipe around the narrower, or wall against wall.
    private static void RequireTouching(PipePart one, PipePart other)
    {
        var (narrow, wide) = one.Outside < other.Outside ? (one, other) : (other, one);
        if (wide.Inside.Millimeters - narrow.Outside.Millimeters > LoosestFit)
        {
            throw Wrong(
                $"Between '{narrow.Name}', {Wording.Size(narrow.Outside)} outside, and '{wide.Name}', {Wording.Size(wide.Inside)} inside, the tube would stand open all round; "
                    + "put a reducer between them."
            );
        }
    }

    private static void RequireFormedFromPipe(TubePart? before, TubePart part)
    {
        if (before is not (PipePart or BendPart))
        {
            throw Wrong($"'{part.Name}' is formed from a pipe, so a pipe must come before it.");
        }
    }

    private static void RequireEnters(
        TubeAssembly tube,
        JoinPart join,
        FittingSocket? socket,
        int index,
        string where
    )
    {
        if (socket is null || index < 0)
        {
            return;
        }

        var neighbour = tube.Parts[index];

        // What is straight behind a formed bend is still pipe.
        var pipe = neighbour switch
        {
            PipePart straight => straight,
            BendPart => tube.PipeAt(index),
            _ => throw Wrong(
                $"The fitting '{join.Name}' has a socket for the part {where}, but '{neighbour.Name}' is not a pipe that goes into it."
            ),
        };
        if (neighbour is BendPart bend && bend.StraightAfter.Millimeters < TubeAssembly.HeldBy(socket))
        {
            throw Wrong(
                $"The pipe is straight for {Wording.Millimetres(bend.StraightAfter)} after '{bend.Name}', but the socket of '{join.Name}' holds "
                    + $"{Wording.Millimetres(Length.FromMillimeters(TubeAssembly.HeldBy(socket)))}; leave more of it straight."
            );
        }

        var fit = socket.Entrance.Millimeters - pipe.Outside.Millimeters;
        if (fit is < 0 or > LoosestFit)
        {
            throw Wrong(
                $"The pipe '{pipe.Name}', {Wording.Size(pipe.Outside)} outside, {(fit < 0 ? "does not enter" : "is loose in")} the socket of '{join.Name}', "
                    + $"{Wording.Size(socket.Entrance)} at its entrance. Measure both, or choose another size."
            );
        }
    }

    // What a hole is drilled in: a pipe, whatever is formed from it in between.
    private static TubePart? FirstBefore(TubeAssembly tube, int hole) =>
        tube.Parts.Take(hole).LastOrDefault(part => part is not (HolePart or BellPart or BendPart));

    private static ArgumentException Wrong(string message) => new(message);
}
