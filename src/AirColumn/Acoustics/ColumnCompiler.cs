using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Junctions;
using AirColumn.Acoustics.Radiation;
using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Acoustics;

/// <summary>Turns a bore into the two-ports it is made of, in order from the blown end.</summary>
internal sealed class ColumnCompiler(Bore bore, GasConstants gas, ColumnOptions options)
{
    // Below this share of a section no slice is made: it would be rounding.
    private const double ThinnestSlice = 1e-12;

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
            var length = PadCorrection.Length(hole.Radius, pad, hole.ChimneyWallMetres);
            elements.Add(new InertanceElement(gas.Density * length / Area(hole.Radius)));
        }

        var load =
            !isOpen ? new FarEndLoad(new ClosedEnd(), hole.Radius, gas)
            : hole.ChimneyWallMetres is { } wall
                ? new FarEndLoad(new OpenEnd(UnitsNet.Length.FromMeters(wall)), hole.Radius, gas)
            : FarEndLoad.OfHole(hole.Radius, at.BoreRadius + hole.HeightMetres, gas);
        return Side(at, elements, load, true);
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
        var start = 0.0;
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
                var from = 0.0;
                var length = part.LengthMetres;
                while (openings.TryPeek(out var opening) && opening.Position < start + length)
                {
                    openings.Dequeue();
                    var to = opening.Position - start;
                    if (to - from > ThinnestSlice * length)
                    {
                        yield return new SectionElement(part.Slice(from, to), gas, options);
                        from = to;
                    }

                    yield return opening.Compile();
                }

                yield return new SectionElement(from == 0 ? part : part.Slice(from, length), gas, options);
                start += length;
            }

            before = section;
        }
    }

    private SideElement Branch(SideBranch branch)
    {
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
            [
                new SectionElement(new CylinderSection(at.Radius, at.MatchingLength), gas, options),
                .. new ColumnCompiler(inner, gas, options).Elements(),
            ],
            new FarEndLoad(inner.FarEnd, last.WallAt(last.LengthMetres).Radius, gas),
            false
        );
    }

    private SideElement Side(SideOpening at, IEnumerable<Element> elements, FarEndLoad load, bool isHole)
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
}

/// <summary>Where a tone hole is among the elements of a column, and its two states.</summary>
internal readonly record struct HoleSite(int Index, SideElement Open, SideElement Closed);
