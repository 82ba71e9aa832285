using AirColumn.Workshop.Cutting;
using AirColumn.Workshop.Tests.Tubes;
using AirColumn.Workshop.Tubes;
using FsCheck.Xunit;
using UnitsNet;

namespace AirColumn.Workshop.Tests.Cutting;

public class StockCutsTests
{
    // Largest first puts 4 + 4, 3 + 3 + 2 … and needs three lengths of 9; 4 + 3 + 2 twice needs two (by hand).
    [Fact]
    public void The_fewest_lengths_are_found_where_a_guess_would_miss_them()
    {
        var plan = Metric(Pieces(400, 400, 300, 300, 200, 200), 900, 0);
        Assert.Equal(2, plan.Bars.Count);
        Assert.True(plan.IsProvenLeast);
        Assert.Equal(0, plan.LeftOver.Millimeters + plan.Sawn.Millimeters, 1e-9);
    }

    [Fact]
    public void The_saw_takes_its_part_but_not_after_the_last_piece()
    {
        // Two pieces and one cut between them fill it exactly.
        Assert.Single(Metric(Pieces(500, 497), 1000, 3).Bars);
        Assert.Equal(2, Metric(Pieces(500, 497.1), 1000, 3).Bars.Count);
        var plan = Metric(Pieces(400, 300), 1000, 3);
        Assert.Equal(294, plan.Bars[0].LeftOver.Millimeters, 1e-9);
        // A cut between the pieces and one after them.
        Assert.Equal(6, plan.Sawn.Millimeters, 1e-9);
    }

    // Against every way to deal the pieces out.
    [Property(MaxTest = 60)]
    public void Small_plans_are_the_best_there_are(int seed)
    {
        var random = new Random(seed);
        var lengths = Enumerable.Range(0, random.Next(1, 8)).Select(_ => 50.0 + random.Next(900)).ToArray();
        var plan = Metric(Pieces(lengths), 1000, 3);
        Assert.True(plan.IsProvenLeast);
        Assert.Equal(Fewest(lengths, 0, []), plan.Bars.Count);
        Check(plan, lengths);
    }

    [Draws(quick: 3, inLong: 60)]
    public void Large_plans_hold_every_piece_once(int seed)
    {
        var random = new Random(seed);
        var lengths = Enumerable.Range(0, 80).Select(_ => 100.0 + random.Next(2000)).ToArray();
        var plan = Metric(Pieces(lengths), 3048, 3);
        Check(plan, lengths);
        // The bound of any plan.
        Assert.True(plan.Bars.Count >= Math.Ceiling(lengths.Sum() / 3048));
        Assert.True(plan.Bars.Count <= 1.25 * lengths.Sum(l => l + 3) / 3051 + 1);
    }

    [Fact]
    public void Pieces_that_cannot_be_cut_are_named()
    {
        var problem = Assert.Throws<ArgumentException>(() => Metric(Pieces(900, 1200), 1000, 3));
        Assert.Contains(
            "'piece 2' is 1200 mm long, longer than the stock",
            problem.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => Metric(Pieces(0), 1000, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Metric(Pieces(1), 0, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Metric(Pieces(1), 10, -3));
        Assert.Empty(Metric([], 10, 3).Bars);
    }

    // Bars are sawn into three without anything left over, so that as many bars are enough, and by their sum no fewer.
    [Draws(quick: 10, inLong: 60)]
    public void A_minimum_is_claimed_only_where_it_is_one(int seed)
    {
        var random = new Random(seed);
        var bars = random.Next(2, 25);
        var lengths = new List<double>();
        for (var i = 0; i < bars; i++)
        {
            var (first, second) = (random.Next(2500, 4900) / 10.0, random.Next(2500, 2600) / 10.0);
            lengths.AddRange([first, second, Math.Round(994 - first - second, 1)]);
        }

        var plan = Metric(Pieces([.. lengths]), 1000, 3);
        Check(plan, [.. lengths]);
        Assert.Equal(bars, plan.LeastPossible);
        Assert.Equal(plan.Bars.Count == bars, plan.IsProvenLeast);
        Assert.True(bars > 12 || plan.IsProvenLeast, $"{plan.Bars.Count} bars for {bars}");
    }

    // Two kinds of pipe, one of them with lengths that were given; of the catalogue and as measured one kind.
    [Fact]
    public void All_pipes_of_a_tube_are_cut_each_from_its_kind()
    {
        var build = TubeBuilder.Plan(
            TubeBuilderTests.Stepped,
            Pitch.Parse("D2"),
            Tuning.Concert,
            TubeBuilderTests.Room
        );
        var kinds = StockCuts.PiecesOf([("one", build), ("other", build)]);
        Assert.Equal(["pvc-40 1-1/2", "pvc-40 2"], kinds.Select(kind => kind.Name));
        Assert.Equal(["one main pipe", "other main pipe"], kinds[0].Pieces.Select(piece => piece.Name));
        Assert.Equal(["one end pipe", "other end pipe"], kinds[1].Pieces.Select(piece => piece.Name));
        Assert.All(kinds[1].Pieces, piece => Assert.Equal(150, piece.Length.Millimetres.Millimeters, 1e-9));
        // 150 mm is 5.906 in; 5 15/16 is the next mark above.
        Assert.All(kinds[1].Pieces, piece => Assert.Equal("5 15/16 in", piece.Length.In(LengthUnits.Inches)));
    }

    // 300 mm and 11 13/16 in: 300.04 mm by 25.4 mm to the inch.
    [Fact]
    public void Where_both_tapes_are_shown_there_is_room_for_either_mark()
    {
        var pieces = Pieces(300, 300);
        Assert.Single(StockCuts.Plan(pieces, Mm(603), Mm(3), LengthUnits.Millimetres).Bars);
        Assert.Equal(2, StockCuts.Plan(pieces, Mm(603), Mm(3), LengthUnits.Inches).Bars.Count);
        Assert.Equal(2, StockCuts.Plan(pieces, Mm(603), Mm(3)).Bars.Count);
    }

    [Fact]
    public void What_to_buy_is_said_in_the_units_asked_for()
    {
        Assert.Equal(
            [
                "Buy 1 length of 3 m (minimum). Offcut 1997 mm, 3 mm lost to the saw.",
                "1: piece 1 1000 mm; 1997 mm left",
            ],
            Metric(Pieces(1000), 3000, 3).Describe()
        );
        Assert.Equal(
            [
                "Buy 2 lengths of 10 ft (minimum). Offcuts together 40 in, under 1/16 in lost to the saw.",
                "1: piece 1 100 in; 20 in left",
                "2: piece 2 100 in; 20 in left",
            ],
            StockCuts.Plan(Pieces(2540, 2540), Length.FromFeet(10), Mm(0.01), LengthUnits.Inches).Describe()
        );
    }

    private static void Check(StockCutPlan plan, double[] lengths)
    {
        Assert.Equal(
            lengths.Order(),
            plan.Bars.SelectMany(bar => bar.Pieces)
                .Select(piece => piece.Length.Millimetres.Millimeters)
                .Order()
        );
        Assert.All(
            plan.Bars,
            bar =>
                Assert.True(
                    bar.Pieces.Sum(piece => piece.Length.Millimetres.Millimeters)
                        + (bar.Pieces.Count - 1) * plan.Kerf.Millimeters
                        <= plan.Stock.Millimeters + 1e-6
                )
        );
    }

    private static int Fewest(double[] lengths, int next, List<double> free)
    {
        if (next == lengths.Length)
        {
            return free.Count;
        }

        free.Add(1003 - lengths[next] - 3);
        var fewest = Fewest(lengths, next + 1, free);
        free.RemoveAt(free.Count - 1);
        for (var i = 0; i < free.Count; i++)
        {
            if (lengths[next] + 3 <= free[i])
            {
                free[i] -= lengths[next] + 3;
                fewest = Math.Min(fewest, Fewest(lengths, next + 1, free));
                free[i] += lengths[next] + 3;
            }
        }

        return fewest;
    }

    private static StockCutPlan Metric(IReadOnlyList<CutPiece> pieces, double stock, double kerf) =>
        StockCuts.Plan(pieces, Mm(stock), Mm(kerf), LengthUnits.Millimetres);

    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static List<CutPiece> Pieces(params double[] lengths) =>
        [.. lengths.Select((length, i) => new CutPiece($"piece {i + 1}", SawLength.Given(Mm(length))))];
}
