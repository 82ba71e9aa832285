using AirColumn.Bores;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>
/// Parts put together from the blown end to the far end, at most one pipe among them whose length is to be found. Immutable.
/// </summary>
/// <remarks>
/// The bore of a pipe runs on to its ends inside the sockets, so that its cut length counts in full; between two pipes lie the gaps
/// that are left and what is between the stops. An insert takes the place of the pipe's bore as far as it is pushed in. Bells
/// and bends are made from the pipe before them, so that it is cut longer by what they take. Pipes of one kind with one inside diameter are
/// taken to be cut from one length, so that they are too wide or too narrow together.
/// </remarks>
public sealed class TubeAssembly
{
    // A pipe that has this much more room in its socket is another size.
    private const double LoosestFit = 3;

    private readonly TubePart[] parts;

    /// <summary>Puts parts together.</summary>
    /// <param name="parts">The parts from the blown end; a pipe among them.</param>
    /// <param name="wall">Thickness of the wall at the open far end; if null that of the pipe or insert that ends there, of a fitting a thin edge.</param>
    /// <exception cref="ArgumentException">
    /// The parts do not go together: no pipe, more than one of unknown length, a pipe that does not enter its socket, an insert that does not
    /// enter its pipe, a part where it cannot be. The message names them.
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
                    ? $"The lengths of {string.Join(" and ", open.Select(pipe => $"'{pipe.Name}'"))} are open; give all but one of them a length."
                    : "There is no pipe among the parts; a tube needs at least one.",
                nameof(parts)
            );
        }

        FreePipe = open.FirstOrDefault();
        for (var i = 0; i < this.parts.Length; i++)
        {
            RequireFitting(i);
        }

        for (var i = 0; i < this.parts.Length; i++)
        {
            if (this.parts[i] is PipePart { Cut: { } cut })
            {
                _ = StraightOf(i, cut);
            }
        }

        Wall = wall is { } given ? Caliper.Wall(given, nameof(wall)) : WallAtEnd();
        Remarks = [.. PartRemarks.Of(this)];
    }

    /// <summary>A pipe whose length is to be found, with a fitting at either end or none: all that can be told without what fits over it.</summary>
    /// <param name="inside">Inside diameter of the pipe: 5 mm to 500 mm.</param>
    /// <param name="wall">Thickness of the wall at the open end, 0 to 100 mm; 0 for a thin edge.</param>
    /// <param name="mouth">What is put on the blown end; null for a bare pipe.</param>
    /// <param name="end">What is put on the far end; null for a bare pipe.</param>
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

    /// <summary>The pipe whose length is to be found; null if all are known.</summary>
    public PipePart? FreePipe { get; }

    /// <summary>Thickness of the wall at the open far end.</summary>
    public Length Wall { get; }

    /// <summary>The tube as it is before cement, with pipes that tapered sockets hold out; null where none may be held out.</summary>
    public DryFit? Dry => DryFit.Of(this);

    /// <summary>What may leak, tear or not be meant, each at its part.</summary>
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
    internal Length ShortestCut =>
        FreePipe is null
            ? Length.Zero
            : Length.FromMillimeters(
                PushedInto(Array.IndexOf(parts, FreePipe))
                    + TakenFrom(Array.IndexOf(parts, FreePipe))
                    + Math.Max(0.1, InSockets(Array.IndexOf(parts, FreePipe)))
            );

    /// <summary>What all parts cost, in the user's money; null where any has no price.</summary>
    public double? Price
    {
        get
        {
            double? sum = 0;
            foreach (var part in parts)
            {
                // A bell or a bend costs nothing but the pipe, unless it is said to.
                sum += part.Price ?? (part is BellPart or BendPart ? 0 : null);
            }

            return sum;
        }
    }

    /// <summary>The tube with its parts in place.</summary>
    /// <param name="freeCut">The length to which the open pipe is cut; not used where all lengths are known.</param>
    /// <exception cref="ArgumentException">A pipe is shorter than what is pushed into it.</exception>
    public AssembledTube Assemble(Length freeCut)
    {
        var sections = new List<Section>();
        var cuts = new List<PipeCut>();
        var owners = new List<int>();
        var freeSection = -1;
        for (var i = 0; i < parts.Length; i++)
        {
            switch (parts[i])
            {
                case PipePart pipe:
                    var cut = pipe.Cut ?? freeCut;
                    var straight = StraightOf(i, cut);
                    freeSection = ReferenceEquals(pipe, FreePipe) ? sections.Count : freeSection;
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
            }

            owners.AddRange(Enumerable.Repeat(i, sections.Count - owners.Count));
        }

        return new AssembledTube(this, new Bore(sections, new OpenEnd(Wall)), freeSection, cuts, owners);
    }

    /// <summary>The first part that is the same piece of pipe: what is formed from a pipe is that pipe, and pipes of one kind are cut from one length.</summary>
    internal int PieceOf(int part) =>
        parts[part] is PipePart or BellPart or BendPart
            ? Array.FindIndex(parts, other => other is PipePart pipe && pipe.IsOfTheSame(PipeAt(part)))
            : part;

    /// <summary>The pipes, or the one other part, of a piece.</summary>
    internal IEnumerable<TubePart> PartsOfPiece(int piece) =>
        parts.Where((part, i) => part is not (BellPart or BendPart) && PieceOf(i) == piece);

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
        return straight >= Math.Max(1e-2, held - 1e-6)
            ? straight
            : throw new ArgumentException(
                $"The pipe '{parts[pipe].Name}' is {Wording.Millimetres(cut)} long, but {gone + held:0.#} mm of it are taken by what is "
                    + "pushed into it, formed from it or held in sockets; make it longer.",
                nameof(cut)
            );
    }

    // What is pushed into the ends of a pipe takes the place of its bore, mm.
    private double PushedInto(int pipe) =>
        (pipe > 0 && parts[pipe - 1] is InsertPart before ? before.Inserted.Millimeters : 0)
        + (pipe + 1 < parts.Length && parts[pipe + 1] is InsertPart after ? after.Inserted.Millimeters : 0);

    // What is formed from a pipe, measured along its wall, mm.
    private double TakenFrom(int pipe)
    {
        var taken = 0.0;
        for (var i = pipe + 1; i < parts.Length && parts[i] is BellPart or BendPart; i++)
        {
            taken += parts[i] switch
            {
                BellPart bell => double.Hypot(
                    bell.Formed.Millimeters,
                    (bell.EndInside.Millimeters - ((PipePart)parts[pipe]).Inside.Millimeters) / 2
                ),
                BendPart bend => bend.Radius.Millimeters * bend.Angle.Radians
                    + bend.StraightAfter.Millimeters,
                _ => 0,
            };
        }

        return taken;
    }

    // How much of a pipe's straight part its sockets hold, mm.
    private double InSockets(int pipe) =>
        (pipe > 0 && parts[pipe - 1] is JoinPart { After: { } before } ? HeldBy(before) : 0)
        + (pipe + 1 < parts.Length && parts[pipe + 1] is JoinPart { Before: { } after } ? HeldBy(after) : 0);

    private static double HeldBy(FittingSocket socket) => socket.Depth.Millimeters - socket.Gap.Millimeters;

    /// <summary>The pipe that a part is, or is formed from.</summary>
    internal PipePart PipeAt(int i)
    {
        var pipe = i;
        while (parts[pipe] is BellPart or BendPart)
        {
            pipe--;
        }

        return (PipePart)parts[pipe];
    }

    /// <summary>The pipe that ends there and goes into a socket; null where there is none.</summary>
    internal PipePart? PipeInSocket(int i) =>
        i >= 0 && i < parts.Length && parts[i] is PipePart or BendPart ? PipeAt(i) : null;

    private void RequireFitting(int i)
    {
        var part = parts[i];
        var (before, after) = (i > 0 ? parts[i - 1] : null, i + 1 < parts.Length ? parts[i + 1] : null);
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
                RequireEnters(join, join.Before, before, i - 1, "before it");
                RequireEnters(join, join.After, after, i + 1, "after it");
                break;
            case BellPart bell:
                RequireFormedFromPipe(before, part);
                if (bell.EndInside <= PipeAt(i).Inside)
                {
                    throw Wrong(
                        $"The bell '{part.Name}' ends {Wording.Size(bell.EndInside)} wide, its pipe is {Wording.Size(PipeAt(i).Inside)}; a bell widens."
                    );
                }

                if (bell.EndInside > PartRemarks.WidestBell * PipeAt(i).Inside)
                {
                    throw Wrong(
                        $"The bell '{part.Name}' ends {Wording.Size(bell.EndInside)} wide, its pipe is {Wording.Size(PipeAt(i).Inside)}: heat does not widen a pipe to more than "
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
                var tightest = PartRemarks.TightestBend * PipeAt(i).Outside;
                if (bend.Radius < tightest)
                {
                    throw Wrong(
                        $"The bend '{part.Name}' has a radius of {Wording.Millimetres(bend.Radius)}, its pipe is {Wording.Size(PipeAt(i).Outside)} outside: so tight a curve folds shut. "
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

    private void RequireEnters(
        JoinPart join,
        FittingSocket? socket,
        TubePart? neighbour,
        int index,
        string where
    )
    {
        if (socket is null || neighbour is null)
        {
            return;
        }

        // What is straight behind a formed bend is still pipe.
        var pipe = neighbour switch
        {
            PipePart straight => straight,
            BendPart => PipeAt(index),
            _ => throw Wrong(
                $"The fitting '{join.Name}' has a socket for the part {where}, but '{neighbour.Name}' is not a pipe that goes into it."
            ),
        };
        if (neighbour is BendPart bend && bend.StraightAfter.Millimeters < HeldBy(socket))
        {
            throw Wrong(
                $"The pipe is straight for {Wording.Millimetres(bend.StraightAfter)} after '{bend.Name}', but the socket of '{join.Name}' holds "
                    + $"{Wording.Millimetres(Length.FromMillimeters(HeldBy(socket)))}; leave more of it straight."
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

    private Length WallAtEnd() =>
        parts[^1] switch
        {
            PipePart or BellPart or BendPart => PipeAt(parts.Length - 1).Wall,
            InsertPart insert => Length.FromMillimeters(
                (insert.Outside.Millimeters - insert.Inside.Millimeters) / 2
            ),
            _ => Length.Zero,
        };

    private static ArgumentException Wrong(string message) => new(message);
}
