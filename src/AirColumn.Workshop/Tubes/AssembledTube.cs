using AirColumn.Acoustics;
using AirColumn.Bores;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>A tube with its parts in place: the bore, and how long each pipe of it is cut. Immutable.</summary>
public sealed record AssembledTube
{
    internal AssembledTube(
        TubeAssembly assembly,
        Bore bore,
        int freeSection,
        IReadOnlyList<PipeCut> cuts,
        IReadOnlyList<int> owners
    )
    {
        (Assembly, Bore, FreeSection, Cuts) = (assembly, bore, freeSection, cuts);
        SectionParts = [.. owners.Select(part => assembly.Parts[part])];
        SectionPieces = [.. owners.Select(assembly.PieceOf)];
    }

    /// <summary>The parts.</summary>
    public TubeAssembly Assembly { get; }

    /// <summary>The bore, from lips to open end.</summary>
    public Bore Bore { get; }

    /// <summary>For each section of the bore the part that it belongs to.</summary>
    public IReadOnlyList<TubePart> SectionParts { get; }

    /// <summary>For each section of the bore the place, among the parts, of the first one that is as wide as it because both are one pipe.</summary>
    internal IReadOnlyList<int> SectionPieces { get; }

    /// <summary>How long each pipe is cut, from the blown end.</summary>
    public IReadOnlyList<PipeCut> Cuts { get; }

    /// <summary>The cut of the pipe whose length was open; null if all were known.</summary>
    public PipeCut? FreeCut => Cuts.FirstOrDefault(cut => ReferenceEquals(cut.Pipe, Assembly.FreePipe));

    /// <summary>The section of the bore that is the straight part of the open pipe; −1 if all lengths were known.</summary>
    internal int FreeSection { get; }

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
/// <param name="Hidden">How much of that is taken by what is pushed into it or formed from it.</param>
public sealed record PipeCut(PipePart Pipe, Length Cut, Length Hidden);
