using AirColumn.Acoustics.Junctions;
using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Line;

/// <summary>Turns a bore into the parts it is made of, in order from the blown end, each in its own air.</summary>
internal sealed class LineBuilder
{
    // Slices shorter than this part of the bore are rounding of a place that was meant to be one.
    private const double SamePlace = 1e-12;

    private readonly Bore bore;
    private readonly AirProfile profile;
    private readonly ColumnOptions options;
    private readonly double length;
    private readonly double[] divisions;
    private readonly ColumnLine? previous; // in one and the same air, with the same options; else null
    private readonly List<HoleStates> holes = [];
    private readonly StepStore steps;
    private readonly List<Medium> media;
    private readonly SortedSet<string> warnings = new(StringComparer.Ordinal);
    private readonly GasConstants? gas; // where one fills all

    private LineBuilder(in ColumnParts parts, ColumnLine? previous, StepStore steps)
    {
        this.steps = steps;
        (bore, profile, options) = parts;
        length = bore.LengthMetres;
        divisions = profile.IsUniform ? [] : [.. profile.Divisions(length).Order()];
        if (profile.IsUniform)
        {
            gas = GasAt(0);
        }

        this.previous = profile.IsUniform ? previous : null;
        media = this.previous is null ? [] : [.. this.previous.Media];
    }

    /// <summary>The column; what has not changed since another was compiled is taken from that.</summary>
    public static ColumnLine Compile(in ColumnParts asked, ColumnLine? previous)
    {
        var parts = asked.Decided();
        var sameOptions =
            previous is not null && AreLike(parts.Options, previous.Parts.Options) ? previous : null;
        var likeBefore = parts.Air.Equals(sameOptions?.Parts.Air) ? sameOptions : null;
        var compiler = new LineBuilder(parts, likeBefore, previous?.Steps ?? new StepStore());
        return likeBefore is not null && ReferenceEquals(parts.Bore, likeBefore.Parts.Bore)
            ? new ColumnLine
            {
                Parts = parts,
                Sections = likeBefore.Sections,
                Steps = likeBefore.Steps,
                Holes = likeBefore.Holes,
                Load = likeBefore.Load,
                Blown = compiler.Blown(),
                Warnings = likeBefore.Warnings,
                Media = likeBefore.Media,
            }
            : compiler.Run(parts, sameOptions);
    }

    private static bool AreLike(ColumnOptions a, ColumnOptions b) =>
        a.Wavefronts == b.Wavefronts
        && a.Losses == b.Losses
        && a.LossFactor.Equals(b.LossFactor)
        && a.Radiation == b.Radiation
        && a.RelativeTolerance.Equals(b.RelativeTolerance);

    private ColumnLine Run(in ColumnParts parts, ColumnLine? sameOptions)
    {
        var sections = Sections();
        // Modes know by themselves what steps near each other do.
        var clusters = options.Wavefronts == Wavefronts.Multimodal ? [] : StepCluster.Of(bore, GasAt, steps);
        StepCluster.Join(bore, clusters, sections);
        return new ColumnLine
        {
            Parts = parts,
            Sections = sections,
            Steps = steps,
            Holes = holes,
            Load = Load(sameOptions),
            Blown = Blown(),
            Warnings = [.. warnings],
            Media = media,
        };
    }

    private InputTermination Blown()
    {
        var radius = bore.Sections[0].WallAt(0).Radius;
        return
            previous is { Parts: var before }
            && options.BlownEnd.Equals(before.Options.BlownEnd)
            && radius.Equals(before.Bore.Sections[0].WallAt(0).Radius)
            ? previous.Blown
            : new InputTermination(options.BlownEnd, radius, GasAt(0));
    }

    private Termination Load(ColumnLine? sameOptions)
    {
        var last = bore.Sections[^1];
        var isSameEnd =
            sameOptions is { Parts.Bore: var before }
            && ReferenceEquals(last, before.Sections[^1])
            && bore.FarEnd.Equals(before.FarEnd);
        return isSameEnd && previous is not null ? previous.Load
            : isSameEnd ? sameOptions!.Load.In(GasAt(length))
            : new Termination(bore.FarEnd, last.WallAt(last.LengthMetres), GasAt(length), options);
    }

    // A hole that is what it was, in a bore that is what it was, sounds as it did.
    private HoleStates Hole(ToneHole hole)
    {
        var radius = bore.RadiusAt(hole.PositionMetres);
        var filling = GasAt(hole.PositionMetres);
        var states =
            previous is not null
            && holes.Count < previous.Holes.Count
            && previous.Holes[holes.Count] is var before
            && before.BoreRadius.Equals(radius)
            && before.Gas == filling
            && (ReferenceEquals(before.Hole, hole) || IsSameOpening(before.Hole, hole))
                ? before
                : new HoleStates(
                    hole,
                    radius,
                    filling,
                    Hole(hole, radius, filling, true),
                    Hole(hole, radius, filling, false)
                );
        holes.Add(states);
        return states;
    }

    private static bool IsSameOpening(ToneHole a, ToneHole b) =>
        a.Radius.Equals(b.Radius)
        && a.HeightMetres.Equals(b.HeightMetres)
        && a.ChimneyWallMetres.Equals(b.ChimneyWallMetres)
        && Equals(a.Pad, b.Pad);

    private SideColumn Hole(ToneHole hole, double boreRadius, GasConstants gas, bool isOpen)
    {
        var at = new SideOpening(boreRadius, hole.Radius, hole.HeightMetres, isOpen);
        var parts = new List<LinePart>
        {
            new BoreSegment(
                new CylinderSection(hole.Radius, hole.HeightMetres + at.MatchingLength),
                MediumOf(gas),
                options.Wavefronts
            ),
        };
        if (isOpen && hole.Pad is { } pad)
        {
            var added = PadCorrection.Length(hole.Radius, pad, hole.ChimneyWallMetres);
            parts.Add(new SeriesMass(gas.Density * added / Area(hole.Radius)));
        }

        var load =
            !isOpen ? new Termination(new ClosedEnd(), hole.Radius, gas)
            : hole.ChimneyWallMetres is { } wall
                ? new Termination(new OpenEnd(UnitsNet.Length.FromMeters(wall)), hole.Radius, gas)
            : Termination.OfHole(hole.Radius, at.BoreRadius + hole.HeightMetres, gas);
        return Side(at, gas, parts, load, true);
    }

    private LineSection[] Sections()
    {
        if (SectionsLikeBefore() is { } alike)
        {
            return alike;
        }

        var openings = Openings();
        var sections = new LineSection[bore.Sections.Count];
        var x = 0.0;
        for (var i = 0; i < sections.Length; i++)
        {
            var section = bore.Sections[i];
            var before = i > 0 ? bore.Sections[i - 1] : null;
            var isWhole =
                gas is not null
                && !(openings.TryPeek(out var opening) && opening.Position < x + section.LengthMetres);
            sections[i] =
                isWhole && Unchanged(i, before, section) is { } compiled
                    ? compiled
                    : new LineSection(
                        section,
                        [.. Step(before, section, x), .. PartsOf(section, x, openings)],
                        isWhole
                    );
            x += section.LengthMetres;
        }

        return sections;
    }

    // Where nothing opens into the bore and it has as many sections: those that are the same objects, and begin behind the same, are taken
    // over without a look at them. Null elsewhere.
    private LineSection[]? SectionsLikeBefore()
    {
        if (
            previous is null
            || bore.Holes.Count + bore.Branches.Count > 0
            || bore.Sections.Count != previous.Sections.Length
            || previous.Holes.Count + previous.Parts.Bore.Branches.Count > 0
        )
        {
            return null;
        }

        var sections = (LineSection[])previous.Sections.Clone();
        Section? before = null;
        var wasSame = true;
        var x = 0.0;
        for (var i = 0; i < sections.Length; i++)
        {
            var section = bore.Sections[i];
            var isSame = ReferenceEquals(section, sections[i].Section);
            if (!isSame || !wasSame)
            {
                sections[i] = new LineSection(
                    section,
                    [.. Step(before, section, x), .. PartsOf(section, x, new())],
                    true
                );
            }

            (before, wasSame) = (section, isSame);
            x += section.LengthMetres;
        }

        return sections;
    }

    private Queue<(double Position, Func<LinePart> Compile)> Openings() =>
        bore.Holes.Count + bore.Branches.Count == 0
            ? new()
            : new(
                bore.Holes.Select(hole => (hole.PositionMetres, (Func<LinePart>)(() => Hole(hole).Open)))
                    .Concat(
                        bore.Branches.Select(branch =>
                            (branch.PositionMetres, (Func<LinePart>)(() => Branch(branch)))
                        )
                    )
                    .OrderBy(opening => opening.Item1)
            );

    private LineSection? Unchanged(int i, Section? before, Section section) =>
        previous is not null
        && i < previous.Sections.Length
        && previous.Sections[i] is { IsWhole: true } compiled
        && ReferenceEquals(compiled.Section, section)
        && ReferenceEquals(before, i > 0 ? previous.Sections[i - 1].Section : null)
            ? compiled
            : null;

    private IEnumerable<SeriesMass> Step(Section? before, Section section, double x)
    {
        if (before is not null && Bore.IsStep(before, section))
        {
            var filling = GasAt(x);
            var step = new StepInertance(
                before.WallAt(before.LengthMetres).Radius,
                section.WallAt(0).Radius,
                filling.Density,
                filling.SpeedOfSound
            );
            yield return new SeriesMass(step);
        }
    }

    private IEnumerable<LinePart> PartsOf(
        Section section,
        double start,
        Queue<(double Position, Func<LinePart> Compile)> openings
    )
    {
        var x = start;
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
                        yield return new BoreSegment(slice, MediumOf(filling), options.Wavefronts);
                    }

                    from = to;
                }

                yield return opening.Compile();
            }

            foreach (var (slice, filling) in Slices(part, x, from, part.LengthMetres))
            {
                yield return new BoreSegment(slice, MediumOf(filling), options.Wavefronts);
            }

            x += part.LengthMetres;
        }
    }

    private SideColumn Branch(SideBranch branch)
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
        // What is said of the main bore's ends is not said of a branch's; and a branch has no modes.
        var line = Compile(
            new(
                inner,
                AirProfile.Uniform(air),
                options with
                {
                    Radiation = RadiationModel.Exact,
                    BlownEnd = BlownEnd.Closed,
                    Wavefronts =
                        options.Wavefronts == Wavefronts.Multimodal ? Wavefronts.Curved : options.Wavefronts,
                }
            ),
            null
        );
        return Side(
            at,
            gas,
            [
                new BoreSegment(
                    new CylinderSection(at.Radius, at.MatchingLength),
                    MediumOf(gas),
                    options.Wavefronts
                ),
                .. line.Sections.SelectMany(section => section.Parts),
            ],
            line.Load,
            false
        );
    }

    private static SideColumn Side(
        SideOpening at,
        GasConstants gas,
        IEnumerable<LinePart> parts,
        Termination load,
        bool isHole
    )
    {
        var series = gas.Density * at.SeriesLength / Area(at.BoreRadius);
        return new SideColumn
        {
            Parts = [new SeriesMass(at.FootMass(gas.Density, gas.SpeedOfSound)), .. parts],
            End = load,
            SeriesMass = series,
            Impedance = gas.Density * gas.SpeedOfSound / Area(at.Radius),
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

    private Medium MediumOf(in GasConstants constants)
    {
        foreach (var medium in media)
        {
            if (medium.Gas == constants)
            {
                return medium;
            }
        }

        var made = new Medium(constants, options.Losses);
        media.Add(made);
        return made;
    }

    private GasConstants GasAt(double metres)
    {
        if (gas is { } everywhere)
        {
            return everywhere;
        }

        var air = profile.At(metres, length);
        warnings.UnionWith(air.Warnings);
        return air.Constants.AtWalls(options.LossFactor);
    }
}
