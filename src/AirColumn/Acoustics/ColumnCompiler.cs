using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Junctions;
using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Acoustics;

/// <summary>Turns a bore into the two-ports it is made of, in order from the blown end, each in its own air.</summary>
internal sealed class ColumnCompiler
{
    // Slices shorter than this part of the bore are rounding of a place that was meant to be one.
    private const double SamePlace = 1e-12;

    private readonly Bore bore;
    private readonly AirProfile profile;
    private readonly ColumnOptions options;
    private readonly double length;
    private readonly double[] divisions;
    private readonly SortedSet<string> warnings = new(StringComparer.Ordinal);

    public ColumnCompiler(Bore bore, AirProfile profile, ColumnOptions options)
    {
        this.bore = bore;
        this.profile = profile;
        this.options = options;
        length = bore.LengthMetres;
        divisions = [.. profile.Divisions(length).Order()];
    }

    /// <summary>What the models of the air used had to say.</summary>
    public IReadOnlyCollection<string> Warnings => warnings;

    public Element[] Compile() => [.. Elements()];

    private IEnumerable<Element> Elements()
    {
        Section? before = null;
        var x = 0.0;
        foreach (var section in bore.Sections)
        {
            if (before is not null && Bore.IsStep(before, section))
            {
                var gas = GasAt(x);
                yield return new InertanceElement(
                    new StepInertance(
                        before.WallAt(before.LengthMetres).Radius,
                        section.WallAt(0).Radius,
                        gas.Density,
                        gas.SpeedOfSound
                    )
                );
            }

            foreach (var part in section.SmoothParts)
            {
                foreach (var (slice, filling) in Slices(part, x))
                {
                    yield return new SectionElement(slice, filling, options);
                }

                x += part.LengthMetres;
            }

            before = section;
        }
    }

    private IEnumerable<(Section Slice, GasConstants Gas)> Slices(Section part, double start)
    {
        var from = 0.0;
        foreach (var division in divisions)
        {
            var to = division - start;
            if (to > from + SamePlace * length && to < part.LengthMetres - SamePlace * length)
            {
                yield return (part.Slice(from, to), GasAt(start + (from + to) / 2));
                from = to;
            }
        }

        yield return (
            from == 0 ? part : part.Slice(from, part.LengthMetres),
            GasAt(start + (from + part.LengthMetres) / 2)
        );
    }

    private GasConstants GasAt(double metres)
    {
        var air = profile.At(metres, length);
        warnings.UnionWith(air.Warnings);
        return air.Constants;
    }
}
