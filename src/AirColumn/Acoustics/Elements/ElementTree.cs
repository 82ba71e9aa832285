using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Elements;

/// <summary>Elements with what branches off them.</summary>
internal static class ElementTree
{
    /// <summary>What ends side openings, and theirs.</summary>
    public static IEnumerable<FarEndLoad> Loads(IEnumerable<Element> elements) =>
        elements.OfType<SideElement>().SelectMany(side => Loads(side.Elements).Prepend(side.Load));

    /// <summary>The sections, those of the branches too.</summary>
    public static IEnumerable<SectionElement> Sections(IEnumerable<Element> elements) =>
        elements.SelectMany(element =>
            element switch
            {
                SectionElement section => [section],
                SideElement side => Sections(side.Elements),
                _ => [],
            }
        );
}
