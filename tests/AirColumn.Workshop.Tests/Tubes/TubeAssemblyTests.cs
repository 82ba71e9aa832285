using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Tests.Tubes;

public class TubeAssemblyTests
{
    private static readonly FittingSocket Small = new(Mm(48.6), Mm(48.1), Mm(28), Mm(1));
    private static readonly FittingSocket Large = new(Mm(60.7), Mm(60.2), Mm(30), Mm(2));
    private static readonly InsertPart Mouth = new("mouth", Mm(30), Mm(40), Mm(25), Mm(12));
    private static readonly PipePart Open = new("pipe", Mm(40.4), Mm(48.26), null);
    private static readonly JoinPart Reducer = JoinPart.Straight("reducer", Small, Large, Mm(41), Mm(14));
    private static readonly PipePart End = new("end", Mm(52), Mm(60.3), Mm(150));

    // By hand: the insert takes 25 mm of the pipe, 1 mm and 2 mm of socket are left at the stops, the bell takes its slant of the end pipe.
    [Fact]
    public void Sections_lie_where_a_tape_would_find_them()
    {
        var bell = new BellPart("bell", Mm(72), Mm(60));
        var tube = new TubeAssembly([Mouth, Open, Reducer, End, bell], Mm(3)).Assemble(Mm(1000));
        var slant = Math.Sqrt(60 * 60 + 10 * 10);
        (double Inside, double Outlet, double Length)[] expected =
        [
            (30, 30, 37),
            (40.4, 40.4, 975),
            (48.1, 48.1, 1),
            (41, 41, 14),
            (60.2, 60.2, 2),
            (52, 52, 150 - slant),
            (52, 72, 60),
        ];
        Assert.Equal(expected.Length, tube.Bore.Sections.Count);
        for (var i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i].Inside, tube.Bore.Sections[i].InletDiameter.Millimeters, 1e-9);
            Assert.Equal(expected[i].Outlet, tube.Bore.Sections[i].OutletDiameter.Millimeters, 1e-9);
            Assert.Equal(expected[i].Length, tube.Bore.Sections[i].Length.Millimeters, 1e-6);
        }

        Assert.Equal("pipe,end", string.Join(',', tube.Cuts.Select(cut => cut.Pipe.Name)));
        Assert.Equal(1000, tube.FreeCut!.Cut.Millimeters, 1e-9);
        Assert.Equal(25, tube.FreeCut.Hidden.Millimeters, 1e-9);
        Assert.Equal(slant, tube.Cuts[1].Hidden.Millimeters, 1e-6);
        Assert.Equal(
            "mouth,pipe,reducer,reducer,reducer,end,bell",
            string.Join(',', tube.SectionParts.Select(part => part.Name))
        );
    }

    // Cut from one length of pipe, both are as wide: one tolerance for the two. Anything that tells them apart makes it two.
    [Fact]
    public void Pipes_of_one_length_are_off_together()
    {
        var stock = Catalogue.Standard.Pipe("pvc-40 1-1/2");
        var pipe = PipePart.Of("one", stock, stock.Inside, Mm(300));
        var off = Length.FromMillimeters(pipe.InsidePlusMinus.Millimeters);
        PipePart Made(double inside, double outside, Length plusMinus, bool isMeasured, StockPipe? of) =>
            new("other", Mm(inside), Mm(outside), null)
            {
                InsidePlusMinus = plusMinus,
                IsMeasured = isMeasured,
                Stock = of,
            };
        var (inside, outside) = (stock.Inside.Millimeters, stock.Outside.Millimeters);
        Assert.Equal(1, Apart(Made(inside, outside, off, true, stock)));
        Assert.Equal(2, Apart(Made(inside + 0.4, outside, off, true, stock)));
        Assert.Equal(2, Apart(Made(inside, outside + 0.2, off, true, stock)));
        Assert.Equal(2, Apart(Made(inside, outside, off * 2, true, stock)));
        Assert.Equal(2, Apart(Made(inside, outside, off, false, stock)));
        Assert.Equal(2, Apart(Made(inside, outside, off, true, null)));

        // Besides those of the coupling, the cut and the temperature.
        int Apart(PipePart other)
        {
            var coupling = JoinPart.Straight("coupling", Small, Small, Mm(41), Mm(3));
            var tube = new TubeAssembly([pipe, coupling, other], Mm(3)).Assemble(Mm(700));
            return TubeBuilder.Tolerances(tube, Bench.Room, new BuildOptions()).Count - 3;
        }
    }

    [Fact]
    public void An_elbow_and_a_bend_are_as_long_as_their_centrelines()
    {
        var elbow = JoinPart.Elbow("elbow", Small, Small, Mm(41), Mm(50), Angle.FromDegrees(90));
        var bend = new BendPart("bend", Mm(200), Angle.FromDegrees(180), Mm(100));
        var tube = new TubeAssembly([
            Open,
            elbow,
            new PipePart("second", Mm(40.4), Mm(48.26), Mm(900)),
            bend,
        ]).Assemble(Mm(300));
        var (quarter, half) = (Math.PI / 2 * 50, Math.PI * 200);
        Assert.Equal(300 + 1 + quarter + 1 + 900, tube.Bore.Length.Millimeters, 1e-6);
        Assert.Equal(half + 100, tube.Cuts[1].Hidden.Millimeters, 1e-6);
    }

    [Fact]
    public void An_empty_socket_at_an_end_is_bore()
    {
        var coupling = JoinPart.Straight("coupling", Small, Large, Mm(41), Mm(14));
        var tube = new TubeAssembly([Open, coupling]).Assemble(Mm(500));
        var last = tube.Bore.Sections[^1];
        Assert.Equal(30, last.Length.Millimeters, 1e-9);
        Assert.Equal(60.7, last.OutletDiameter.Millimeters, 1e-9);
        Assert.Equal(0, tube.Assembly.Wall.Millimeters);
        // A bell's wall is that of the pipe it is formed from.
        var belled = new TubeAssembly([Open, new BellPart("bell", Mm(60), Mm(50))]);
        Assert.Equal(3.93, belled.Wall.Millimeters, 1e-9);
    }

    [Fact]
    public void A_caliper_beats_the_table()
    {
        var stock = Catalogue.Standard.Pipe("pvc-40 1-1/2");
        Assert.Equal(stock.Inside.Millimeters, PipePart.Of("p", stock, null, null).Inside.Millimeters, 1e-9);
        Assert.Equal(0.66, PipePart.Of("p", stock, null, null).InsidePlusMinus.Millimeters, 0.01);
        var measured = PipePart.Of("p", stock, Mm(40.7), null);
        Assert.Equal(40.7, measured.Inside.Millimeters, 1e-9);
        Assert.Equal(0.3, measured.InsidePlusMinus.Millimeters, 1e-9);
        // The less is known of it, the less sure: limits of the wall alone, inferred; the least wall alone, from memory; an inside given.
        Assert.Equal(
            1,
            PipePart
                .Of("p", Catalogue.Standard.Pipe("pvcu-10bar 50"), null, null)
                .InsidePlusMinus.Millimeters,
            1e-9
        );
        Assert.Equal(
            1,
            PipePart.Of("p", Catalogue.Standard.Pipe("pp-waste 50"), null, null).InsidePlusMinus.Millimeters,
            1e-9
        );
        Assert.Equal(
            0.3,
            PipePart
                .Of("p", Catalogue.Standard.Pipe("copper-m 1-1/2"), null, null)
                .InsidePlusMinus.Millimeters,
            1e-9
        );
    }

    public static TheoryData<TubePart[], string> Impossible =>
        new()
        {
            {
                [Mouth, End, Reducer],
                "'end', 60.3 mm (2.374 in) outside, does not enter the socket of 'reducer'"
            },
            { [new PipePart("thin", Mm(30), Mm(40), null), Reducer], "is loose in the socket of 'reducer'" },
            {
                [new InsertPart("plug", Mm(30), Mm(41), Mm(20), Mm(0)), Open],
                "does not go into the pipe 'pipe'"
            },
            { [Open, Mouth, End], "must be the first or the last part" },
            { [Mouth, Reducer], "no pipe among the parts" },
            {
                [Open, Reducer, new PipePart("other", Mm(52), Mm(60.3), null)],
                "'pipe' and 'other' are not given"
            },
            { [Open, new BellPart("bell", Mm(40), Mm(60))], "a bell must be wider than its pipe" },
            { [new BellPart("bell", Mm(40), Mm(60)), Open], "a pipe must come before it" },
            {
                [Open, new AddedPart("cap", Mm(10), Mm(40)), Reducer],
                "'cap' is not a pipe that goes into it"
            },
        };

    [Theory]
    [MemberData(nameof(Impossible))]
    public void Parts_that_do_not_go_together_are_named(TubePart[] parts, string says)
    {
        var problem = Assert.ThrowsAny<ArgumentException>(() => new TubeAssembly(parts));
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Sizes_that_cannot_be_are_refused()
    {
        var wall = Assert.Throws<ArgumentException>(() => new PipePart("p", Mm(48.3), Mm(48.26), null));
        Assert.Contains("the outside diameter must be the larger", wall.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new PipePart("p", Mm(2), Mm(4), null));
        Assert.Throws<ArgumentException>(() => new PipePart(" ", Mm(20), Mm(24), null));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FittingSocket(Mm(40), Mm(41), Mm(20), Mm(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FittingSocket(Mm(40), Mm(39), Mm(20), Mm(21)));
        var small = Assert.Throws<ArgumentException>(() => new TubeAssembly([Mouth, Open]).Assemble(Mm(25)));
        Assert.Contains("take 25 mm", small.Message, StringComparison.Ordinal);
        // Two sockets hold 27 mm each.
        var stub = new PipePart("stub", Mm(40.4), Mm(48.26), Mm(50));
        var coupling = JoinPart.Straight("c", Small, Small, Mm(41), Mm(3));
        var sockets = Assert.Throws<ArgumentException>(() =>
            new TubeAssembly([Open, coupling, stub, coupling, Open with { }]).Assemble(Mm(500))
        );
        Assert.Contains("not given; give the length", sockets.Message, StringComparison.Ordinal);
        var closed = new PipePart("long", Mm(40.4), Mm(48.26), Mm(500));
        var held = Assert.Throws<PartException>(() =>
            new TubeAssembly([Open, coupling, stub, coupling, closed]).Assemble(Mm(500))
        );
        Assert.Contains(
            "'stub' is 50 mm long, but the parts pushed into it, formed from it or holding it in sockets take 54 mm",
            held.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => Open with { Price = -1 });
    }

    private static Length Mm(double value) => Length.FromMillimeters(value);
}
