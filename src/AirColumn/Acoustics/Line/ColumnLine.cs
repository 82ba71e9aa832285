namespace AirColumn.Acoustics.Line;

/// <summary>The parts that a bore has become, from which another that differs in little takes over what is the same.</summary>
internal sealed class ColumnLine
{
    public required ColumnParts Parts { get; init; }

    /// <summary>For each section its parts, every tone hole open, the mass of a step before it the first.</summary>
    public required LineSection[] Sections { get; init; }

    /// <summary>What steps near each other do.</summary>
    public required StepStore Steps { get; init; }

    /// <summary>For each tone hole, from the blown end, its two states.</summary>
    public required IReadOnlyList<HoleStates> Holes { get; init; }

    /// <summary>What ends the bore.</summary>
    public required Termination Load { get; init; }

    /// <summary>What lies outside the blown end.</summary>
    public required InputTermination Blown { get; init; }

    /// <summary>The air in it.</summary>
    public required IReadOnlyList<Medium> Media { get; init; }

    /// <summary>What the models of the air used had to say.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>All parts from the blown end, each tone hole in the state that is asked for.</summary>
    public LinePart[] Fingered(bool[] open)
    {
        var count = 0;
        foreach (var section in Sections)
        {
            count += section.Parts.Length;
        }

        var parts = new LinePart[count];
        var n = 0;
        foreach (var section in Sections)
        {
            foreach (var part in section.Parts)
            {
                parts[n++] = part;
            }
        }

        var hole = 0;
        for (var i = 0; i < parts.Length && hole < Holes.Count; i++)
        {
            if (parts[i] is SideColumn { IsHole: true })
            {
                parts[i] = open[hole] ? Holes[hole].Open : Holes[hole].Closed;
                hole++;
            }
        }

        return parts;
    }
}

/// <summary>What a section has become.</summary>
/// <param name="Section">The section.</param>
/// <param name="Parts">Its parts from the blown end.</param>
/// <param name="IsWhole">Whether nothing opens into it and one air fills it.</param>
internal sealed record LineSection(Section Section, LinePart[] Parts, bool IsWhole);

/// <summary>A tone hole in its two states, and what these depend on.</summary>
internal readonly record struct HoleStates(
    ToneHole Hole,
    double BoreRadius,
    GasConstants Gas,
    SideColumn Open,
    SideColumn Closed
);
