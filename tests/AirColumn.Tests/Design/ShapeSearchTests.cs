using MathNet.Numerics.LinearAlgebra;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Design;

public class ShapeSearchTests
{
    private static readonly Frequency D2 = Tuning.Concert.FrequencyOf(Pitch.Parse("D2"));

    private static Column Flared =>
        new(
            Bore.Build()
                .Cylinder(Mm(31), Mm(30))
                .Cone(Mm(36), Mm(60), Mm(900))
                .Cone(Mm(120), Mm(300))
                .OpenEnd(Mm(3)),
            TableAir
        );

    private static readonly DesignVariable[] FlaredVariables =
    [
        new(ColumnParameter.SectionLength(1), Mm(300), Mm(1500)),
        new(ColumnParameter.JointDiameter(1), Mm(40), Mm(100)),
        new(ColumnParameter.OutletDiameter(2), Mm(60), Mm(200)),
        new(ColumnParameter.SectionLength(2), Mm(100), Mm(700)),
    ];

    private static readonly ShapeTarget[] DroneAndOctave =
    [
        ShapeTarget.Resonance(1, D2),
        ShapeTarget.Interval(1, 2, 1200),
        ShapeTarget.Widening(1, 2),
    ];

    [Theory]
    [InlineData(1)]
    [InlineData(20)]
    [InlineData(300)]
    public void A_flare_for_drone_and_octave_is_found_from_random_starts(int seed)
    {
        var solution = ShapeSearch.Solve(
            Flared,
            FlaredVariables,
            DroneAndOctave,
            new ShapeOptions
            {
                Starts = 10,
                Seed = seed,
                FromColumn = false,
                AllStarts = true,
            }
        );
        Assert.True(solution.IsSolved, solution.Explanation);
        Assert.Equal(10, solution.Starts.Count);
        Assert.True(
            solution.Starts.Count(start => start.LargestError < 0.1) >= 9,
            string.Join(", ", solution.Starts)
        );
        // The column answers for itself.
        var resonances = new Column(solution.Column.Bore, TableAir).FirstResonances(2);
        Near.Absolute(0, Cents.Between(D2, resonances[0].Frequency), 0.01);
        Near.Absolute(1200, Cents.Between(resonances[0].Frequency, resonances[1].Frequency), 0.01);
        Assert.All(
            solution.Values,
            chosen => Assert.InRange(chosen.Value, chosen.Variable.From, chosen.Variable.To)
        );
        Assert.All(
            solution.Values,
            chosen => Near.Relative(chosen.Value, chosen.Variable.Parameter.Of(solution.Column), 1e-12)
        );
    }

    [Fact]
    public void The_same_seed_gives_the_same_shape()
    {
        var options = new ShapeOptions { FromColumn = false, Seed = 7 };
        var one = ShapeSearch.Solve(Flared, FlaredVariables, DroneAndOctave, options);
        var other = ShapeSearch.Solve(Flared, FlaredVariables, DroneAndOctave, options);
        var third = ShapeSearch.Solve(Flared, FlaredVariables, DroneAndOctave, options with { Seed = 8 });
        Assert.Equal(one.Column.Bore, other.Column.Bore);
        Assert.NotEqual(one.Column.Bore, third.Column.Bore);
    }

    // Every kind of target, each row against differences.
    [Fact]
    public void The_slopes_of_all_targets_are_exact()
    {
        var column = new Column(
            new Bore(
                [new CylinderSection(Mm(19), Mm(400)), new ConeSection(Mm(19), Mm(15), Mm(200))],
                new OpenEnd(Mm(3)),
                [new ToneHole(Mm(300), Mm(8), Mm(4)), new ToneHole(Mm(450), Mm(6), Mm(4))]
            ),
            TableAir,
            new ColumnOptions { BlownEnd = BlownEnd.Open(Mm(8)) }
        );
        DesignVariable[] variables =
        [
            new(ColumnParameter.HolePosition(0), Mm(250), Mm(380)),
            new(ColumnParameter.HoleDiameter(1), Mm(3), Mm(9)),
            new(ColumnParameter.SectionLength(1), Mm(150), Mm(300)),
            new(ColumnParameter.OutletDiameter(1), Mm(12), Mm(18)),
        ];
        var problem = new ShapeProblem(
            column,
            variables,
            [
                ShapeTarget.Resonance(1, Frequency.FromHertz(400)) with
                {
                    Fingering = Fingering.Parse("xo"),
                    Weight = 2,
                },
                ShapeTarget.Interval(1, 3, 1900) with
                {
                    Fingering = Fingering.AllClosed,
                },
                ShapeTarget.Level(2, 1e6),
                ShapeTarget.TotalLength(Mm(610)),
                ShapeTarget.Widening(0, 1),
            ],
            CancellationToken.None
        );
        var place = Vector<double>.Build.Dense([0.4, 0.5, 0.3, 0.6]);
        var jacobian = problem.Jacobian(problem.At(place));
        const double Step = 1e-3;
        for (var i = 0; i < variables.Length; i++)
        {
            var (low, high, far, farther) = (At(-1), At(1), At(-2), At(2));
            for (var row = 0; row < problem.Residuals; row++)
            {
                var expected = (8 * (high[row] - low[row]) - (farther[row] - far[row])) / (12 * Step);
                Near.Absolute(
                    expected,
                    jacobian[row, i],
                    1e-5 * Math.Abs(expected) + 1e-5,
                    $"row {row}, variable {i}"
                );
            }

            double[] At(int steps)
            {
                var there = place.Clone();
                there[i] += steps * Step;
                return problem.At(there).Residuals;
            }
        }
    }

    [Fact]
    public void Progress_rises_to_one()
    {
        var told = new List<double>();
        var solution = ShapeSearch.Solve(Flared, FlaredVariables, DroneAndOctave, progress: new Listed(told));
        Assert.True(solution.IsSolved);
        Assert.True(told.Count > 3);
        Assert.Equal(told.Order(), told);
        Assert.Equal(1, told[^1]);
        Assert.InRange(told[0], double.Epsilon, 0.5);
    }

    private sealed class Listed(List<double> told) : IProgress<double>
    {
        public void Report(double value) => told.Add(value);
    }

    [Fact]
    public void Level_and_total_length_are_reached_too()
    {
        var column = Flared;
        var level = 0.8 * column.FirstResonances(1)[0].Magnitude;
        var solution = ShapeSearch.Solve(
            column,
            FlaredVariables,
            [ShapeTarget.Resonance(1, D2), ShapeTarget.Level(1, level), ShapeTarget.TotalLength(Mm(1500))],
            new ShapeOptions { Within = 1e-4 }
        );
        Assert.True(solution.IsSolved, solution.Explanation);
        Near.Absolute(1500, solution.Column.Bore.Length.Millimeters, 1e-4);
        Near.Relative(level, solution.Column.FirstResonances(1)[0].Magnitude, 1e-5);
    }

    [Fact]
    public void What_cannot_be_reached_comes_back_as_the_best_with_its_bounds()
    {
        var straight = new Column(Bore.Build().Cylinder(Mm(40), Mm(900)).OpenEnd(Mm(3)), TableAir);
        var solution = ShapeSearch.Solve(
            straight,
            [new(ColumnParameter.SectionLength(0), Mm(800), Mm(1000))],
            [ShapeTarget.Resonance(1, D2)]
        );
        Assert.Equal(SolveStatus.OutOfReach, solution.Status);
        Near.Absolute(1000, solution.Values[0].Value * 1000, 0.5);
        Assert.True(solution.Values[0].IsAtBound);
        Assert.Contains("(at its bound)", solution.Values[0].ToString(), StringComparison.Ordinal);
        Assert.Matches(@"missed by \d+(\.\d+)? cents$", solution.Errors[0].ToString());
        Assert.Contains("At a bound: length of section 1, ", solution.Explanation, StringComparison.Ordinal);
        Near.Relative(
            Cents.Between(D2, solution.Column.FirstResonances(1)[0].Frequency),
            solution.Errors[0].Error,
            1e-9
        );
    }

    // Where a value may go no further, in the air, beside an end, in the width of the bore.
    [Fact]
    public void An_answer_on_the_bound_of_what_is_possible_comes_back()
    {
        var room = Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50));
        var flute = new Column(
            Bore.Build().Cylinder(Mm(19), Mm(500)).Hole(Mm(400), Mm(6), Mm(3)).OpenEnd(Mm(2)),
            room,
            new ColumnOptions { BlownEnd = BlownEnd.Open(Mm(9)) }
        );
        var first = flute.FirstResonances(1)[0].Frequency;
        foreach (
            var (variable, target) in new[]
            {
                (new DesignVariable(ColumnParameter.Humidity, 0, 1), first * 1.05),
                (new DesignVariable(ColumnParameter.CarbonDioxide, 0, 0.1), first * 0.9),
                (new DesignVariable(ColumnParameter.HolePosition(0), Mm(300), Mm(497)), first * 0.6),
                (new DesignVariable(ColumnParameter.HoleDiameter(0), Mm(1), Mm(19)), first * 1.8),
            }
        )
        {
            var solution = ShapeSearch.Solve(flute, [variable], [ShapeTarget.Resonance(1, target)]);
            Assert.Equal(SolveStatus.OutOfReach, solution.Status);
            Assert.True(solution.Values[0].IsAtBound, $"{variable}: {solution.Values[0].Value}");
        }
    }

    [Fact]
    public void A_bore_that_is_none_is_never_better_than_one_that_is()
    {
        var tube = new Column(Bore.Build().Cylinder(Mm(40), Mm(1200)).OpenEnd(Mm(3)), TableAir);
        var solution = ShapeSearch.Solve(
            tube,
            [new DesignVariable(ColumnParameter.SectionLength(0), Mm(-500), Mm(2000))],
            [
                ShapeTarget.Resonance(1, Frequency.FromHertz(68)) with
                {
                    Weight = 1000,
                },
                ShapeTarget.Resonance(1, Frequency.FromHertz(75)) with
                {
                    Weight = 1000,
                },
            ],
            new ShapeOptions { Starts = 20, AllStarts = true }
        );
        Assert.Equal(SolveStatus.OutOfReach, solution.Status);
        // The middle in cents between what contradicts.
        Near.Absolute(-solution.Errors[0].Error, solution.Errors[1].Error, 0.01);
    }

    [Fact]
    public void Values_that_make_no_bore_are_explained()
    {
        var flute = new Column(
            Bore.Build()
                .Cylinder(Mm(19), Mm(500))
                .Hole(Mm(300), Mm(8), Mm(3))
                .Hole(Mm(320), Mm(8), Mm(3))
                .OpenEnd(Mm(2)),
            TableAir
        );
        var solution = ShapeSearch.Solve(
            flute,
            [new DesignVariable(ColumnParameter.HolePosition(1), Mm(299), Mm(301))],
            [ShapeTarget.Resonance(1, Frequency.FromHertz(400))]
        );
        Assert.Equal(SolveStatus.NoBore, solution.Status);
        Assert.Contains("overlaps", solution.Explanation, StringComparison.Ordinal);
        Assert.Equal(flute.Bore, solution.Column.Bore);
        Near.Relative(0.32, solution.Values[0].Value, 1e-12);
    }

    [Fact]
    public void A_resonance_that_never_shows_is_named()
    {
        var wide = new Column(Bore.Build().Cylinder(Mm(300), Mm(300)).OpenEnd(Mm(3)), TableAir);
        var solution = ShapeSearch.Solve(
            wide,
            [new(ColumnParameter.SectionLength(0), Mm(200), Mm(400))],
            [ShapeTarget.Resonance(40, Frequency.FromHertz(5000))],
            new ShapeOptions { Starts = 2 }
        );
        Assert.Equal(SolveStatus.NoResonance, solution.Status);
        Assert.Contains(
            "40th resonance on 5000 Hz is missing",
            solution.Explanation,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_search_can_be_cancelled_and_refuses_what_cannot_be()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            ShapeSearch.Solve(Flared, FlaredVariables, DroneAndOctave, cancellationToken: source.Token)
        );
        Assert.Throws<ArgumentException>(() => ShapeSearch.Solve(Flared, [], DroneAndOctave));
        Assert.Throws<ArgumentException>(() => ShapeSearch.Solve(Flared, FlaredVariables, []));
        Assert.Throws<ArgumentException>(() =>
            ShapeSearch.Solve(Flared, [new(ColumnParameter.HoleDiameter(0), Mm(1), Mm(2))], DroneAndOctave)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ShapeSearch.Solve(Flared, FlaredVariables, [ShapeTarget.Widening(0, 3)])
        );
        Assert.Throws<ArgumentException>(() => new DesignVariable(ColumnParameter.Wall, Mm(2), Mm(2)));
        Assert.Throws<ArgumentException>(() => new DesignVariable(ColumnParameter.Temperature, Mm(2), Mm(3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShapeTarget.Interval(2, 2, 100));
    }
}
