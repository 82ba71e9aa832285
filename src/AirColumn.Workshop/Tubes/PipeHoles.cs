using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Tubes;

/// <summary>The finger holes of one pipe: where they lie on it, and where none can be. All in mm along the sawn pipe.</summary>
internal sealed class PipeHoles
{
    private readonly PipePart pipe;
    private readonly double? cut;
    private readonly List<(int Part, HolePart Hole)> holes = [];
    private readonly List<Taken> fromLips = [];
    private readonly List<Taken> fromOpen = [];

    private PipeHoles(PipePart pipe)
    {
        (this.pipe, cut) = (pipe, pipe.Cut?.Millimeters);
    }

    /// <summary>The holes of a pipe.</summary>
    /// <param name="tube">The parts, already known to go together but for their holes.</param>
    /// <param name="at">The place of the pipe among them.</param>
    public static PipeHoles Of(TubeAssembly tube, int at)
    {
        var of = new PipeHoles((PipePart)tube.Parts[at]);
        AddEnd(of.fromLips, tube, at, -1);
        var formed = new Stack<TubePart>();
        var next = at + 1;
        for (; next < tube.Parts.Count && tube.Parts[next] is HolePart or BellPart or BendPart; next++)
        {
            if (tube.Parts[next] is HolePart hole)
            {
                of.holes.Add((next, hole));
            }
            else
            {
                formed.Push(tube.Parts[next]);
            }
        }

        AddEnd(of.fromOpen, tube, next - 1, 1);
        var end = 0.0;
        foreach (var part in formed)
        {
            var straight = (part as BendPart)?.StraightAfter.Millimeters ?? 0;
            var length = TubeAssembly.AlongWall(part, of.pipe);
            of.fromOpen.Add(new Taken(end + straight, end + length, part));
            end += length;
        }

        return of;
    }

    /// <summary>The shortest cut that leaves every hole where it is, and those measured from either end apart.</summary>
    public double ShortestCut =>
        holes.Count == 0 ? 0 : Reach(PipeEnd.Lips, fromLips) + Reach(PipeEnd.Open, fromOpen) + 0.1;

    /// <summary>The first hole that cannot be where it is, and why; null if all can.</summary>
    public (int Part, string Why)? Problem()
    {
        foreach (var (part, hole) in holes)
        {
            if (ProblemOf(hole) is { } why)
            {
                return (part, why);
            }
        }

        foreach (var ((_, one), (part, other)) in Neighbours())
        {
            if (Apart(one, other) < 0)
            {
                return (part, HoleWords.Overlaps(other, one));
            }
        }

        return null;
    }

    /// <summary>Pairs of holes that are measured from one end, or of a pipe whose length is known; the second is farther from the lips.</summary>
    public IEnumerable<((int Part, HolePart Hole) One, (int Part, HolePart Hole) Other)> Neighbours() =>
        holes
            .GroupBy(item => cut is null ? item.Hole.From : PipeEnd.Lips)
            .SelectMany(group =>
            {
                var sorted = group.OrderBy(item => FromLips(item.Hole)).ToList();
                return sorted.Zip(sorted.Skip(1));
            });

    /// <summary>How much wall is left between two neighbours.</summary>
    public double Apart(HolePart one, HolePart other) =>
        FromLips(other) - FromLips(one) - one.RadiusMillimetres - other.RadiusMillimetres;

    /// <summary>How much wall is left between a hole and the end of the pipe that it is measured from.</summary>
    public static double ToTheEnd(HolePart hole) => hole.At.Millimeters - hole.RadiusMillimetres;

    // Of a pipe whose length is open it is right up to that length for all that are measured from one end.
    private double FromLips(HolePart hole) =>
        hole.From == PipeEnd.Lips ? hole.At.Millimeters : (cut ?? 0) - hole.At.Millimeters;

    private double? From(PipeEnd end, HolePart hole) =>
        hole.From == end ? hole.At.Millimeters : cut - hole.At.Millimeters;

    private string? ProblemOf(HolePart hole)
    {
        if (hole.Diameter > pipe.Inside)
        {
            return HoleWords.WiderThanBore(hole, pipe);
        }

        foreach (var (end, taken) in new[] { (PipeEnd.Lips, fromLips), (PipeEnd.Open, fromOpen) })
        {
            if (From(end, hole) is not { } at)
            {
                continue;
            }

            if (at < hole.RadiusMillimetres)
            {
                return HoleWords.OffThePipe(hole, pipe);
            }

            if (taken.Find(one => one.Meets(at, hole.RadiusMillimetres)) is { } by)
            {
                return HoleWords.Hidden(hole, by.Part, end, by.From, by.To);
            }
        }

        return null;
    }

    // What lies between an end and the last that is measured from it or holds it.
    private double Reach(PipeEnd end, List<Taken> taken) =>
        Math.Max(
            taken.Select(one => one.To).DefaultIfEmpty().Max(),
            holes
                .Where(item => item.Hole.From == end)
                .Select(item => item.Hole.At.Millimeters + item.Hole.RadiusMillimetres)
                .DefaultIfEmpty()
                .Max()
        );

    private static void AddEnd(List<Taken> taken, TubeAssembly tube, int at, int step)
    {
        if (tube.Beside(at, step) is { } beside && TubeAssembly.Covers(beside, step) is > 0 and var depth)
        {
            taken.Add(new Taken(0, depth, beside));
        }
    }

    /// <summary>A stretch of the pipe that no hole can be in, and the part because of which.</summary>
    private sealed record Taken(double From, double To, TubePart Part)
    {
        // A millionth of a millimetre is rounding.
        public bool Meets(double at, double radius) => at + radius > From + 1e-6 && at - radius < To - 1e-6;
    }
}
