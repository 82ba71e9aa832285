using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Tests.Tubes;

public class TubeBuilderTests
{
    public static readonly Air Room = Air.At(
        Temperature.FromDegreesCelsius(20),
        RelativeHumidity.FromPercent(50)
    );

    // A mouth insert, pipe, a step up to a wider end.
    public static TubeAssembly Stepped { get; } =
        new(
            [
                new InsertPart("mouthpiece", Mm(30), Mm(40), Mm(25), Mm(12)),
                PipePart.Of("main pipe", Catalogue.Standard.Pipe("pvc-40 1-1/2"), null, null),
                JoinPart.Straight(
                    "reducer",
                    FittingSocket.Of(Catalogue.Standard.Socket("pvc-40 1-1/2"), Mm(1)),
                    FittingSocket.Of(Catalogue.Standard.Socket("pvc-40 2"), Mm(1)),
                    Mm(41),
                    Mm(14)
                ),
                PipePart.Of("end pipe", Catalogue.Standard.Pipe("pvc-40 2"), Mm(52.2), Mm(150)),
            ],
            Mm(3)
        );

    // A bell whose mouth takes radial modes: its field is what the second tube takes over.
    [Fact]
    public void What_is_taken_over_from_a_similar_tube_changes_nothing()
    {
        var (shorter, longer) = (Belled(400), Belled(420));
        var note = Pitch.Parse("D2");
        var near = TubeBuilder.Exact(shorter, note, Tuning.Concert, Room);
        var alone = TubeBuilder.Exact(longer, note, Tuning.Concert, Room).Exact!;
        var after = TubeBuilder.Exact(longer, note, Tuning.Concert, Room, near: near).Exact!;
        Assert.Equal(Wavefronts.Multimodal, alone.Column.Wavefronts);
        Assert.Equal(alone.Cut.Millimeters, after.Cut.Millimeters);
        var cut = Mm(900);
        var target = Frequency.FromHertz(73.4);
        Assert.Equal(
            TubeBuilder.Built(longer, cut, Room, target)!.Cents,
            TubeBuilder.Built(longer, cut, Room, target, near.Exact!.Column)!.Cents
        );
    }

    private static TubeAssembly Belled(double endPipe) =>
        new(
            [
                .. Stepped.Parts.Take(3),
                PipePart.Of("end pipe", Catalogue.Standard.Pipe("pvc-40 2"), Mm(52.2), Mm(endPipe)),
                new BellPart("bell", Mm(110), Mm(60)),
            ],
            Mm(3)
        );

    // Rebuilt from the lengths as they are printed, to a tenth of a millimetre, the engine gives the note.
    [Theory]
    [InlineData("C2")]
    [InlineData("D2")]
    [InlineData("F2")]
    public void The_printed_cut_list_rebuilds_the_note(string name)
    {
        var note = Pitch.Parse(name);
        var build = TubeBuilder.Plan(Stepped, note, Tuning.Concert, Room);
        Assert.True(build.IsSolved, build.Explanation);
        var target = Tuning.Concert.FrequencyOf(note);
        foreach (
            var (built, rounding) in new[]
            {
                (build.Exact, 0.05),
                (build.WholeMillimetre, 0.5),
                (build.WholeSixteenth, 0.8),
            }
        )
        {
            var printed = Mm(Math.Round(built.Cut.Millimeters, 1));
            // Section by section, by hand.
            var bore = Bore.Build()
                .Cylinder(Mm(30), Mm(37))
                .Cylinder(Mm(48.26 - 3.68 - 4.19), Mm(printed.Millimeters - 25))
                .Cylinder(Mm(1.894 * 25.4), Mm(1))
                .Cylinder(Mm(41), Mm(14))
                .Cylinder(Mm(2.369 * 25.4), Mm(1))
                .Cylinder(Mm(52.2), Mm(150))
                .OpenEnd(Mm(3));
            var first = new Column(bore, Room).FirstResonances(1)[0].Frequency;
            // Some 1.7 cents to the millimetre.
            Assert.InRange(Cents.Between(target, first), -0.5 - 2 * rounding, 0.5 + 2 * rounding);
            Assert.Equal(built.Cents, Cents.Between(target, built.FirstResonance), 1e-9);
        }
    }

    [Fact]
    public void The_first_cut_leaves_the_note_flat_for_all_but_one_player_in_forty()
    {
        var build = TubeBuilder.Plan(Stepped, Pitch.Parse("D2"), Tuning.Concert, Room);
        var trim = build.Trim()!;
        var first = trim.Rows[0];
        Assert.InRange(first.Cents + first.PlusMinusCents, -2.5, 0);
        Assert.True(build.FirstCut!.Cut > build.Exact!.Cut);
        Assert.Equal(Math.Round(build.FirstCut.Cut.Millimeters), build.FirstCut.Cut.Millimeters, 1e-9);
        Assert.Equal(0, build.FirstCutInches!.Cut.Millimeters / (25.4 / 16) % 1, 1e-6);
        Assert.InRange(build.FirstCutInches.Cut.Millimeters - build.FirstCut.Cut.Millimeters, -1, 1.6);
        Assert.True(trim.Rows[^1].Cents > 0);
    }

    [Fact]
    public void A_player_who_adds_nothing_and_sure_sizes_leave_next_to_nothing_to_trim()
    {
        var sure = new BuildOptions
        {
            Correction = PlayingCorrection.None,
            CutTolerance = Mm(0.01),
            TemperatureTolerance = TemperatureDelta.FromKelvins(0.01),
        };
        var pipe = new PipePart("pipe", Mm(40), Mm(44), null) { InsidePlusMinus = Mm(0.01) };
        var build = TubeBuilder.Plan(new TubeAssembly([pipe]), Pitch.Parse("D2"), Tuning.Concert, Room, sure);
        Assert.InRange(build.FirstCut!.Cut.Millimeters - build.Exact!.Cut.Millimeters, 0, 1.1);
    }

    [Fact]
    public void What_if_says_what_the_engine_says()
    {
        var build = TubeBuilder.Plan(Stepped, Pitch.Parse("D2"), Tuning.Concert, Room);
        var sentences = WhatIf.Of(build, LengthUnits.Both);
        var warmer = build.Exact!.Column.WithAir(
            Air.At(Temperature.FromDegreesCelsius(25), RelativeHumidity.FromPercent(50))
        );
        var cents = Cents.Between(build.Exact.FirstResonance, warmer.FirstResonances(1)[0].Frequency);
        Assert.Contains(
            FormattableString.Invariant(
                $"In a room 5 °C (9 °F) warmer the drone is {cents:0.0} cents sharper."
            ),
            sentences
        );
        Assert.InRange(cents, 14, 17); // some 3 cents to the kelvin: c goes as √T
        Assert.Contains(
            sentences,
            s => s.StartsWith("The quarter-wave rule c/4f says", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(sentences, s => s.Contains("bell", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_there_is_no_length_it_says_why()
    {
        var build = TubeBuilder.Plan(Stepped, Pitch.Parse("C6"), Tuning.Concert, Room);
        Assert.False(build.IsSolved);
        Assert.NotEmpty(build.Explanation);
        Assert.Empty(WhatIf.Of(build, LengthUnits.Both));
        var closed = new TubeAssembly([new PipePart("pipe", Mm(40), Mm(44), Mm(1000))]);
        var problem = Assert.Throws<ArgumentException>(() =>
            TubeBuilder.Plan(closed, Pitch.Parse("D2"), Tuning.Concert, Room)
        );
        Assert.Contains("leave one open", problem.Message, StringComparison.Ordinal);
    }

    // More than a metre of it goes into the bend.
    [Fact]
    public void A_pipe_that_is_mostly_bend_is_planned_too()
    {
        var folded = new TubeAssembly([
            new PipePart("pipe", Mm(40), Mm(48), null),
            new BendPart("bend", Mm(300), Angle.FromDegrees(180), Mm(150)),
        ]);
        var build = TubeBuilder.Plan(folded, Pitch.Parse("C2"), Tuning.Concert, Room);
        Assert.True(build.IsSolved, build.Explanation);
        Assert.InRange(build.Exact!.Cut.Millimeters, Math.PI * 300 + 150, 1400);
        var tooHigh = TubeBuilder.Plan(folded, Pitch.Parse("C4"), Tuning.Concert, Room);
        Assert.Equal(SolveStatus.OutOfReach, tooHigh.Status);
    }

    [Fact]
    public void Sizes_that_nobody_confirmed_are_warned_of()
    {
        var pipe = PipePart.Of("pipe", Catalogue.Standard.Pipe("pp-waste 40"), null, null);
        var build = TubeBuilder.Plan(new TubeAssembly([pipe]), Pitch.Parse("D2"), Tuning.Concert, Room);
        Assert.Contains(
            build.Warnings,
            warning => warning.Contains("from memory: measure", StringComparison.Ordinal)
        );
    }

    private static Length Mm(double value) => Length.FromMillimeters(value);
}
