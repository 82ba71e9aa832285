using AirColumn.Workshop.Cutting;
using FsCheck.Xunit;
using UnitsNet;

namespace AirColumn.Workshop.Tests.Cutting;

public class StockCutsTests
{
    // Largest first puts 4 + 4, 3 + 3 + 2 … and needs three lengths of 9; 4 + 3 + 2 twice needs two (by hand).
    [Fact]
    public void The_fewest_lengths_are_found_where_a_guess_would_miss_them()
    {
        var plan = StockCuts.Plan(Pieces(400, 400, 300, 300, 200, 200), Mm(900), Mm(0));
        Assert.Equal(2, plan.Bars.Count);
        Assert.True(plan.IsProvenLeast);
        Assert.Equal(0, plan.Waste.Millimeters, 1e-9);
    }

    [Fact]
    public void The_saw_takes_its_part_but_not_after_the_last_piece()
    {
        // Two pieces and one cut between them fill it exactly.
        Assert.Single(StockCuts.Plan(Pieces(500, 497), Mm(1000), Mm(3)).Bars);
        Assert.Equal(2, StockCuts.Plan(Pieces(500, 497.1), Mm(1000), Mm(3)).Bars.Count);
        var plan = StockCuts.Plan(Pieces(400, 300), Mm(1000), Mm(3));
        Assert.Equal(294, plan.Bars[0].LeftOver.Millimeters, 1e-9);
        Assert.Equal(300, plan.Waste.Millimeters, 1e-9);
    }

    // Against every way to deal the pieces out.
    [Property(MaxTest = 60)]
    public void Small_plans_are_the_best_there_are(int seed)
    {
        var random = new Random(seed);
        var lengths = Enumerable.Range(0, random.Next(1, 8)).Select(_ => 50.0 + random.Next(900)).ToArray();
        var plan = StockCuts.Plan(Pieces(lengths), Mm(1000), Mm(3));
        Assert.True(plan.IsProvenLeast);
        Assert.Equal(Fewest(lengths, 0, []), plan.Bars.Count);
        Check(plan, lengths);
    }

    [Property(MaxTest = 30)]
    public void Large_plans_hold_every_piece_once(int seed)
    {
        var random = new Random(seed);
        var lengths = Enumerable.Range(0, 80).Select(_ => 100.0 + random.Next(2000)).ToArray();
        var plan = StockCuts.Plan(Pieces(lengths), Mm(3048), Mm(3));
        Check(plan, lengths);
        // The bound of any plan.
        Assert.True(plan.Bars.Count >= Math.Ceiling(lengths.Sum() / 3048));
        Assert.True(plan.Bars.Count <= 1.25 * lengths.Sum(l => l + 3) / 3051 + 1);
    }

    [Fact]
    public void Pieces_that_cannot_be_cut_are_named()
    {
        var problem = Assert.Throws<ArgumentException>(() =>
            StockCuts.Plan(Pieces(900, 1200), Mm(1000), Mm(3))
        );
        Assert.Contains(
            "'piece 2' is 1200 mm long, longer than the stock",
            problem.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => StockCuts.Plan(Pieces(0), Mm(1000), Mm(3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => StockCuts.Plan(Pieces(1), Mm(0), Mm(3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => StockCuts.Plan(Pieces(1), Mm(10), Mm(-3)));
        Assert.Empty(StockCuts.Plan([], Mm(10), Mm(3)).Bars);
    }

    private static void Check(StockCutPlan plan, double[] lengths)
    {
        Assert.Equal(
            lengths.Order(),
            plan.Bars.SelectMany(bar => bar.Pieces).Select(piece => piece.Length.Millimeters).Order()
        );
        Assert.All(
            plan.Bars,
            bar =>
                Assert.True(
                    bar.Pieces.Sum(piece => piece.Length.Millimeters)
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

    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static List<CutPiece> Pieces(params double[] lengths) =>
        [.. lengths.Select((length, i) => new CutPiece($"piece {i + 1}", Mm(length)))];
}
