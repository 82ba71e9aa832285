using AirColumn.Acoustics.Line;
using UnitsNet;

namespace AirColumn.Acoustics.Parameters;

/// <summary>The length of a section.</summary>
internal sealed record LengthParameter(int Section) : IColumnChange
{
    public string Unit => "m";

    public (int First, int Last)? Sections => (Section, Section);

    public IColumnChange After(int sections) => this with { Section = Section - sections };

    public double StepAt(in ColumnParts parts) => 1e-3 * Of(parts);

    public double Of(in ColumnParts parts) => parts.SectionAt(Section, this).LengthMetres;

    public ColumnParts With(in ColumnParts parts, double value)
    {
        _ = parts.SectionAt(Section, this);
        return parts with { Bore = parts.Bore.WithSectionLength(Section, Length.FromMeters(value)) };
    }

    /// <summary>Of which section, counted from 1.</summary>
    public override string ToString() => $"length of section {Section + 1}";
}
