using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>
/// Parts in order from the blown end to the far end. At most one pipe has an open length, which is to be found. Immutable.
/// </summary>
/// <remarks>
/// The bore of a pipe runs on to its ends inside the sockets, so its cut length counts in full. Between two pipes lie their gaps and the
/// bore between the stops. An insert takes the place of the pipe's bore as far as it is pushed in. Bells and bends are made from the pipe
/// before them, so that pipe is cut longer by the length they take. Pipes of the same kind and inside diameter are taken to be cut from one
/// length, so their errors in diameter are the same. Finger holes come after the pipe that they are drilled in, before or after the parts
/// formed from it.
/// </remarks>
public sealed class TubeAssembly
{
    private readonly TubePart[] parts;

    /// <summary>Puts parts together.</summary>
    /// <param name="parts">The parts from the blown end; a pipe among them.</param>
    /// <param name="wall">
    /// Thickness of the wall at the open far end; null for the wall of the pipe or insert that ends there, or a thin edge if a fitting ends
    /// there.
    /// </param>
    /// <exception cref="ArgumentException">
    /// The parts do not go together. There is no pipe, or more than one of unknown length; a pipe does not enter its socket, or an insert
    /// its pipe; or a part is in an impossible place. The message names the parts; if one part is at fault, the exception is a
    /// <see cref="PartException"/>.
    /// </exception>
    public TubeAssembly(IReadOnlyList<TubePart> parts, Length? wall = null)
    {
        ArgumentNullException.ThrowIfNull(parts);
        this.parts = [.. parts];
        foreach (var part in this.parts)
        {
            ArgumentNullException.ThrowIfNull(part, nameof(parts));
        }

        var open = this.parts.OfType<PipePart>().Where(pipe => pipe.Cut is null).ToList();
        if (!this.parts.OfType<PipePart>().Any() || open.Count > 1)
        {
            throw new ArgumentException(
                open.Count > 1
                    ? $"The lengths of {string.Join(" and ", open.Select(pipe => $"'{pipe.Name}'"))} are not given; give the length of every pipe except one."
                    : "There is no pipe among the parts; a tube needs at least one.",
                nameof(parts)
            );
        }

        FreePipe = open.FirstOrDefault();
        for (var i = 0; i < this.parts.Length; i++)
        {
            At(i, () => PartsFit.Require(this, i));
        }

        for (var i = 0; i < this.parts.Length; i++)
        {
            if (this.parts[i] is PipePart { Cut: { } cut })
            {
                At(i, () => StraightOf(i, cut));
            }
        }

        for (var i = 0; i < this.parts.Length; i++)
        {
            if (this.parts[i] is PipePart && PipeHoles.Of(this, i).Problem() is var (part, why))
            {
                At(part, () => throw new ArgumentException(why));
            }
        }

        Wall = wall is { } given ? Caliper.Wall(given, nameof(wall)) : WallAtEnd();
        Remarks = [.. PartRemarks.Of(this)];
    }

    /// <summary>A pipe whose length is to be found, with a fitting at either end, both ends or neither.</summary>
    /// <param name="inside">Inside diameter of the pipe: 5 mm to 500 mm.</param>
    /// <param name="wall">Thickness of the wall at the open end, 0 to 100 mm; 0 for a thin edge.</param>
    /// <param name="mouth">The fitting on the blown end; null for a bare pipe.</param>
    /// <param name="end">The fitting on the far end; null for a bare pipe.</param>
    /// <returns>The tube.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public static TubeAssembly OnePipe(
        Length inside,
        Length wall = default,
        AddedPart? mouth = null,
        AddedPart? end = null
    )
    {
        // Nothing goes over it, so that its outside counts for nothing; where the wall is a thin edge it is as good as its inside.
        var outside = Length.FromMillimeters(
            Caliper.Diameter(inside).Millimeters + 2 * Math.Clamp(Caliper.Wall(wall).Millimeters, 0.1, 50)
        );
        var parts = new TubePart?[] { mouth, new PipePart("pipe", inside, outside, null), end };
        return new TubeAssembly([.. parts.OfType<TubePart>()], wall);
    }

    /// <summary>The parts from the blown end.</summary>
    public IReadOnlyList<TubePart> Parts => parts;

    /// <summary>The pipe whose length is to be found; null if the lengths of all pipes are known.</summary>
    public PipePart? FreePipe { get; }

    /// <summary>Thickness of the wall at the open far end.</summary>
    public Length Wall { get; }

    /// <summary>The tube before cementing, with pipes that tapered sockets stop short; null if no socket stops its pipe short.</summary>
    public DryFit? Dry => DryFit.Of(this);

    /// <summary>Remarks on parts that may leak or tear, or look like mistakes, each with its part.</summary>
    public IReadOnlyList<PartRemark> Remarks { get; }

    /// <summary>Inside diameter where the lips are.</summary>
    public Length BlownDiameter =>
        parts[0] switch
        {
            PipePart pipe => pipe.Inside,
            InsertPart insert => insert.Inside,
            JoinPart join => join.Before?.Entrance ?? join.Inside,
            AddedPart added => added.Inside,
            _ => throw new InvalidOperationException($"No tube begins with {parts[0].GetType().Name}."),
        };

    /// <summary>The shortest cut of the open pipe: what is pushed into it and formed from it, and what its sockets hold.</summary>
    internal Length ShortestCut
    {
        get
        {
            if (FreePipe is null)
            {
                return Length.Zero;
            }

            var pipe = Place(FreePipe);
            return Length.FromMillimeters(
                Math.Max(
                    PushedInto(pipe) + TakenFrom(pipe) + Math.Max(0.1, InSockets(pipe)),
                    PipeHoles.Of(this, pipe).ShortestCut
                )
            );
        }
    }

    /// <summary>The end at which the open pipe is trimmed: that towards the lips where something is formed from the other.</summary>
    internal PipeEnd TrimmedEnd =>
        FreePipe is { } free
        && parts
            .Where(part => part is BellPart or BendPart)
            .Any(part => ReferenceEquals(PipeAt(Place(part)), free))
            ? PipeEnd.Lips
            : PipeEnd.Open;

    /// <summary>The price of all parts, in the user's money; null if any part has no price.</summary>
    public double? Price
    {
        get
        {
            double? sum = 0;
            foreach (var part in parts)
            {
                // A bell, a bend or a hole costs nothing but the pipe, unless it is said to.
                sum += part.Price ?? (part is BellPart or BendPart or HolePart ? 0 : null);
            }

            return sum;
        }
    }

    /// <summary>The tube with its parts in place.</summary>
    /// <param name="freeCut">The length to which the open pipe is cut; not used if all lengths are known.</param>
    /// <returns>The assembled tube.</returns>
    /// <exception cref="ArgumentException">A pipe is shorter than the parts pushed into it.</exception>
    public AssembledTube Assemble(Length freeCut)
    {
        var sections = new List<Section>();
        var cuts = new List<PipeCut>();
        var owners = new List<int>();
        var freeSection = -1;
        var holes = new List<DrilledHole>();
        var length = 0.0;
        // Where the lips' end of the pipe would lie if nothing were pushed into it, and how long it is.
        var pipeStart = 0.0;
        for (var i = 0; i < parts.Length; i++)
        {
            switch (parts[i])
            {
                case PipePart pipe:
                    var cut = pipe.Cut ?? freeCut;
                    var straight = StraightOf(i, cut);
                    freeSection = ReferenceEquals(pipe, FreePipe) ? sections.Count : freeSection;
                    pipeStart = length - PushedIn(Beside(i, -1));
                    sections.Add(new CylinderSection(pipe.Inside, Length.FromMillimeters(straight)));
                    cuts.Add(new PipeCut(pipe, cut, Length.FromMillimeters(cut.Millimeters - straight)));
                    break;
                case InsertPart insert:
                    sections.Add(
                        new CylinderSection(
                            insert.Inside,
                            Length.FromMillimeters(insert.Inserted.Millimeters + insert.Protrudes.Millimeters)
                        )
                    );
                    break;
                case JoinPart join:
                    sections.AddRange(Inside(join, i));
                    break;
                case BellPart bell:
                    sections.Add(new ConeSection(PipeAt(i).Inside, bell.EndInside, bell.Formed));
                    break;
                case BendPart bend:
                    sections.Add(new BendSection(PipeAt(i).Inside, bend.Radius, bend.Angle));
                    if (bend.StraightAfter > Length.Zero)
                    {
                        sections.Add(new CylinderSection(PipeAt(i).Inside, bend.StraightAfter));
                    }

                    break;
                case AddedPart added:
                    sections.Add(new CylinderSection(added.Inside, added.Adds));
                    break;
                case HolePart hole:
                    var fromLips = Length.FromMillimeters(
                        hole.From == PipeEnd.Lips
                            ? hole.At.Millimeters
                            : cuts[^1].Cut.Millimeters - hole.At.Millimeters
                    );
                    holes.Add(
                        new DrilledHole(
                            hole,
                            i,
                            cuts[^1],
                            fromLips,
                            Length.FromMillimeters(pipeStart + fromLips.Millimeters),
                            freeSection >= 0
                                && (!ReferenceEquals(cuts[^1].Pipe, FreePipe) || hole.From == PipeEnd.Open)
                        )
                    );
                    break;
            }

            length += sections.Skip(owners.Count).Sum(section => section.Length.Millimeters);
            owners.AddRange(Enumerable.Repeat(i, sections.Count - owners.Count));
        }

        return new AssembledTube(this, sections, freeSection, cuts, owners, holes);
    }

    /// <summary>
    /// The first part that is the same piece of pipe: what is formed from a pipe is that pipe, and pipes of one kind are cut from one length.
    /// </summary>
    internal int PieceOf(int part) =>
        parts[part] is PipePart or BellPart or BendPart
            ? Array.FindIndex(parts, other => other is PipePart pipe && pipe.IsOfTheSame(PipeAt(part)))
            : part;

    /// <summary>The pipes, or the one other part, of a piece.</summary>
    internal IEnumerable<TubePart> PartsOfPiece(int piece) =>
        parts.Where((part, i) => part is not (BellPart or BendPart or HolePart) && PieceOf(i) == piece);

    private IEnumerable<Section> Inside(JoinPart join, int i)
    {
        if (join.Before is { } before)
        {
            // The socket faces the blown end: its bottom is further on.
            foreach (var section in SocketBore(before, i > 0, true))
            {
                yield return section;
            }
        }

        yield return join.BendRadius is { } radius
            ? new BendSection(
                join.Inside,
                radius,
                Angle.FromRadians(join.Between.Millimeters / radius.Millimeters)
            )
            : new CylinderSection(join.Inside, join.Between);
        if (join.After is { } after)
        {
            foreach (var section in SocketBore(after, i + 1 < parts.Length, false))
            {
                yield return section;
            }
        }
    }

    // With a pipe in it the gap; without, all of the socket.
    private static IEnumerable<Section> SocketBore(FittingSocket socket, bool isFilled, bool facesBlownEnd)
    {
        if (!isFilled)
        {
            yield return socket.Entrance.Equals(socket.Bottom, Length.FromMillimeters(1e-6))
                ? new CylinderSection(socket.Bottom, socket.Depth)
            : facesBlownEnd ? new ConeSection(socket.Entrance, socket.Bottom, socket.Depth)
            : new ConeSection(socket.Bottom, socket.Entrance, socket.Depth);
        }
        else if (socket.Gap.Millimeters >= 1e-3)
        {
            yield return new CylinderSection(socket.Bottom, socket.Gap);
        }
    }

    // What is left of a pipe's own bore, mm.
    private double StraightOf(int pipe, Length cut)
    {
        var (gone, held) = (PushedInto(pipe) + TakenFrom(pipe), InSockets(pipe));
        var straight = cut.Millimeters - gone;
        var drilled = ReferenceEquals(parts[pipe], FreePipe) ? PipeHoles.Of(this, pipe).ShortestCut : 0;
        if (cut.Millimeters < drilled - 1e-6)
        {
            throw new ArgumentException(HoleWords.TooShort((PipePart)parts[pipe], cut, drilled), nameof(cut));
        }

        return straight >= Math.Max(1e-2, held - 1e-6)
            ? straight
            : throw new ArgumentException(
                $"The pipe '{parts[pipe].Name}' is {Wording.Millimetres(cut)} long, but the parts pushed into it, formed from it or holding it in sockets "
                    + $"take {gone + held:0.#} mm; make it longer.",
                nameof(cut)
            );
    }

    /// <summary>The part beside another, finger holes passed over; null where there is none.</summary>
    /// <param name="part">The place of a part.</param>
    /// <param name="step">−1 towards the lips, 1 towards the open end.</param>
    internal TubePart? Beside(int part, int step) => parts.ElementAtOrDefault(PlaceBeside(part, step));

    /// <summary>The place of that part; −1 where there is none.</summary>
    internal int PlaceBeside(int part, int step)
    {
        var place = part + step;
        while (place >= 0 && place < parts.Length && parts[place] is HolePart)
        {
            place += step;
        }

        return place < parts.Length ? place : -1;
    }

    /// <summary>How much of a pipe a part covers that lies beside it, mm: a socket that holds it, an insert in it.</summary>
    /// <param name="part">The part.</param>
    /// <param name="step">−1 where it lies towards the lips, 1 towards the open end.</param>
    internal static double Covers(TubePart part, int step) =>
        part is JoinPart join
            ? (step < 0 ? join.After : join.Before) is { } socket
                ? HeldBy(socket)
                : 0
            : PushedIn(part);

    internal static double HeldBy(FittingSocket socket) => socket.Depth.Millimeters - socket.Gap.Millimeters;

    /// <summary>How much of a pipe is formed into a part, along its wall, mm.</summary>
    internal static double AlongWall(TubePart part, PipePart pipe) =>
        part switch
        {
            BellPart bell => double.Hypot(
                bell.Formed.Millimeters,
                (bell.EndInside.Millimeters - pipe.Inside.Millimeters) / 2
            ),
            BendPart bend => bend.Radius.Millimeters * bend.Angle.Radians + bend.StraightAfter.Millimeters,
            _ => 0,
        };

    private static double PushedIn(TubePart? part) =>
        part is InsertPart insert ? insert.Inserted.Millimeters : 0;

    /// <summary>Where a part is.</summary>
    internal int Place(TubePart part) => Array.FindIndex(parts, other => ReferenceEquals(other, part));

    // What is pushed into the ends of a pipe takes the place of its bore, mm.
    private double PushedInto(int pipe) => PushedIn(Beside(pipe, -1)) + PushedIn(Beside(pipe, 1));

    // What is formed from a pipe, measured along its wall, mm.
    private double TakenFrom(int pipe) =>
        parts
            .Skip(pipe + 1)
            .TakeWhile(part => part is BellPart or BendPart or HolePart)
            .Sum(part => AlongWall(part, (PipePart)parts[pipe]));

    // How much of a pipe's straight part its sockets hold, mm.
    private double InSockets(int pipe) => InSocket(pipe, -1) + InSocket(pipe, 1);

    private double InSocket(int pipe, int step) =>
        Beside(pipe, step) is JoinPart join ? Covers(join, step) : 0;

    /// <summary>The pipe that a part is, is formed from or is drilled in.</summary>
    internal PipePart PipeAt(int i)
    {
        var pipe = i;
        while (parts[pipe] is BellPart or BendPart or HolePart)
        {
            pipe--;
        }

        return (PipePart)parts[pipe];
    }

    /// <summary>The pipe that ends there and goes into a socket; null where there is none.</summary>
    internal PipePart? PipeInSocket(int i) =>
        i >= 0 && i < parts.Length && parts[i] is PipePart or BendPart ? PipeAt(i) : null;

    private Length WallAtEnd() =>
        parts[^1] switch
        {
            PipePart or BellPart or BendPart or HolePart => PipeAt(parts.Length - 1).Wall,
            InsertPart insert => Length.FromMillimeters(
                (insert.Outside.Millimeters - insert.Inside.Millimeters) / 2
            ),
            _ => Length.Zero,
        };

    // What is wrong of one part is told there.
    private static void At(int part, Action check)
    {
        try
        {
            check();
        }
        catch (ArgumentException problem)
        {
            throw new PartException(part, PartsObject.Plain(problem), problem);
        }
    }

    /// <summary>The names of the parts from the lips, or their kinds.</summary>
    /// <returns>The names, separated by commas.</returns>
    public override string ToString() => string.Join(", ", parts.Select(part => part.Name));
}
