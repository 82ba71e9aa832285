using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>A tube with its parts in place: the bore, and the cut length of each pipe. Immutable.</summary>
public sealed record AssembledTube
{
    internal AssembledTube(
        TubeAssembly assembly,
        IReadOnlyList<Section> sections,
        int freeSection,
        IReadOnlyList<PipeCut> cuts,
        IReadOnlyList<int> owners,
        IEnumerable<DrilledHole> holes
    )
    {
        (Assembly, FreeSection, Cuts) = (assembly, freeSection, cuts);
        Holes = [.. holes.OrderBy(hole => hole.Position)];
        Bore = new Bore(
            sections,
            new OpenEnd(assembly.Wall),
            Holes.Select(hole => new ToneHole(hole.Position, hole.Hole.Diameter, hole.Cut.Pipe.Wall)
            {
                Name = hole.Hole.Name,
            })
        );
        SectionParts = [.. owners.Select(part => assembly.Parts[part])];
        SectionPieces = [.. owners.Select(assembly.PieceOf)];
    }

    /// <summary>The parts.</summary>
    public TubeAssembly Assembly { get; }

    /// <summary>The bore, from lips to open end.</summary>
    public Bore Bore { get; }

    /// <summary>The part that each section of the bore belongs to.</summary>
    public IReadOnlyList<TubePart> SectionParts { get; }

    /// <summary>For each section of the bore the place, among the parts, of the first one that is as wide as it because both are one pipe.</summary>
    internal IReadOnlyList<int> SectionPieces { get; }

    /// <summary>The finger holes, from the blown end.</summary>
    public IReadOnlyList<DrilledHole> Holes { get; }

    /// <summary>The cut length of each pipe, from the blown end.</summary>
    public IReadOnlyList<PipeCut> Cuts { get; }

    /// <summary>The cut of the pipe whose length was open; null if the lengths of all pipes were known.</summary>
    public PipeCut? FreeCut => Cuts.FirstOrDefault(cut => ReferenceEquals(cut.Pipe, Assembly.FreePipe));

    /// <summary>The section of the bore that is the straight part of the open pipe; −1 if all lengths were known.</summary>
    internal int FreeSection { get; }

    /// <summary>How many holes, the last ones, keep their distance from the far end when the open pipe becomes longer or shorter.</summary>
    internal int HolesFromFarEnd => Holes.Count(hole => hole.KeepsFromFarEnd);

    /// <summary>The length of the open pipe, with the holes that lie beyond.</summary>
    internal ColumnParameter CutParameter =>
        ColumnParameter.SectionLength(FreeSection, Holes.Count, HolesFromFarEnd);

    /// <summary>The column of the tube in an air, with its holes fingered as for the drone.</summary>
    /// <param name="air">The air.</param>
    /// <param name="options">Further choices of the column. Default: those of a new <see cref="AirColumn.ColumnOptions"/>.</param>
    /// <param name="near">
    /// The column of a similar tube, to save time: the two columns share the parts that they have in common. Sharing does not change the
    /// result.
    /// </param>
    /// <returns>The column.</returns>
    public Column ColumnIn(Air air, ColumnOptions? options = null, Column? near = null)
    {
        var all = (options ?? new ColumnOptions()) with
        {
            Fingering = Fingering.Of([.. Holes.Select(hole => hole.Hole.IsOpenInDrone)]),
        };
        return near?.With(Bore, AirProfile.Uniform(air), all) ?? new Column(Bore, air, all);
    }

    /// <summary>
    /// The inside diameter of all sections that are one pipe, or one moulded part: whatever makes one of them wider makes all so. The end of a
    /// bell is formed for itself.
    /// </summary>
    internal ColumnParameter DiameterOf(int piece) =>
        ColumnParameter.Together([
            .. Enumerable
                .Range(0, SectionPieces.Count)
                .Where(section => SectionPieces[section] == piece)
                .Select(section =>
                    SectionParts[section] is BellPart
                        ? ColumnParameter.InletDiameter(section)
                        : ColumnParameter.Diameter(section)
                ),
        ]);
}

/// <summary>A pipe and the length to which it is cut.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="Cut">The length to which it is cut, sockets included.</param>
/// <param name="Hidden">The share of that length taken up by the parts pushed into the pipe or formed from it.</param>
public sealed record PipeCut(PipePart Pipe, Length Cut, Length Hidden);

/// <summary>A finger hole with its place on the tube.</summary>
/// <param name="Hole">The hole.</param>
/// <param name="Part">The index of the part: 0 is at the blown end.</param>
/// <param name="Cut">The pipe that the hole is drilled in, with its cut length.</param>
/// <param name="FromLips">Distance from the end of that pipe towards the lips to the middle of the hole, along its wall.</param>
/// <param name="Position">Distance from the blown end of the tube, along the bore.</param>
/// <param name="KeepsFromFarEnd">
/// True if the hole keeps its distance from the open end of the tube when the open pipe becomes longer or shorter.
/// </param>
public sealed record DrilledHole(
    HolePart Hole,
    int Part,
    PipeCut Cut,
    Length FromLips,
    Length Position,
    bool KeepsFromFarEnd
);
