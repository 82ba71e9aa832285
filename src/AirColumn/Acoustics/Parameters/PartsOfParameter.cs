using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics.Parameters;

/// <summary>What parameters speak of.</summary>
internal static class PartsOfParameter
{
    /// <summary>A section that a parameter speaks of.</summary>
    /// <exception cref="ArgumentException">The bore does not have as many.</exception>
    public static Section SectionAt(this in ColumnParts parts, int index, IColumnChange parameter) =>
        index < parts.Bore.Sections.Count
            ? parts.Bore.Sections[index]
            : throw new ArgumentException(
                $"The column has no {parameter}: its bore has {parts.Bore.Sections.Count} {(parts.Bore.Sections.Count == 1 ? "section" : "sections")}.",
                nameof(parameter)
            );
}
