using AirColumn.Acoustics.Line;
using UnitsNet;

namespace AirColumn.Acoustics.Parameters;

/// <summary>Diameter or place of a point of a profile.</summary>
internal sealed record PointParameter(int Section, int Point, bool IsPosition) : IColumnChange
{
    public string Unit => "m";

    public (int First, int Last)? Sections => (Section, Section);

    public IColumnChange After(int sections) => this with { Section = Section - sections };

    public double StepAt(in ColumnParts parts)
    {
        var profile = Profile(parts);
        return 1e-3
            * (
                IsPosition
                    ? Math.Min(
                        profile.Positions[Point] - profile.Positions[Point - 1],
                        profile.Positions[Point + 1] - profile.Positions[Point]
                    )
                    : Of(parts)
            );
    }

    public double Of(in ColumnParts parts)
    {
        var point = Profile(parts).Points[Point];
        return IsPosition ? point.Position.Meters : point.Diameter.Meters;
    }

    public ColumnParts With(in ColumnParts parts, double value)
    {
        var profile = Profile(parts);
        var point = profile.Points[Point];
        var changed = IsPosition
            ? point with
            {
                Position = Length.FromMeters(value),
            }
            : point with
            {
                Diameter = Length.FromMeters(value),
            };
        return parts with { Bore = parts.Bore.WithSection(Section, profile.WithPoint(Point, changed)) };
    }

    private ProfileSection Profile(in ColumnParts parts)
    {
        var profile =
            parts.SectionAt(Section, this) as ProfileSection
            ?? throw new ArgumentException(
                $"The column has no {this}: its section {Section + 1} is not a profile.",
                nameof(parts)
            );
        var (first, last) = IsPosition ? (1, profile.Positions.Count - 2) : (0, profile.Positions.Count - 1);
        return Point >= first && Point <= last
            ? profile
            : throw new ArgumentException(
                $"The column has no {this}: allowed are points {first + 1} to {last + 1} of {profile.Positions.Count}.",
                nameof(parts)
            );
    }

    /// <summary>Of which point of which section, counted from 1.</summary>
    public override string ToString() =>
        $"{(IsPosition ? "place" : "diameter")} of point {Point + 1} of section {Section + 1}";
}
