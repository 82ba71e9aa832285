using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Junctions;
using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Acoustics;

/// <summary>Turns a bore into the two-ports it is made of, in order from the blown end.</summary>
internal sealed class ColumnCompiler(Bore bore, GasConstants gas, ColumnOptions options)
{
    public Element[] Compile() => [.. Elements()];

    private IEnumerable<Element> Elements()
    {
        Section? before = null;
        foreach (var section in bore.Sections)
        {
            if (before is not null && Bore.IsStep(before, section))
            {
                yield return new InertanceElement(
                    StepInertance.Between(
                        before.WallAt(before.LengthMetres).Radius,
                        section.WallAt(0).Radius,
                        gas.Density
                    )
                );
            }

            foreach (var part in section.SmoothParts)
            {
                yield return new SectionElement(part, gas, options);
            }

            before = section;
        }
    }
}
