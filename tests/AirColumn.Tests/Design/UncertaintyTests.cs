using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Design;

public class UncertaintyTests
{
    private static readonly Column Tube = new(
        Bore.Build()
            .Cylinder(Mm(30), Mm(25))
            .Cylinder(Mm(40.4), Mm(1140))
            .Cone(Mm(60), Mm(60))
            .OpenEnd(Mm(3)),
        Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
    );

    // Ordinary workshop tolerances.
    private static readonly Tolerance[] Workshop =
    [
        new(ColumnParameter.Diameter(0), Mm(0.3)),
        new(ColumnParameter.Together(ColumnParameter.Diameter(1), ColumnParameter.InletDiameter(2)), Mm(0.4)),
        new(ColumnParameter.SectionLength(1), Mm(1)) { IsNormal = true },
        new(ColumnParameter.OutletDiameter(2), Mm(2)),
        new(ColumnParameter.SectionLength(2), Mm(1.5)),
        new(ColumnParameter.Wall, Mm(0.3)),
        Tolerance.Temperature(TemperatureDelta.FromKelvins(3)),
        Tolerance.Humidity(Ratio.FromPercent(20)),
    ];

    [Fact]
    public void First_order_is_within_a_twentieth_of_ten_thousand_draws()
    {
        var resonances = Tube.FirstResonances(3);
        var budgets = Tube.Budgets(resonances, Workshop);
        Assert.All(budgets, budget => Assert.True(budget.IsLinear, budget.Remark));
        Compare(Tube, resonances, budgets, Workshop);
    }

    // Means and variances of the draws themselves: 20 000 draws know a standard deviation to half a percent.
    [Fact]
    public void Random_columns_have_the_distributions_of_their_tolerances()
    {
        const int Count = 20_000;
        var columns = Tube.RandomColumns(Workshop, Count).ToList();
        Assert.Equal(Count, columns.Count);
        foreach (var tolerance in Workshop)
        {
            var middle = tolerance.Parameter.Of(Tube);
            var off = columns.Select(column => tolerance.Parameter.Of(column) - middle).ToList();
            var deviation = Math.Sqrt(off.Average(x => x * x));
            Near.Absolute(0, off.Average() / tolerance.StandardDeviation, 0.03, tolerance);
            Near.Relative(tolerance.StandardDeviation, deviation, 0.03);
            if (!tolerance.IsNormal)
            {
                Assert.All(off, x => Assert.InRange(Math.Abs(x), 0, tolerance.PlusMinus * (1 + 1e-9)));
            }
        }
    }

    [Fact]
    public void The_same_seed_draws_the_same_columns()
    {
        Assert.Equal(Bores(1), Bores(1));
        Assert.NotEqual(Bores(1), Bores(2));
        Assert.Throws<ArgumentException>(() => Tube.RandomColumns([], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Tube.RandomColumns(Workshop, 0));

        static List<Bore> Bores(int seed) =>
            [.. Tube.RandomColumns(Workshop, 3, seed).Select(column => column.Bore)];
    }

    [Fact]
    public void A_budget_is_told_in_a_line()
    {
        var budget = Tube.Budgets(Tube.FirstResonances(1), [Workshop[0], Workshop[6]])[0];
        Assert.Matches(
            @"^\d+\.\d\d Hz ± \d+\.\d cents \(95 %\): temperature of the air ± 3 K, 9\d(\.\d)? %; diameter of section 1 ± 0.3 mm, \d(\.\d)? %$",
            budget.ToString()
        );
    }

    // The budget of a column of radial modes is that of its one-dimensional waves: against the gradients of the modes themselves.
    [Fact]
    public void A_column_of_modes_moves_as_its_budget_says()
    {
        var bell = new Column(
            Bore.Build().Cylinder(Mm(40), Mm(700)).Cone(Mm(40), Mm(90), Mm(70)).OpenEnd(Mm(3)),
            Tube.AirProfile
        );
        Assert.Equal(Wavefronts.Multimodal, bell.Wavefronts);
        Tolerance[] tolerances =
        [
            new(ColumnParameter.SectionLength(0), Mm(1)),
            new(ColumnParameter.SectionLength(1), Mm(1)),
            new(ColumnParameter.OutletDiameter(1), Mm(1)),
            Tolerance.Temperature(TemperatureDelta.FromKelvins(3)),
        ];
        var resonances = bell.FirstResonances(2);
        var budgets = bell.Budgets(resonances, tolerances);
        var gradients = bell.Gradients(resonances, [.. tolerances.Select(t => t.Parameter)]);
        foreach (var (budget, gradient) in budgets.Zip(gradients))
        {
            Assert.Equal(gradient.Resonance, budget.Resonance);
            foreach (var contribution in budget.Contributions)
            {
                var exact = gradient.CentsPerUnit(Array.IndexOf(tolerances, contribution.Tolerance));
                Near.Absolute(
                    exact,
                    contribution.CentsPerUnit,
                    0.03 * Math.Abs(exact),
                    contribution.Tolerance
                );
            }
        }
    }

    // A flute with an open blown end and holes.
    [Fact]
    public void So_it_is_with_holes_and_a_blown_end()
    {
        var flute = new Column(
            new Bore(
                [new CylinderSection(Mm(19), Mm(560))],
                new OpenEnd(Mm(2.2)),
                [new ToneHole(Mm(400), Mm(8), Mm(2.2)), new ToneHole(Mm(480), Mm(9), Mm(2.2))]
            ),
            Air.At(Temperature.FromDegreesCelsius(22), RelativeHumidity.FromPercent(50)),
            new ColumnOptions { BlownEnd = BlownEnd.Open(Mm(9)), Fingering = Fingering.Parse("xo") }
        );
        Tolerance[] tolerances =
        [
            new(ColumnParameter.HolePosition(1), Mm(0.5)),
            new(ColumnParameter.HoleDiameter(1), Mm(0.2)),
            new(ColumnParameter.HoleHeight(1), Mm(0.2)),
            new(ColumnParameter.Diameter(0), Mm(0.1)),
            new(ColumnParameter.BlownCorrection, Mm(1.5)),
            Tolerance.Temperature(TemperatureDelta.FromKelvins(2)),
        ];
        var resonances = flute.FirstResonances(2);
        var budgets = flute.Budgets(resonances, tolerances);
        Assert.All(budgets, budget => Assert.True(budget.IsLinear, budget.Remark));
        Compare(flute, resonances, budgets, tolerances);
    }

    [Fact]
    public void Where_first_order_is_not_enough_it_says_so()
    {
        // An opening that may be nearly shut or wide open.
        var jug = new Column(
            Bore.Build().Cylinder(Mm(60), Mm(300)).Cylinder(Mm(10), Mm(20)).OpenEnd(Mm(3)),
            TableAir
        );
        var resonances = jug.FirstResonances(1);
        Tolerance[] wild = [new(ColumnParameter.Diameter(1), Mm(6))];
        var budget = jug.Budgets(resonances, wild)[0];
        Assert.False(budget.IsLinear);
        Assert.Contains("in proportion", budget.Remark, StringComparison.Ordinal);
        // And indeed.
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => Compare(jug, resonances, [budget], wild));

        var impossible = jug.Budgets(resonances, [new(ColumnParameter.Diameter(1), Mm(10))])[0];
        Assert.Contains("does not exist", impossible.Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void What_contributes_most_comes_first()
    {
        var budget = Tube.Budgets(Tube.FirstResonances(1), Workshop)[0];
        Assert.Equal(ColumnParameter.Temperature, budget.Contributions[0].Tolerance.Parameter);
        Near.Absolute(1, budget.Contributions.Sum(c => c.Share), 1e-12);
        Assert.Equal(budget.Contributions.OrderByDescending(c => c.Share), budget.Contributions);
        // c goes as √T: 1200/ln 2 · ½/293.15 K = 2.953 cents per kelvin (ideal gas), in dry air, where no vapour grows with temperature,
        // and without losses, whose layers do.
        var dry = new Column(
            Tube.Bore,
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(0)),
            Lossless
        );
        var warmth = dry.Budgets(
            dry.FirstResonances(1),
            [Tolerance.Temperature(TemperatureDelta.FromKelvins(3))]
        )[0];
        Near.Absolute(2.953, warmth.Contributions[0].CentsPerUnit, 0.01);
        Near.Relative(budget.PlusMinusCents, Cents.Between(budget.Resonance.Frequency, budget.To), 1e-9);
    }

    // Whichever of the column's resonances are asked for, in whatever order.
    [Fact]
    public void A_budget_is_that_of_its_own_resonance()
    {
        var r = Tube.FirstResonances(3);
        var all = Tube.Budgets(r, Workshop);
        var some = Tube.Budgets([r[2], r[0]], Workshop);
        Assert.True(some[0].IsLinear && some[1].IsLinear, some[0].Remark ?? some[1].Remark);
        Assert.Equal(all[2].PlusMinusCents, some[0].PlusMinusCents);
        Assert.Equal(all[0].PlusMinusCents, some[1].PlusMinusCents);
        Assert.Empty(Tube.Budgets([], Workshop));
        // What does next to nothing is not called curved for its rounding.
        Assert.True(Tube.Budgets([r[0]], [new(ColumnParameter.Pressure, 1e-6)])[0].IsLinear);
    }

    // A uniform distribution holds 95 % within 0.95·√3 of its standard deviations, the sum of two equal ones (a triangle) within
    // (1 − √0.05)·√6; many of them are as good as normal, 1.96 (all from their distribution functions).
    [Fact]
    public void Coverage_follows_known_distributions()
    {
        Near.Absolute(1.959964, Coverage.Factor([], 2), 1e-6);
        Near.Absolute(0.95 * Math.Sqrt(3), Coverage.Factor([0.7], 0), 1e-9);
        Near.Absolute((1 - Math.Sqrt(0.05)) * Math.Sqrt(6), Coverage.Factor([3, 3], 0), 2e-3);
        Near.Absolute(1.96, Coverage.Factor([.. Enumerable.Repeat(1.0, 30)], 0), 5e-3);
        Near.Absolute(1.96, Coverage.Factor([0.01], 1), 1e-3);
        Near.Absolute(0.95 * Math.Sqrt(3), Coverage.Factor([1, 0.02], 0), 5e-3);
    }

    [Fact]
    public void A_tolerance_is_checked()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Tolerance(ColumnParameter.Wall, 0));
        Assert.Throws<ArgumentException>(() => new Tolerance(ColumnParameter.Temperature, Mm(1)));
        Assert.Throws<ArgumentException>(() => Tube.Budgets(Tube.FirstResonances(1), []));
        Assert.Throws<ArgumentException>(() =>
            Tube.Budgets(Tube.FirstResonances(1), [Workshop[0], Workshop[0] with { IsNormal = true }])
        );
        Near.Relative(0.3e-3 / Math.Sqrt(3), Workshop[0].StandardDeviation, 1e-12);
        Near.Relative(1e-3 / 1.959964, Workshop[2].StandardDeviation, 1e-6);
    }

    // Monte Carlo with the tolerances' own distributions.
    private static void Compare(
        Column column,
        ResonanceList resonances,
        IReadOnlyList<ResonanceBudget> budgets,
        Tolerance[] tolerances
    )
    {
        const int Draws = 10_000;
        var random = new Random(11);
        var columns = new double[Draws][];
        for (var i = 0; i < Draws; i++)
        {
            columns[i] = [.. tolerances.Select(t => Draw(t, random))];
        }

        var cents = new double[resonances.Count][];
        for (var n = 0; n < cents.Length; n++)
        {
            cents[n] = new double[Draws];
        }

        Parallel.For(
            0,
            Draws,
            i =>
            {
                var drawn = column;
                for (var t = 0; t < tolerances.Length; t++)
                {
                    var parameter = tolerances[t].Parameter;
                    drawn = parameter.With(drawn, parameter.Of(drawn) + columns[i][t]);
                }

                var found = drawn.FirstResonances(resonances.Count);
                for (var n = 0; n < resonances.Count; n++)
                {
                    cents[n][i] = Cents.Between(resonances[n].Frequency, found[n].Frequency);
                }
            }
        );
        for (var n = 0; n < cents.Length; n++)
        {
            Array.Sort(cents[n]);
            var mean = cents[n].Average();
            var sigma = Math.Sqrt(cents[n].Sum(c => (c - mean) * (c - mean)) / Draws);
            var half = (cents[n][(int)(0.975 * Draws)] - cents[n][(int)(0.025 * Draws)]) / 2;
            Near.Relative(sigma, budgets[n].StandardDeviationCents, 0.05, $"resonance {n + 1}");
            Near.Relative(half, budgets[n].PlusMinusCents, 0.05, $"range of resonance {n + 1}");
        }
    }

    private static double Draw(Tolerance tolerance, Random random)
    {
        if (!tolerance.IsNormal)
        {
            return tolerance.PlusMinus * (2 * random.NextDouble() - 1);
        }

        // Box and Muller's.
        var radius = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
        return tolerance.StandardDeviation * radius * Math.Cos(2 * Math.PI * random.NextDouble());
    }
}
