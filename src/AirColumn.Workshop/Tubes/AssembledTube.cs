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
        IReadOnlyList<TubePart> sectionParts
    )
    {
        (Assembly, Bore, FreeSection, Cuts, SectionParts) = (assembly, bore, freeSection, cuts, sectionParts);
    }

    /// <summary>The parts.</summary>
    public TubeAssembly Assembly { get; }

    /// <summary>The bore, from lips to open end.</summary>
    public Bore Bore { get; }

    /// <summary>For each section of the bore the part that it belongs to.</summary>
    public IReadOnlyList<TubePart> SectionParts { get; }

    /// <summary>How long each pipe is cut, from the blown end.</summary>
    public IReadOnlyList<PipeCut> Cuts { get; }

    /// <summary>The cut of the pipe whose length was open; null if all were known.</summary>
    public PipeCut? FreeCut => Cuts.FirstOrDefault(cut => ReferenceEquals(cut.Pipe, Assembly.FreePipe));

    /// <summary>The section of the bore that is the straight part of the open pipe; −1 if all lengths were known.</summary>
    internal int FreeSection { get; }
}

/// <summary>A pipe and the length to which it is cut.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="Cut">The length to which it is cut, sockets included.</param>
/// <param name="Hidden">How much of that is taken by what is pushed into it or formed from it.</param>
public sealed record PipeCut(PipePart Pipe, Length Cut, Length Hidden);
