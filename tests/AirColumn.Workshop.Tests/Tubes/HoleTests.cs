using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tubes;
using FsCheck.Xunit;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests.Tubes;

/// <summary>Finger holes: where they lie, where they cannot, and what they do to cuts and notes.</summary>
public class HoleTests
{
    private static readonly InsertPart Mouth = new("mouth", Mm(30), Mm(40), Mm(25), Mm(12));
    private static readonly PipePart Open = new("pipe", Mm(40.4), Mm(48.4), null);
    private static readonly PipePart End = new("end", Mm(40.4), Mm(48.4), Mm(300));
    private static readonly FittingSocket Socket = new(Mm(48.6), Mm(48.4), Mm(28), Mm(1));
    private static readonly JoinPart Coupling = JoinPart.Straight("coupling", Socket, Socket, Mm(41), Mm(3));
    private static readonly BendPart Bend = new("bend", Mm(320), Angle.FromRadians(1), Mm(100));

    // By hand: 12 mm of the insert stand out, the pipe begins behind them; the coupling adds 1 + 3 + 1 mm between the pipes.
    [Fact]
    public void Holes_lie_where_a_tape_would_find_them()
    {
        var tube = new TubeAssembly([
            Mouth,
            Open,
            Hole("a", 8, 700, PipeEnd.Lips),
            Coupling,
            End,
            Hole("c", 9, 50, PipeEnd.Open),
            Hole("b", 7, 60, PipeEnd.Lips),
        ]).Assemble(Mm(1000));
        Assert.Equal("a,b,c", string.Join(',', tube.Bore.Holes.Select(hole => hole.Name)));
        Assert.Equal(
            [12 + 700, 12 + 1000 + 5 + 60, 12 + 1000 + 5 + 250],
            tube.Bore.Holes.Select(hole => Math.Round(hole.Position.Millimeters, 6))
        );
        // As high as the wall of its pipe is thick: (48.4 − 40.4) / 2.
        Assert.All(tube.Bore.Holes, hole => Assert.Equal(4, hole.Height.Millimeters, 1e-9));
        Assert.Equal([false, true, true], tube.Holes.Select(hole => hole.KeepsFromFarEnd));
    }

    // By hand: the pipe is 900 mm, of which the bend takes 320 and 100 are straight after it; holes count along the wall.
    [Fact]
    public void Holes_beyond_a_bend_count_along_the_wall()
    {
        var pipe = new PipePart("pipe", Mm(40.4), Mm(48.4), Mm(900));
        var tube = new TubeAssembly([
            pipe,
            Bend,
            Hole("far", 9, 60, PipeEnd.Open),
            Hole("near", 9, 460, PipeEnd.Lips),
        ]).Assemble(Length.Zero);
        Assert.Equal([460, 840], tube.Bore.Holes.Select(hole => Math.Round(hole.Position.Millimeters, 6)));
        Assert.Equal(900, tube.Bore.Length.Millimeters, 1e-9);
    }

    public static TheoryData<TubePart[], int, string> Impossible =>
        new()
        {
            { [Mouth, Hole("x", 8, 50), Open], 1, "a pipe must come before it" },
            { [Hole("x", 8, 50), Open], 0, "a pipe must come before it" },
            { [Open, Hole("x", 45, 100)], 1, "only 40.4 mm" },
            { [Open, Hole("x", 9, 4)], 1, "runs off the pipe 'pipe'" },
            { [Open, Coupling, End, Hole("x", 9, 298, PipeEnd.Lips)], 3, "which is 300 mm long" },
            {
                [Open, Hole("x", 9, 30), Coupling, End],
                1,
                "hidden in the socket of 'coupling', which holds 27 mm"
            },
            { [Open, Coupling, End, Hole("x", 9, 275)], 3, "hidden in the socket of 'coupling'" },
            { [Mouth, Open, Hole("x", 9, 28, PipeEnd.Lips)], 2, "pushed 25 mm into the pipe" },
            { [Open, Bend, Hole("x", 9, 200)], 2, "'bend' is formed, 100 mm to 420 mm" },
            { [Open, new BellPart("bell", Mm(60), Mm(60)), Hole("x", 9, 30)], 2, "'bell' is formed" },
            { [Open, Hole("x", 9, 100), Hole("y", 9, 108)], 1, "The holes 'y' and 'x' overlap" },
            {
                [Open, Coupling, End, Hole("x", 9, 100), Hole("y", 9, 205, PipeEnd.Lips)],
                4,
                "The holes 'x' and 'y' overlap"
            },
        };

    [Theory]
    [MemberData(nameof(Impossible))]
    public void Holes_that_cannot_be_are_told_at_the_part(TubePart[] parts, int at, string says)
    {
        var problem = Assert.Throws<PartException>(() => new TubeAssembly(parts));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.Equal(at, problem.Part);
    }

    [Fact]
    public void Sizes_that_cannot_be_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Hole("x", 0.5, 50));
        Assert.Throws<ArgumentOutOfRangeException>(() => Hole("x", 101, 50));
        Assert.Throws<ArgumentOutOfRangeException>(() => Hole("x", 5, -50));
        Assert.Throws<ArgumentOutOfRangeException>(() => Hole("x", 5, 50, (PipeEnd)7));
        Assert.Throws<ArgumentException>(() => Hole(" ", 5, 50));
    }

    public static TheoryData<TubePart[], int, string> Doubtful =>
        new()
        {
            { [Open, Hole("x", 9, 100)], 1, "drill it when the drone is in tune" },
            { [Open, Bend, Hole("x", 9, 500, PipeEnd.Lips)], 2, "drill it when the drone is in tune" },
            { [Open, Hole("x", 14, 100)], 1, "fingers do not close" },
            { [Open, Hole("x", 9, 100), Hole("y", 9, 111)], 1, "only 2 mm of wall" },
            { [Open, Hole("x", 9, 6)], 1, "only 1.5 mm of wall" },
        };

    [Theory]
    [MemberData(nameof(Doubtful))]
    public void Holes_that_may_leak_or_break_are_told_at_the_part(TubePart[] parts, int at, string says) =>
        Assert.Contains(
            new TubeAssembly(parts).Remarks,
            remark => remark.Part == at && remark.Text.Contains(says, StringComparison.Ordinal)
        );

    [Fact]
    public void A_hole_of_usual_size_and_place_needs_no_remark()
    {
        var tube = new TubeAssembly([Open, Coupling, End, Hole("x", 9, 100), Hole("y", 8, 150)]);
        Assert.DoesNotContain(tube.Remarks, remark => remark.Part > 2);
    }

    // The same bore built by hand, its closed holes cavities.
    [Fact]
    public void The_drone_is_that_of_the_bore_with_its_holes_fingered()
    {
        var tube = new TubeAssembly([
            End,
            Hole("finger", 9, 100),
            Hole("vent", 6, 40) with
            {
                IsOpenInDrone = true,
            },
        ]).Assemble(Length.Zero);
        var byHand = new Column(
            Bore.Build()
                .Cylinder(Mm(40.4), Mm(300))
                .Hole(Mm(200), Mm(9), Mm(4))
                .Hole(Mm(260), Mm(6), Mm(4))
                .OpenEnd(Mm(4)),
            Room,
            new ColumnOptions { Fingering = Fingering.Parse("xo") }
        );
        Assert.Equal(
            byHand.FirstResonances(1)[0].Frequency.Hertz,
            tube.ColumnIn(Room).FirstResonances(1)[0].Frequency.Hertz,
            1e-9
        );
    }

    // However it is cut: the tube put together again sounds the note, with each hole where it was asked for.
    [Property(MaxTest = 5)]
    public void The_cut_is_for_the_tube_with_its_holes(
        byte pitch,
        byte first,
        byte second,
        bool isVent,
        bool isBent
    )
    {
        TubePart[] parts =
        [
            Mouth,
            Open,
            Hole("one", 6 + first % 5, 100 + first, PipeEnd.Lips),
            .. isBent ? [Bend] : Array.Empty<TubePart>(),
            // 27 mm are held in the coupling.
            Hole("two", 6 + second % 5, 45) with
            {
                IsOpenInDrone = isVent,
            },
            Coupling,
            End,
            Hole("three", 8, 60 + second % 100),
        ];
        var plan = Plan(new TubeAssembly(parts), Pitch.FromNumber(31 + pitch % 8).ToString());
        Assert.True(plan.IsSolved, plan.Explanation);
        var again = plan.Assembly.Assemble(plan.Exact.Cut);
        Assert.Equal(
            0,
            Cents.Between(plan.Target, again.ColumnIn(Room).FirstResonances(1)[0].Frequency),
            1e-5
        );
        Assert.Equal(
            60 + second % 100,
            again.Bore.Length.Millimeters - again.Bore.Holes[^1].Position.Millimeters,
            1e-6
        );
        // The trim table is of the same tubes.
        var rows = plan.Trim()!.Rows;
        foreach (var row in new[] { rows[0], rows[^1] })
        {
            var trimmed = plan.Assembly.Assemble(plan.FirstCut.Cut - row.Cut);
            Assert.Equal(
                0,
                Cents.Between(row.Resonance, trimmed.ColumnIn(Room).FirstResonances(1)[0].Frequency),
                1e-5
            );
        }
    }

    [Fact]
    public void The_shortest_cut_leaves_every_hole_on_the_pipe()
    {
        var tube = new TubeAssembly([Open, Hole("one", 8, 300, PipeEnd.Lips), Hole("two", 8, 200)]);
        var problem = Assert.Throws<ArgumentException>(() => tube.Assemble(Mm(508)));
        Assert.Contains("508 mm long", problem.Message, StringComparison.Ordinal);
        Assert.Contains("it needs 508.1 mm", problem.Message, StringComparison.Ordinal);
        Assert.Equal(2, tube.Assemble(Mm(508.1)).Holes.Count);
        // A note that a shorter pipe would sound.
        var high = Plan(tube, "C4");
        Assert.Equal(SolveStatus.OutOfReach, high.Status);
    }

    [Fact]
    public void Opening_holes_from_the_open_end_makes_notes()
    {
        var plan = Plan(
            new TubeAssembly([
                Open,
                Hole("a", 9, 300),
                Hole("b", 9, 200),
                Hole("vent", 4, 60) with
                {
                    IsOpenInDrone = true,
                },
            ]),
            "D2"
        );
        var notes = FingeredNote.Of(plan.Exact!, Tuning.Concert);
        Assert.Equal(["xoo", "ooo"], notes.Select(note => note.Fingering.ToString()));
        Assert.Equal(
            ["b", "a,b"],
            notes.Select(note => string.Join(',', note.Opened.Select(hole => hole.Name)))
        );
        Assert.True(0 < notes[0].CentsAboveDrone && notes[0].CentsAboveDrone < notes[1].CentsAboveDrone);
        Assert.Equal(
            plan.Exact!.Column.WithFingering(Fingering.Parse("xoo")).FirstResonances(1)[0].Frequency,
            notes[0].Frequency
        );
    }

    [Fact]
    public void The_sheet_says_where_to_drill_and_what_sounds()
    {
        var plan = Plan(new TubeAssembly([Open, Hole("low hole", 9, 200), Hole("high hole", 8, 300)]), "D2");
        var sheet = BuildSheet.Html(plan, "", LengthUnits.Millimetres);
        foreach (
            var says in new[]
            {
                "drill the low hole there",
                "from the end towards the open end of the pipe<",
                "Before they are drilled",
                "high hole, low hole",
                "drill it when the drone is in tune",
            }
        )
        {
            Assert.Contains(says, sheet, StringComparison.Ordinal);
        }

        // Both drawings of the whole tube show both holes.
        Assert.Equal(2, sheet.Split("class=\"hole\"").Length - 1);
        var side = TubePictures.Side(plan.Exact!.Tube, 560, LengthUnits.Millimetres);
        Assert.Contains("<circle data-part=\"1\" class=\"hole\"", side, StringComparison.Ordinal);
    }

    // A row for each, and the caution of drilling once, whether now or for those who drill later.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public void The_sheet_has_a_chapter_for_any_number_of_holes(int count)
    {
        var sheet = BuildSheet.Html(
            Plan(
                new TubeAssembly([
                    Open,
                    .. Enumerable.Range(1, count).Select(i => Hole($"hole number {i}", 8, 90.0 * i)),
                ]),
                "D2"
            ),
            "",
            LengthUnits.Millimetres
        );
        Assert.Equal(count > 0, sheet.Contains("<h2>Finger holes</h2>", StringComparison.Ordinal));
        Assert.All(Enumerable.Range(1, count), i => Assert.Matches($"<t[dh][^>]*>hole number {i}</t", sheet));
        Assert.Equal(2, sheet.Split(Cautions.For(CautionStep.Drilling).Text).Length);
    }

    [Fact]
    public void A_template_has_the_holes_of_its_end()
    {
        var tube = new TubeAssembly([
            Open,
            Hole("one", 9, 100),
            Hole("two", 8, 130),
            Hole("third", 7, 90, PipeEnd.Lips),
        ]);
        var page = Templates.Of(tube, 1, LengthUnits.Millimetres);
        Assert.Contains("one: ⌀ 9 mm", page, StringComparison.Ordinal);
        Assert.Contains("two: ⌀ 8 mm", page, StringComparison.Ordinal);
        Assert.DoesNotContain("third", page, StringComparison.Ordinal);
        Assert.Contains(
            "towards the lips",
            Templates.Of(tube, 3, LengthUnits.Millimetres),
            StringComparison.Ordinal
        );
        // 100 mm and 130 mm from the edge at 170 mm.
        Assert.Contains("cx=\"70\"", page, StringComparison.Ordinal);
        Assert.Contains("cx=\"40\"", page, StringComparison.Ordinal);
    }

    private static HolePart Hole(string name, double diameter, double at, PipeEnd from = PipeEnd.Open) =>
        new(name, Mm(diameter), Mm(at), from);
}
