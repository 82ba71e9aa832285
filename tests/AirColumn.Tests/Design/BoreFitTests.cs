using System.Numerics;
using MathNet.Numerics.Distributions;
using UnitsNet;
using Xunit.Abstractions;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Design;

public class BoreFitTests(ITestOutputHelper output)
{
    // What reflectometry of tubes attains: about 0.1 mm with a band of 10 kHz (source: kemp2002). Here with 1 percent of noise, radii to
    // 0.05 mm with 4 kHz, to 0.1 mm with 2 kHz.
    [Theory]
    [InlineData(false, 4000, 0.05)]
    [InlineData(false, 2000, 0.1)]
    [InlineData(true, 2000, 0.1)]
    public void The_wall_is_found_from_a_measurement_with_radial_modes(
        bool isHorn,
        double hertz,
        double allowed
    )
    {
        var (inside, count, worst) = (0, 0, 0.0);
        for (var seed = 1; seed <= Amount.Of(2, 34); seed++)
        {
            var made = new SyntheticMeasurement(seed, isHorn, hertz, Wavefronts.Multimodal);
            var solution = made.Fit();
            Assert.True(solution.IsSolved, solution.Explanation);
            var errors = made.Errors(solution);
            worst = Math.Max(worst, errors.RootMeanSquare);
            Assert.True(errors.RootMeanSquare < allowed, $"seed {seed}: {errors.RootMeanSquare} mm");
            (inside, count) = (inside + errors.Inside, count + errors.Count);
            Assert.InRange(solution.Misfit, 0.85, 1.15);
            // Three standard deviations of the air.
            var air = solution.Values[^1];
            Assert.True(Math.Abs(air.Change - made.TrueKelvins) < 0.15, $"seed {seed}: {air}");
        }

        output.WriteLine(
            $"{(isHorn ? "horns" : "tubes")} to {hertz} Hz: {100.0 * inside / count:0.0} percent inside, worst {worst:0.0000} mm"
        );
        Assert.InRange((double)inside / count, 0.9, 1);
    }

    // A plug pushed 2 mm too far, and a diameter 0.2 mm off: each told apart from the other, and from what is right.
    [Fact]
    public void The_dimension_that_is_off_is_told()
    {
        var believed = Stepped(Mm(300), Mm(20));
        var measured = Measure(Stepped(Mm(298), Mm(20.2)), believed, 0.003, 7);
        var solution = BoreFit.Solve(
            believed,
            measured,
            [
                new(ColumnParameter.SectionLength(0), Mm(5)),
                new(ColumnParameter.Diameter(0), Mm(0.5)),
                new(ColumnParameter.SectionLength(1), Mm(5)),
                new(ColumnParameter.Diameter(1), Mm(0.5)),
            ]
        );
        Assert.True(solution.IsSolved, solution.Explanation);
        Assert.Equal(
            [ColumnParameter.SectionLength(0), ColumnParameter.Diameter(0)],
            solution.Off.Select(value => value.Parameter)
        );
        Assert.All(
            new[] { (0, 0.298), (1, 0.0202), (2, 0.5), (3, 0.03) },
            truth =>
                Assert.True(
                    Math.Abs(solution.Values[truth.Item1].Value - truth.Item2)
                        < 3 * solution.Values[truth.Item1].StandardDeviation,
                    solution.Values[truth.Item1].ToString()
                )
        );
        Assert.Contains("length of section 1", solution.Explanation, StringComparison.Ordinal);
    }

    // A wooden tube: its walls lose 12 percent more than smooth ones. What the diameter explains of the level, and what the walls, is told apart.
    [Fact]
    public void Losses_at_the_wall_are_found_beside_the_bore()
    {
        var believed = Stepped(Mm(300), Mm(20));
        var truth = ColumnParameter.Losses.With(Stepped(Mm(300), Mm(20.2)), 1.12);
        var solution = BoreFit.Solve(
            believed,
            Measure(truth, believed, 0.003, 11),
            [
                new(ColumnParameter.Diameter(0), Mm(0.5)),
                new(ColumnParameter.Diameter(1), Mm(0.5)),
                new(ColumnParameter.Losses, 0.5),
            ]
        );
        Assert.True(solution.IsSolved, solution.Explanation);
        Assert.Equal(
            [ColumnParameter.Diameter(0), ColumnParameter.Losses],
            solution.Off.Select(value => value.Parameter)
        );
        Near.Absolute(1.12, solution.Values[2].Value, 3 * solution.Values[2].StandardDeviation);
        Assert.InRange(solution.Values[2].StandardDeviation, 1e-4, 0.02);
        Near.Absolute(0.0202, solution.Values[0].Value, 3 * solution.Values[0].StandardDeviation);
    }

    // Below the first resonance a tube of even bore is a spring: of its length and its diameter only the volume is heard.
    [Fact]
    public void What_the_measurement_cannot_tell_is_said()
    {
        var believed = new Column(Bore.Build().Cylinder(Mm(20), Mm(100)).ClosedEnd(), TableAir);
        var solution = BoreFit.Solve(
            believed,
            Measure(believed, believed, 0.01, 1, 20, 60),
            [new(ColumnParameter.SectionLength(0), Mm(5)), new(ColumnParameter.Diameter(0), Mm(1))]
        );
        Assert.Empty(solution.Off);
        Assert.Contains("tells little", solution.Explanation, StringComparison.Ordinal);
        // Longer and narrower go together.
        Assert.True(solution.Covariance(0, 1) < 0);
        Assert.Throws<ArgumentOutOfRangeException>(() => solution.Covariance(0, 2));
    }

    // Where the noise is all there is, its size is found, and the truth lies in the 95 percent ranges as often as they say: by 60 repetitions.
    [Fact]
    public void The_ranges_hold_the_truth_as_often_as_they_say()
    {
        var believed = Stepped(Mm(300), Mm(20));
        var (inside, count) = (0, 0);
        for (var seed = 0; seed < 60; seed++)
        {
            var random = new Normal(0, 1, new Random(seed));
            var (length, diameter) = (0.3 + 0.001 * random.Sample(), 0.02 + 0.0001 * random.Sample());
            var truth = Stepped(Length.FromMeters(length), Length.FromMeters(diameter));
            var solution = BoreFit.Solve(
                believed,
                Measure(truth, believed, 0.01, seed, 50, 2000, 60),
                [
                    new(ColumnParameter.SectionLength(0), Mm(1.96)) { IsNormal = true },
                    new(ColumnParameter.Diameter(0), Mm(0.196)) { IsNormal = true },
                ]
            );
            inside += Math.Abs(solution.Values[0].Value - length) < solution.Values[0].PlusMinus ? 1 : 0;
            inside += Math.Abs(solution.Values[1].Value - diameter) < solution.Values[1].PlusMinus ? 1 : 0;
            count += 2;
        }

        // 95 percent of 120, to three standard deviations of the count.
        Assert.InRange(inside, 107, 120);
        Assert.Equal(120, count);
    }

    [Fact]
    public void What_is_not_explained_is_said()
    {
        var believed = Stepped(Mm(300), Mm(20));
        var solution = BoreFit.Solve(
            believed,
            Measure(Stepped(Mm(250), Mm(20)), believed, 0.01, 3),
            [new(ColumnParameter.Diameter(1), Mm(0.1))]
        );
        Assert.True(solution.Misfit > 2);
        Assert.Contains("something else is off", solution.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bore_in_cones_is_the_same_bore()
    {
        var bore = Bore.Build().Cylinder(Mm(30), Mm(500)).Cone(Mm(60), Mm(200)).OpenEnd(Mm(3));
        var cones = BoreProfile.InCones(bore, Mm(40));
        Assert.Equal(18, cones.Sections.Count);
        Assert.Equal(bore.Length.Meters, cones.Length.Meters, 1e-12);
        var profile = BoreProfile.OfJoints(cones, Mm(0.2), Mm(100));
        Assert.Equal(19, profile.Parameters.Count);
        Assert.Equal(0.7, profile.Positions[^1], 1e-12);
        var f = Frequency.FromHertz(777);
        var (a, b) = (
            new Column(bore, TableAir, OneDimensional).ImpedanceAt(f),
            new Column(cones, TableAir, OneDimensional).ImpedanceAt(f)
        );
        Assert.True(Complex.Abs(a / b - 1) < 1e-9);
    }

    [Fact]
    public void Csv_is_read_with_or_without_a_heading()
    {
        const string Text = """
            # by hand
            frequency,re,im
            100, 1e6, -2e6
            101;1.1e6;-2.1e6

            102	1.2e6	-2.2e6
            """;
        var read = MeasuredReflectance.ReadImpedance(new StringReader(Text), 1e6, 0.01);
        Assert.Equal([100, 101, 102], read.Hertz.ToArray());
        var z = new Complex(1.1e6, -2.1e6);
        Assert.Equal((z - 1e6) / (z + 1e6), read.Values[1]);
        var wrong = Assert.Throws<FormatException>(() =>
            MeasuredReflectance.ReadImpedance(new StringReader("100,1,2\n101,1"), 1e6, 0.01)
        );
        Assert.Contains("Line 2", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_is_refused_by_name()
    {
        var column = Stepped(Mm(300), Mm(20));
        var measured = Measure(column, column, 0.01, 1);
        Assert.Throws<ArgumentException>("tolerances", () => BoreFit.Solve(column, measured, []));
        var twice = new Tolerance(ColumnParameter.Diameter(0), Mm(1));
        Assert.Throws<ArgumentException>("tolerances", () => BoreFit.Solve(column, measured, [twice, twice]));
        var high = MeasuredReflectance.OfReflectance([100, 20000], [1, 1], 1e6, 0.01);
        Assert.Throws<ArgumentOutOfRangeException>("measured", () => BoreFit.Solve(column, high, [twice]));
        Assert.Throws<ArgumentException>(
            "hertz",
            () => MeasuredReflectance.OfReflectance([100, 100], [1, 1], 1e6, 0.01)
        );
        Assert.Throws<ArgumentException>(
            "reflectance",
            () => MeasuredReflectance.OfReflectance([100], [double.NaN], 1e6, 0.01)
        );
        Assert.Throws<ArgumentException>("bore", () => BoreProfile.OfJoints(column.Bore, Mm(1), Mm(50)));
        Assert.Throws<ArgumentException>("bore", () => BoreProfile.InCones(column.Bore, Mm(50)));
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            BoreFit.Solve(column, measured, [twice], cancellationToken: cancelled.Token)
        );
    }

    private static Column Stepped(Length first, Length diameter) =>
        new(
            Bore.Build().Cylinder(diameter, first).Cylinder(Mm(30), Mm(500)).OpenEnd(Mm(3)),
            TableAir,
            OneDimensional
        );

    private static MeasuredReflectance Measure(
        Column truth,
        Column believed,
        double noise,
        int seed,
        double low = 50,
        double high = 3000,
        int count = 200
    )
    {
        var normal = new Normal(0, noise, new Random(seed));
        var hertz = FrequencyGrid.Linear(low, high, count).Hertz.ToArray();
        var reference = believed.CharacteristicImpedance;
        return MeasuredReflectance.OfReflectance(
            hertz,
            [
                .. hertz.Select(f =>
                    MeasuredReflectance.Of(truth.ImpedanceAt(Frequency.FromHertz(f)), reference)
                    + new Complex(normal.Sample(), normal.Sample())
                ),
            ],
            reference,
            noise
        );
    }
}
