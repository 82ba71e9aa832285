using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Design;

/// <summary>Which bore was heard.</summary>
public class MeasuredResonancesTests
{
    // A measurement without doubt of a length without belief: what is asked of a length for a note.
    [Fact]
    public void One_resonance_and_one_length_are_the_length_for_a_note()
    {
        var believed = Stepped(Mm(300), Mm(20));
        var target = Frequency.FromHertz(150);
        var solution = BoreFit.Solve(
            believed,
            new MeasuredResonances([new(1, target, 1e-3)]),
            [new(ColumnParameter.SectionLength(0), Mm(200))]
        );
        Assert.True(solution.IsSolved, solution.Explanation);
        var length = SectionLength.Solve(believed, 0, target);
        Assert.Equal(length.Length.Millimeters, 1000 * solution.Values[0].Value, 1e-3);
    }

    // Least squares of what is linear: (Σ JᵀJ/σ² + 1/σp²)⁻¹ (source: aster2018, ch. 11), J here from differences of resonances found anew.
    [Fact]
    public void How_sure_the_fit_is_follows_from_differences()
    {
        var believed = Stepped(Mm(300), Mm(20));
        ColumnParameter[] parameters =
        [
            ColumnParameter.SectionLength(0),
            ColumnParameter.Diameter(0),
            ColumnParameter.Temperature,
        ];
        double[] beforehand = [0.004, 0.0004, 1];
        believed = new Column(
            believed.Bore,
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50)),
            believed.Options
        );
        var found = believed.FirstResonances(4);
        var measured = new MeasuredResonances(
            found.Select((resonance, n) => new MeasuredResonance(n + 1, resonance.Frequency, 1 + n))
        );
        var solution = BoreFit.Solve(
            believed,
            measured,
            [
                .. parameters.Select(
                    (parameter, n) => new Tolerance(parameter, 1.959964 * beforehand[n]) { IsNormal = true }
                ),
            ]
        );
        var slopes = Matrix<double>.Build.Dense(
            4,
            3,
            (n, k) =>
            {
                var (value, step) = (parameters[k].Of(believed), 1e-2 * beforehand[k]);
                return 1200 * Math.Log2(At(value + step) / At(value - step)) / (2 * step) / (1 + n);

                double At(double x) => parameters[k].With(believed, x).FirstResonances(4)[n].Frequency.Hertz;
            }
        );
        var precision =
            slopes.TransposeThisAndMultiply(slopes)
            + Matrix<double>.Build.DiagonalOfDiagonalArray([.. beforehand.Select(s => 1 / (s * s))]);
        var covariance = precision.Inverse();
        for (var i = 0; i < 3; i++)
        {
            Assert.Equal(parameters[i].Of(believed), solution.Values[i].Value, 1e-6 * beforehand[i]);
            for (var j = 0; j < 3; j++)
            {
                Assert.Equal(
                    0,
                    (solution.Covariance(i, j) - covariance[i, j]) / (beforehand[i] * beforehand[j]),
                    1e-4
                );
            }
        }
    }

    // Eight resonances to a cent, from a column of radial modes, tell that a bell is 12 mm too wide; in which pipe a millimetre of length lies they do
    // not tell.
    [Fact]
    public void The_dimension_that_is_off_is_heard()
    {
        var random = new Normal(0, 1, new Random(3));
        var solution = BoreFit.Solve(
            Belled(Mm(60), Wavefronts.Curved),
            new MeasuredResonances(
                Belled(Mm(72), Wavefronts.Multimodal)
                    .FirstResonances(8)
                    .Select(
                        (resonance, n) =>
                            new MeasuredResonance(
                                n + 1,
                                resonance.Frequency * Math.Pow(2, random.Sample() / 1200),
                                1
                            )
                    )
            ),
            [
                new(ColumnParameter.SectionLength(0), Mm(1)),
                new(ColumnParameter.OutletDiameter(2), Mm(20)),
                new(ColumnParameter.SectionLength(1), Mm(1)),
            ]
        );
        var off = Assert.Single(solution.Off);
        Assert.Equal(ColumnParameter.OutletDiameter(2), off.Parameter);
        Assert.Equal(72, 1000 * off.Value, 1000 * off.PlusMinus);
        Assert.Contains(
            "The measurement tells little about 2 of 3 values: length of section 1, length of section 2.",
            solution.Explanation,
            StringComparison.Ordinal
        );
    }

    // 95 percent of 120, to three standard deviations of the count.
    [Fact]
    public void The_ranges_hold_the_truth_as_often_as_they_say()
    {
        var believed = Stepped(Mm(300), Mm(20));
        var inside = 0;
        for (var seed = 0; seed < 60; seed++)
        {
            var random = new Normal(0, 1, new Random(seed));
            double[] truth = [0.3 + 0.002 * random.Sample(), 0.02 + 0.0002 * random.Sample()];
            var solution = BoreFit.Solve(
                believed,
                new MeasuredResonances(
                    Stepped(Length.FromMeters(truth[0]), Length.FromMeters(truth[1]))
                        .FirstResonances(5)
                        .Select(
                            (resonance, n) =>
                                new MeasuredResonance(
                                    n + 1,
                                    resonance.Frequency * Math.Pow(2, 2 * random.Sample() / 1200),
                                    2
                                )
                        )
                ),
                [
                    new(ColumnParameter.SectionLength(0), Mm(3.92)) { IsNormal = true },
                    new(ColumnParameter.Diameter(0), Mm(0.392)) { IsNormal = true },
                ]
            );
            inside += solution.Values.Index().Count(value => Holds(value.Item, truth[value.Index]));
        }

        Assert.InRange(inside, 107, 120);

        static bool Holds(FittedValue value, double truth) => Math.Abs(value.Value - truth) < value.PlusMinus;
    }

    [Fact]
    public void A_column_without_the_resonance_is_said()
    {
        // Between holes of a mouthpiece alone: no second resonance below the first radial mode.
        var shallow = new Column(Bore.Build().Cylinder(Mm(60), Mm(40)).OpenEnd(Mm(3)), TableAir);
        var count = shallow.FirstResonances(5).Count;
        Assert.InRange(count, 1, 4);
        var solution = BoreFit.Solve(
            shallow,
            new MeasuredResonances([new(count + 1, Frequency.FromHertz(3000), 1)]),
            [new(ColumnParameter.SectionLength(0), Mm(0.1))]
        );
        Assert.Equal(SolveStatus.NoBore, solution.Status);
        Assert.Contains("resonance", solution.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_is_refused_by_name()
    {
        Refused([]);
        Refused([new(1, Frequency.FromHertz(100), 1), new(1, Frequency.FromHertz(101), 1)]);
        Refused([new(1, Frequency.FromHertz(200), 1), new(2, Frequency.FromHertz(100), 1)]);
        Refused([new(0, Frequency.FromHertz(200), 1)]);
        Refused([new(1, Frequency.FromHertz(-1), 1)]);
        Refused([new(1, Frequency.FromHertz(200), double.NaN)]);

        static void Refused(MeasuredResonance[] resonances) =>
            Assert.StartsWith(
                "resonances",
                Assert.ThrowsAny<ArgumentException>(() => new MeasuredResonances(resonances)).ParamName
            );
    }

    private static Column Stepped(Length first, Length diameter) =>
        new(
            Bore.Build().Cylinder(diameter, first).Cylinder(Mm(30), Mm(500)).OpenEnd(Mm(3)),
            TableAir,
            OneDimensional
        );

    private static Column Belled(Length bell, Wavefronts fronts) =>
        new(
            Bore.Build()
                .Cylinder(Mm(30), Mm(25))
                .Cylinder(Mm(40.4), Mm(1140))
                .Cone(bell, Mm(60))
                .OpenEnd(Mm(3)),
            TableAir,
            new ColumnOptions { Wavefronts = fronts }
        );
}
