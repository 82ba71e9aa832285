using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Junctions;
using AirColumn.Acoustics.Radiation;
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

    /// <summary>The two-ports, every tone hole open, and where among them the holes are.</summary>
    public (Element[] Elements, HoleSite[] Holes) Compile()
    {
        Element[] elements = [.. Elements()];
        var sites = new List<HoleSite>();
        for (var i = 0; i < elements.Length; i++)
        {
            if (elements[i] is SideElement { IsHole: true } open)
            {
                sites.Add(new HoleSite(i, open, Hole(bore.Holes[sites.Count], false)));
            }
        }

        return (elements, [.. sites]);
    }

    private SideElement Hole(ToneHole hole, bool isOpen)
    {
        var gas = GasAt(hole.PositionMetres);
        var at = new SideOpening(bore.RadiusAt(hole.PositionMetres), hole.Radius, hole.HeightMetres, isOpen);
        var elements = new List<Element>
        {
            new SectionElement(
                new CylinderSection(hole.Radius, hole.HeightMetres + at.MatchingLength),
                gas,
                options
            ),
        };
        if (isOpen && hole.Pad is { } pad)
        {
            var added = PadCorrection.Length(hole.Radius, pad, hole.ChimneyWallMetres);
            elements.Add(new InertanceElement(gas.Density * added / Area(hole.Radius)));
        }

        var load =
            !isOpen ? new FarEndLoad(new ClosedEnd(), hole.Radius, gas)
            : hole.ChimneyWallMetres is { } wall
                ? new FarEndLoad(new OpenEnd(UnitsNet.Length.FromMeters(wall)), hole.Radius, gas)
            : FarEndLoad.OfHole(hole.Radius, at.BoreRadius + hole.HeightMetres, gas);
        return Side(at, gas, elements, load, true);
    }

    private IEnumerable<Element> Elements()
    {
        var openings = new Queue<(double Position, Func<Element> Compile)>(
            bore.Holes.Select(hole => (hole.PositionMetres, (Func<Element>)(() => Hole(hole, true))))
                .Concat(
                    bore.Branches.Select(branch =>
                        (branch.PositionMetres, (Func<Element>)(() => Branch(branch)))
                    )
                )
                .OrderBy(opening => opening.Item1)
        );
        Section? before = null;
        var x = 0.0;
        foreach (var section in bore.Sections)
        {
            if (before is not null && Bore.IsStep(before, section))
            {
                var gas = GasAt(x);
                var step = new StepInertance(
                    before.WallAt(before.LengthMetres).Radius,
                    section.WallAt(0).Radius,
                    gas.Density,
                    gas.SpeedOfSound
                );
                yield return new InertanceElement(step.At, step.HeldFrom);
            }

            foreach (var part in section.SmoothParts)
            {
                var from = 0.0;
                while (openings.TryPeek(out var opening) && opening.Position < x + part.LengthMetres)
                {
                    openings.Dequeue();
                    var to = opening.Position - x;
                    if (to - from > SamePlace * length)
                    {
                        foreach (var (slice, filling) in Slices(part, x, from, to))
                        {
                            yield return new SectionElement(slice, filling, options);
                        }

                        from = to;
                    }

                    yield return opening.Compile();
                }

                foreach (var (slice, filling) in Slices(part, x, from, part.LengthMetres))
                {
                    yield return new SectionElement(slice, filling, options);
                }

                x += part.LengthMetres;
            }

            before = section;
        }
    }

    private SideElement Branch(SideBranch branch)
    {
        // What fills a branch is the air at its foot.
        var air = profile.At(branch.PositionMetres, length);
        var gas = GasAt(branch.PositionMetres);
        var inner = branch.Bore;
        var at = new SideOpening(
            bore.RadiusAt(branch.PositionMetres),
            branch.FootRadius,
            inner.LengthMetres,
            inner.FarEnd is not ClosedEnd
        );
        var last = inner.Sections[^1];
        return Side(
            at,
            gas,
            [
                new SectionElement(new CylinderSection(at.Radius, at.MatchingLength), gas, options),
                .. new ColumnCompiler(inner, AirProfile.Uniform(air), options).Elements(),
            ],
            new FarEndLoad(
                inner.FarEnd,
                last.WallAt(last.LengthMetres),
                gas,
                options with
                {
                    Radiation = RadiationModel.Exact,
                }
            ),
            false
        );
    }

    private static SideElement Side(
        SideOpening at,
        GasConstants gas,
        IEnumerable<Element> elements,
        FarEndLoad load,
        bool isHole
    )
    {
        var series = gas.Density * at.SeriesLength / Area(at.BoreRadius);
        var foot = gas.Density * at.InnerLength / Area(at.Radius) - series / 4;
        return new SideElement(
            [new InertanceElement(foot), .. elements],
            load,
            series,
            gas.Density * gas.SpeedOfSound / Area(at.Radius)
        )
        {
            IsHole = isHole,
        };
    }

    private static double Area(double radius) => Math.PI * radius * radius;

    private IEnumerable<(Section Slice, GasConstants Gas)> Slices(
        Section part,
        double start,
        double from,
        double end
    )
    {
        foreach (var division in divisions)
        {
            var to = division - start;
            if (to > from + SamePlace * length && to < end - SamePlace * length)
            {
                yield return (part.Slice(from, to), GasAt(start + (from + to) / 2));
                from = to;
            }
        }

        yield return (
            from == 0 && end == part.LengthMetres ? part : part.Slice(from, end),
            GasAt(start + (from + end) / 2)
        );
    }

    private GasConstants GasAt(double metres)
    {
        var air = profile.At(metres, length);
        warnings.UnionWith(air.Warnings);
        return air.Constants;
    }
}

/// <summary>Where a tone hole is among the elements of a column, and its two states.</summary>
internal readonly record struct HoleSite(int Index, SideElement Open, SideElement Closed);
