using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Kernels;
using AirColumn.Acoustics.Multimodal;
using AirColumn.Acoustics.Radiation;
using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Acoustics;

/// <summary>The two-ports that a bore has become, from which another that differs in little takes over what is the same.</summary>
internal sealed class CompiledColumn
{
    public required ColumnParts Parts { get; init; }

    /// <summary>For each section its elements, every tone hole open, the mass of a step before it the first.</summary>
    public required CompiledSection[] Sections { get; init; }

    /// <summary>For each tone hole, from the blown end, its two states.</summary>
    public required IReadOnlyList<HoleStates> Holes { get; init; }

    /// <summary>What ends the bore.</summary>
    public required FarEndLoad Load { get; init; }

    /// <summary>What lies outside the blown end.</summary>
    public required BlownLoad Blown { get; init; }

    /// <summary>What the models of the air used had to say.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>Mouths that were computed for the modes of this column or of one before it.</summary>
    public required MouthStore Mouths { get; init; }

    /// <summary>Series of stretches of this column or of one before it.</summary>
    public required SeriesStore Series { get; init; }

    /// <summary>All elements from the blown end, each tone hole in the state that is asked for.</summary>
    public Element[] Fingered(bool[] open)
    {
        var count = 0;
        foreach (var section in Sections)
        {
            count += section.Elements.Length;
        }

        var elements = new Element[count];
        var n = 0;
        foreach (var section in Sections)
        {
            foreach (var element in section.Elements)
            {
                elements[n++] = element;
            }
        }

        var hole = 0;
        for (var i = 0; i < elements.Length && hole < Holes.Count; i++)
        {
            if (elements[i] is SideElement { IsHole: true })
            {
                elements[i] = open[hole] ? Holes[hole].Open : Holes[hole].Closed;
                hole++;
            }
        }

        return elements;
    }
}

/// <summary>What a section has become.</summary>
/// <param name="Section">The section.</param>
/// <param name="Elements">Its two-ports from the blown end.</param>
/// <param name="IsWhole">Whether nothing opens into it and one air fills it.</param>
internal sealed record CompiledSection(Section Section, Element[] Elements, bool IsWhole);

/// <summary>A tone hole in its two states, and what these depend on.</summary>
internal readonly record struct HoleStates(
    ToneHole Hole,
    double BoreRadius,
    GasConstants Gas,
    SideElement Open,
    SideElement Closed
);
