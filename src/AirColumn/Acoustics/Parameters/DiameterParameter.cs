using AirColumn.Acoustics.Line;

namespace AirColumn.Acoustics.Parameters;

/// <summary>The diameter of a section at one end or at both.</summary>
internal sealed record DiameterParameter(int Section, bool Inlet, bool Outlet) : IColumnChange
{
    public string Unit => "m";

    public (int First, int Last)? Sections => (Section, Section);

    public IColumnChange After(int sections) => this with { Section = Section - sections };

    public double StepAt(in ColumnParts parts)
    {
        var section = parts.SectionAt(Section, this);
        return 1e-3 * 2 * Math.Min(Radius(section, true), Radius(section, false));
    }

    public double Of(in ColumnParts parts) => 2 * Radius(parts.SectionAt(Section, this), Inlet);

    public ColumnParts With(in ColumnParts parts, double value)
    {
        var section = parts.SectionAt(Section, this);
        var (inlet, outlet) = (Radius(section, true), Radius(section, false));
        var change = value / 2 - Radius(section, Inlet);
        return parts with
        {
            Bore = parts.Bore.WithSection(
                Section,
                section.WithEnds(Inlet ? inlet + change : inlet, Outlet ? outlet + change : outlet)
            ),
        };
    }

    private static double Radius(Section section, bool inlet) =>
        section.WallAt(inlet ? 0 : section.LengthMetres).Radius;

    /// <summary>Which diameter of which section, counted from 1.</summary>
    public override string ToString() =>
        (Inlet, Outlet) switch
        {
            (true, true) => $"diameter of section {Section + 1}",
            (true, false) => $"inlet diameter of section {Section + 1}",
            _ => $"outlet diameter of section {Section + 1}",
        };
}
