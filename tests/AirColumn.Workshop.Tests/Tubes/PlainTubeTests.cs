using AirColumn.Workshop.Tubes;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests.Tubes;

/// <summary>A pipe with a fitting at either end or none.</summary>
public class PlainTubeTests
{
    private static TubeAssembly Fitted { get; } =
        TubeAssembly.OnePipe(
            Mm(44.5),
            Mm(2.8),
            new AddedPart("mouthpiece", Mm(22), Mm(31)),
            new AddedPart("coupler", Mm(48), Mm(50.6))
        );

    // The bore is put together here, part by part, and the engine asked again.
    private static double CentsOf(TubeAssembly tube, Length pipe, Frequency target, Air air)
    {
        var builder = Bore.Build();
        foreach (var part in tube.Parts)
        {
            builder = part switch
            {
                AddedPart added => builder.Cylinder(added.Inside, added.Adds),
                PipePart straight => builder.Cylinder(straight.Inside, pipe),
                _ => throw new ArgumentException(part.Name),
            };
        }

        var first = new Column(builder.OpenEnd(tube.Wall), air).FirstResonances(1)[0];
        return Cents.Between(target, first.Frequency);
    }

    private static Length Added(TubeAssembly tube) =>
        Mm(tube.Parts.OfType<AddedPart>().Sum(part => part.Adds.Millimeters));

    [Draws(quick: 10, inLong: 100)]
    public void Rebuilt_tube_sounds_what_every_cut_promises(
        byte pitch,
        byte pipe,
        byte mouth,
        byte end,
        bool bare
    )
    {
        var parts = bare
            ? TubeAssembly.OnePipe(Mm(30 + pipe % 30), Mm(pipe % 5))
            : TubeAssembly.OnePipe(
                Mm(30 + pipe % 30),
                Mm(pipe % 5),
                new AddedPart("mouth", Mm(5 + mouth % 60), Mm(25 + mouth % 15)),
                new AddedPart("end", Mm(5 + end % 90), Mm(30 + end % 60))
            );
        var note = Pitch.FromNumber(30 + pitch % 24);
        var target = Tuning.Concert.FrequencyOf(note);
        var plan = TubeBuilder.Plan(parts, note, Tuning.Concert, Room);

        Assert.True(plan.IsSolved, plan.Explanation);
        Assert.InRange(CentsOf(parts, plan.Exact.Cut, target, Room), -1e-5, 1e-5);
        BuiltTube[] cuts =
        [
            plan.Exact,
            plan.WholeMillimetre,
            plan.WholeSixteenth,
            plan.FirstCut,
            plan.FirstCutInches,
            QuarterWaveRule.Of(plan).Built!,
        ];
        Assert.All(
            cuts,
            cut =>
            {
                Assert.Equal(CentsOf(parts, cut.Cut, target, Room), cut.Cents, 1e-6);
                Assert.Equal(cut.Cents, Cents.Between(target, cut.FirstResonance), 1e-9);
                Assert.Equal(cut.Tube.Bore.Length.Millimeters, (cut.Cut + Added(parts)).Millimeters, 1e-9);
            }
        );
    }

    // Any parts a maker could measure and any note that could be asked for: a plan or a reason, never an exception.
    [Draws(quick: 15, inLong: 300)]
    public void Every_question_gets_a_plan_or_a_reason(
        ushort pipe,
        ushort wall,
        ushort mouth,
        ushort mouthLength,
        ushort end,
        ushort endLength,
        byte pitch
    )
    {
        // Spread evenly over the powers of ten between the limits.
        static Length Spread(ushort x, double from, double to) =>
            Mm(from * Math.Pow(to / from, x * 7919L % 1000 / 1000.0));

        var parts = TubeAssembly.OnePipe(
            Spread(pipe, 5, 500),
            wall % 3 == 0 ? Length.Zero : Spread(wall, 0.01, 100),
            mouth % 3 == 0
                ? null
                : new AddedPart("mouth", Spread(mouthLength, 0.1, 10_000), Spread(mouth, 5, 500)),
            end % 3 == 0 ? null : new AddedPart("end", Spread(endLength, 0.1, 10_000), Spread(end, 5, 500))
        );
        var plan = TubeBuilder.Plan(parts, Pitch.FromNumber(pitch % 160 - 10), Tuning.Concert, Room);

        Assert.NotEmpty(plan.Explanation);
        Assert.Equal(plan.IsSolved, plan.Exact is not null);
        if (plan.IsSolved)
        {
            Assert.InRange(plan.Exact.Cents, -1e-5, 1e-5);
            Assert.True(plan.CentsPerMillimetre < 0);
            Assert.True(plan.FirstLength.Exact > plan.Exact.Cut);
        }
    }

    // 344 mm wide and hardly longer: its resonance lies far below its mode.
    [Fact]
    public void Pipe_as_wide_as_it_is_long_gets_a_plan() =>
        Every_question_gets_a_plan_or_a_reason(1, 1, 0, 0, 0, 0, 81);

    [Fact]
    public void Rounded_cuts_are_whole_and_nearest()
    {
        var plan = Bench.Plan(Fitted, "E2");
        Assert.True(plan.IsSolved, plan.Explanation);
        var exact = plan.Exact.Cut.Millimeters;
        Assert.Equal(Math.Round(exact), plan.WholeMillimetre.Cut.Millimeters);
        Assert.Equal(Math.Round(exact / 25.4 * 16) * 25.4 / 16, plan.WholeSixteenth.Cut.Millimeters, 1e-9);
        // Longer is flatter.
        Assert.Equal(plan.WholeMillimetre.Cut > plan.Exact.Cut, plan.WholeMillimetre.Cents < 0);
        Assert.Equal(plan.WholeSixteenth.Cut > plan.Exact.Cut, plan.WholeSixteenth.Cents < 0);
    }

    // Makers' published lengths of plain 38 mm pipe (common practice). The note they play is said to lie 11 to 32 cents
    // above the first resonance computed for cold air (common practice), so the resonance lies that much below. They are
    // published to the whole centimetre: the length that was built may be half a centimetre longer or shorter.
    [Theory]
    [InlineData("C2", 1310)]
    [InlineData("D2", 1170)]
    [InlineData("E2", 1040)]
    public void Published_lengths_lie_between_the_plan_and_its_first_cut(string note, double published)
    {
        var parts = TubeAssembly.OnePipe(Mm(38));
        var plan = Bench.Plan(parts, note);
        Assert.True(plan.IsSolved, plan.Explanation);
        double CentsAt(double pipe) => CentsOf(parts, Mm(pipe), plan.Target, Room);
        Assert.True(CentsAt(published - 5) >= -32, "even the shortest is flatter than common practice");
        Assert.True(CentsAt(published + 5) <= -11, "even the longest is sharper than common practice");
        Assert.InRange(
            published,
            plan.Exact.Tube.Bore.Length.Millimeters,
            plan.FirstCut.Tube.Bore.Length.Millimeters
        );
    }

    // L = c/4f with 344 m/s, to the millimetre (common practice).
    [Theory]
    [InlineData("B1", 1.393)]
    [InlineData("C2", 1.315)]
    [InlineData("D2", 1.171)]
    [InlineData("E2", 1.044)]
    [InlineData("F2", 0.985)]
    public void Quarter_wave_rule_is_as_published(string note, double metres)
    {
        var air = Air.FromConstants(
            Speed.FromMetersPerSecond(344),
            Density.FromKilogramsPerCubicMeter(1.2),
            DynamicViscosity.FromPascalSeconds(1.8e-5),
            ThermalConductivity.FromWattsPerMeterKelvin(0.026),
            SpecificEntropy.FromJoulesPerKilogramKelvin(1006),
            1.4
        );
        var plan = Bench.Plan(TubeAssembly.OnePipe(Mm(40)), note, air);
        Assert.True(plan.IsSolved, plan.Explanation);
        var rule = QuarterWaveRule.Of(plan);
        Assert.InRange(rule.TotalLength.Meters, metres - 0.0006, metres + 0.0006);
        Assert.Equal(
            rule.TotalLength.Millimeters,
            (plan.Exact.Tube.Bore.Length + rule.Difference).Millimeters,
            1e-9
        );
        // An open end and wall losses both lower the resonance, so the rule is too long and the tube too flat.
        Assert.True(rule.Difference > Length.Zero);
        Assert.True(rule.Built!.Cents < 0);
        Assert.Equal(rule.TotalLength.Millimeters, rule.Built.Tube.Bore.Length.Millimeters, 1e-9);
    }

    // Straight tube on C2 at 20 °C and 50 %, 40.4 mm inside: 1290 mm; about 1.4 cents per mm at 1.2 m (computed
    // independently, to the digits given).
    [Fact]
    public void Straight_tube_on_c2_is_1290_mm()
    {
        var plan = Bench.Plan(TubeAssembly.OnePipe(Mm(40.4)), "C2");
        Assert.True(plan.IsSolved, plan.Explanation);
        Assert.InRange(plan.Exact.Tube.Bore.Length.Millimeters, 1289, 1291);
        var d2 = Bench.Plan(TubeAssembly.OnePipe(Mm(40.4)), "D2");
        Assert.InRange(d2.CentsPerMillimetre, -1.6, -1.4 + 0.05);
    }

    // A cylinder closed at one end overblows a twelfth: resonances near 3, 5 and 7 times the first, that is 1902, 2786
    // and 3369 cents above it; wall losses and the open end move them by a few cents only.
    [Fact]
    public void Plain_pipe_overblows_odd_harmonics()
    {
        var plan = Bench.Plan(TubeAssembly.OnePipe(Mm(40)), "D2");
        Assert.Equal([2, 3, 4], plan.Overblown.Select(note => note.Resonance));
        double[] expected = [1902, 2786, 3369];
        Assert.All(
            plan.Overblown.Zip(expected),
            pair => Assert.InRange(pair.First.CentsAboveFirst, pair.Second - 5, pair.Second + 15)
        );
        Assert.Equal("A3", plan.Overblown[0].Nearest.Pitch.ToString());
    }

    [Fact]
    public void Says_why_when_the_fittings_alone_are_too_long()
    {
        var parts = TubeAssembly.OnePipe(Mm(40), mouth: new AddedPart("long", Length.FromMeters(1), Mm(30)));
        var plan = Bench.Plan(parts, "C4");
        Assert.False(plan.IsSolved);
        Assert.Equal(SolveStatus.OutOfReach, plan.Status);
        Assert.StartsWith(
            "No pipe length gives C4: even with next to no pipe",
            plan.Explanation,
            StringComparison.Ordinal
        );
        Assert.Null(plan.Exact);
        Assert.Empty(plan.Overblown);
    }

    // c/4f of A#-2 is 11.8 m and of C-1 10.5 m, too long; of C#-1 9.9 m, in reach of 10 m, but 300 cents lower, 19 % longer, is not.
    [Fact]
    public void Note_in_reach_whose_first_cut_is_not_says_so()
    {
        var plan = Bench.Plan(TubeAssembly.OnePipe(Mm(60)), "C#-1");
        Assert.False(plan.IsSolved);
        Assert.Matches(
            @"^C#-1 is reachable, with the open pipe cut to 9\d{3}(\.\d)? mm \(\S+ \S+ in\), but no first cut is safely flat: "
                + @"no pipe of 10 m or less is low enough;",
            plan.Explanation
        );
    }

    [Theory]
    [InlineData(
        "B22",
        "No pipe length gives B22: it is 129468544.12 Hz, and in a tube this wide the computation ends at"
    )]
    [InlineData(
        "C-6",
        "No pipe length gives C-6: even a pipe of 10 m keeps the first resonance above 0.26 Hz"
    )]
    [InlineData(
        "C12",
        "No pipe length gives C12: it is 66976.14 Hz, and in a tube this wide the computation ends at"
    )]
    public void Notes_out_of_reach_are_explained(string note, string beginning)
    {
        var plan = Bench.Plan(TubeAssembly.OnePipe(Mm(40)), note);
        Assert.False(plan.IsSolved);
        Assert.StartsWith(beginning, plan.Explanation);
    }

    [Fact]
    public void Quarter_wave_cut_is_left_out_where_the_fittings_are_as_long_as_the_rule()
    {
        // A tube that widens sounds higher than the rule says, so it is longer: C5 by the rule is 164 mm.
        var parts = TubeAssembly.OnePipe(
            Mm(40),
            mouth: new AddedPart("narrow", Mm(85), Mm(20)),
            end: new AddedPart("wide", Mm(85), Mm(60))
        );
        var plan = Bench.Plan(parts, "C5");
        Assert.True(plan.IsSolved, plan.Explanation);
        Assert.Null(QuarterWaveRule.Of(plan).Built);
        Assert.True(QuarterWaveRule.Of(plan).Difference < Length.Zero);
    }

    [Fact]
    public void Unusual_parts_and_notes_are_warned_of()
    {
        Assert.Empty(Bench.Plan(Fitted, "D2").Warnings);
        var warnings = Bench.Plan(TubeAssembly.OnePipe(Mm(52)), "A2").Warnings;
        Assert.Contains(
            warnings,
            text => text.StartsWith("The blown end is 52 mm (2.047 in) inside;", StringComparison.Ordinal)
        );
        Assert.Contains(
            warnings,
            text => text.StartsWith("A2 is outside the usual range", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Warnings_of_the_air_are_passed_on()
    {
        var hot = Air.At(Temperature.FromDegreesCelsius(29), RelativeHumidity.FromPercent(95));
        Assert.NotEmpty(hot.Warnings);
        Assert.All(hot.Warnings, warning => Assert.Contains(warning, Bench.Plan(Fitted, "D2", hot).Warnings));
        Assert.All(
            hot.Warnings,
            warning => Assert.Contains(warning, Bench.Plan(Fitted, "C12", hot).Warnings)
        );
    }

    [Fact]
    public void Sentences_are_the_same_in_every_culture() =>
        RunIn(
            "de-DE",
            () =>
            {
                var parts = TubeAssembly.OnePipe(Mm(45.5));
                var plan = Bench.Plan(parts, "D2");
                Assert.Matches(
                    @"^'pipe' cut to \d+(\.\d)? mm \(\d+ \d+/\d+ in\) puts the first resonance on D2, 73\.42 Hz\.$",
                    plan.Explanation
                );
                Assert.Contains(
                    "The blown end is 45.5 mm (1.791 in)",
                    Assert.Single(plan.Warnings),
                    StringComparison.Ordinal
                );
            }
        );

    [Fact]
    public void Missing_arguments_are_named()
    {
        var parts = TubeAssembly.OnePipe(Mm(40));
        var note = Pitch.Parse("D2");
        Assert.Throws<ArgumentNullException>(
            "assembly",
            () => TubeBuilder.Plan(null!, note, Tuning.Concert, Room)
        );
        Assert.Throws<ArgumentNullException>("tuning", () => TubeBuilder.Plan(parts, note, null!, Room));
        Assert.Throws<ArgumentNullException>(
            "air",
            () => TubeBuilder.Plan(parts, note, Tuning.Concert, null!)
        );
    }
}
