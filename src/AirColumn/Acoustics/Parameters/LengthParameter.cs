using UnitsNet;

namespace AirColumn.Acoustics.Parameters;

/// <summary>The length of a section.</summary>
internal sealed record LengthParameter(int Section) : ColumnParameter
{
    public override string Unit => "m";

    internal override (int First, int Last)? Sections => (Section, Section);

    internal override ColumnParameter After(int sections) => this with { Section = Section - sections };

    internal override double StepAt(in ColumnParts parts) => 1e-3 * Of(parts);

    internal override double Of(in ColumnParts parts) => parts.SectionAt(Section, this).LengthMetres;

    internal override ColumnParts With(in ColumnParts parts, double value)
    {
        _ = parts.SectionAt(Section, this);
        return parts with { Bore = parts.Bore.WithSectionLength(Section, Length.FromMeters(value)) };
    }

    /// <summary>Of which section, counted from 1.</summary>
    public override string ToString() => $"length of section {Section + 1}";
}
