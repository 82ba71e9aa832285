using System.Numerics;
using FsCheck.Xunit;
using MathNet.Numerics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class ImpedanceGradientTests
{
    private static readonly double[] Some = [47, 133, 290, 401, 656, 905, 1210];

    [Theory]
    [MemberData(nameof(GradientColumns.Names), MemberType = typeof(GradientColumns))]
    public void Each_derivative_is_what_the_impedance_changes_by(string name)
    {
        var column = GradientColumns.Named(name);
        var parameters = GradientColumns.Parameters(column);
        var gradient = column.ImpedanceGradient(FrequencyGrid.FromHertz(Some), parameters);
        Assert.Equal(parameters, gradient.Parameters);
        for (var i = 0; i < Some.Length; i++)
        {
            Near.Relative(
                column.ImpedanceAt(Frequency.FromHertz(Some[i])),
                gradient.Impedance[i],
                1e-10,
                $"{name}, {Some[i]} Hz"
            );
        }

        for (var n = 0; n < parameters.Count; n++)
        {
            var parameter = parameters[n];
            // Against a scale on which it would count: a thousandth of what Z changes by with its own size.
            var step = 0.1 * parameter.StepAt(column.Parts);
            var expected = GradientColumns.Difference(column, parameter, step, Impedances);
            for (var i = 0; i < Some.Length; i++)
            {
                var (z, dz) = (gradient.Impedance[i], new Complex(expected[2 * i], expected[2 * i + 1]));
                // What differences can tell: the impedances are good to some 1e-12.
                var noise = 1e-11 * z.Magnitude / step;
                Near.Absolute(
                    0,
                    (gradient.At(n, i) - dz).Magnitude / (dz.Magnitude + 1e7 * noise),
                    1e-7,
                    $"{name}, {parameter}, {Some[i]} Hz: {gradient.At(n, i)} against {dz}"
                );
            }
        }

        static double[] Impedances(Column column) =>
            [
                .. Some.SelectMany(hertz =>
                {
                    var z = column.ImpedanceAt(Frequency.FromHertz(hertz));
                    return new[] { z.Real, z.Imaginary };
                }),
            ];
    }

    // Z = −jZc·cot kL (any textbook, such as chaigne2016, ch. 4).
    [Fact]
    public void A_closed_pipe_without_losses_follows_the_textbook()
    {
        var (d, length) = (0.04, 0.7);
        var column = Column(new CylinderSection(Mm(40), Mm(700)), new ClosedEnd(), Lossless);
        var gradient = column.ImpedanceGradient(
            FrequencyGrid.FromHertz(Some),
            [ColumnParameter.SectionLength(0), ColumnParameter.Diameter(0)]
        );
        for (var i = 0; i < Some.Length; i++)
        {
            var k = 2 * Math.PI * Some[i] / column.Air.SpeedOfSound.MetersPerSecond;
            var zc = column.CharacteristicImpedance;
            Near.Relative(
                new Complex(0, zc * k / Math.Pow(Math.Sin(k * length), 2)),
                gradient.At(0, i),
                1e-10
            );
            Near.Relative(new Complex(0, 2 * zc / Math.Tan(k * length) / d), gradient.At(1, i), 1e-10);
        }
    }

    // Z = Zc/tanh ΓL: dZ/dL = −Zc·Γ/sinh²ΓL, with Bessel functions of a general-purpose library.
    [Fact]
    public void A_closed_pipe_with_losses_follows_the_textbook()
    {
        var column = Column(new CylinderSection(Mm(6), Mm(700)), new ClosedEnd());
        var gas = column.Gas;
        var gradient = column.ImpedanceGradient(
            FrequencyGrid.FromHertz(Some),
            [ColumnParameter.SectionLength(0)]
        );
        for (var i = 0; i < Some.Length; i++)
        {
            var omega = 2 * Math.PI * Some[i];
            var s = 0.003 * Math.Sqrt(omega * gas.Density / gas.Viscosity);
            var (fv, ft) = (F(s), F(s * Math.Sqrt(gas.PrandtlNumber)));
            var area = Math.PI * 9e-6;
            var series = new Complex(0, omega * gas.Density / area) / (1 - fv);
            var shunt =
                new Complex(0, omega * area / (gas.Density * gas.SpeedOfSound * gas.SpeedOfSound))
                * (1 + (gas.HeatCapacityRatio - 1) * ft);
            var (gamma, zc) = (Complex.Sqrt(series * shunt), Complex.Sqrt(series / shunt));
            Near.Relative(-zc * gamma / Complex.Pow(Complex.Sinh(gamma * 0.7), 2), gradient.At(0, i), 1e-9);
        }

        static Complex F(double s)
        {
            var x = s * Complex.Sqrt(-Complex.ImaginaryOne);
            return 2 * SpecialFunctions.BesselJScaled(1, x) / (x * SpecialFunctions.BesselJScaled(0, x));
        }
    }

    // Without losses all lengths times s is all frequencies over s, and Z over s²: Σ θ·∂Z/∂θ = −2Z + f·∂Z/∂f.
    [Property(MaxTest = 60)]
    public void Dimensions_together_scale_the_column(int seed)
    {
        var plain = RandomBore.From(seed, 4e-3, 0.05, 1);
        var bore = plain.WithFarEnd(seed % 2 == 0 ? new ClosedEnd() : new IdealOpenEnd());
        var column = new Column(
            bore,
            TableAir,
            new ColumnOptions { Losses = WallLosses.None, Wavefronts = (Wavefronts)(Math.Abs(seed % 3)) }
        );
        var hertz = 0.7 * Math.Min(column.CutOnHertz, 900);
        var step = 2e-6 * hertz;
        var all = ColumnParameter.AllOf(column).Where(p => p.Unit == "m").ToList();
        var gradient = column.ImpedanceGradient(FrequencyGrid.FromHertz(hertz), all);
        var sum = Complex.Zero;
        for (var n = 0; n < all.Count; n++)
        {
            sum += all[n].Of(column) * gradient.At(n, 0);
        }

        var slope =
            (8 * (At(hertz + step) - At(hertz - step)) - (At(hertz + 2 * step) - At(hertz - 2 * step)))
            / (12 * step);
        var (left, right) = (sum + 2 * At(hertz), hertz * slope);
        // A scale that is not small by chance.
        Near.Absolute(
            0,
            (left - right).Magnitude / (right.Magnitude + At(hertz).Magnitude),
            1e-6,
            $"seed {seed}: {bore}"
        );

        Complex At(double f) => column.ImpedanceAt(Frequency.FromHertz(f));
    }

    [Theory]
    [MemberData(nameof(GradientColumns.Names), MemberType = typeof(GradientColumns))]
    public void A_dense_curve_is_interpolated_within_what_it_states(string name)
    {
        var column = GradientColumns.Named(name);
        var every = 200;
        var dense = FrequencyGrid.Linear(20, 1300, 10 * every + 1);
        var sparse = FrequencyGrid.Linear(20, 1300, 11);
        var parameters = ColumnParameter.AllOf(column);
        var (many, few) = (
            column.ImpedanceGradient(dense, parameters),
            column.ImpedanceGradient(sparse, parameters)
        );
        Assert.Equal(0, few.InterpolationError);
        Assert.InRange(many.InterpolationError, 1e-16, 1e-8);
        for (var n = 0; n < parameters.Count; n++)
        {
            // q = U²·δZ is what was interpolated.
            var largest = Enumerable.Range(0, 11).Max(i => few.At(n, i).Magnitude / Square(few.Impedance[i]));
            for (var i = 0; i < 11; i++)
            {
                var error = (many.At(n, i * every) - few.At(n, i)).Magnitude / Square(few.Impedance[i]);
                // Rounding of what comes from differences counts by one over their step: most where a whole branch does.
                var rounding = column.Bore.Holes.Count + column.Bore.Branches.Count > 0 ? 5e-9 : 5e-11;
                Near.Absolute(
                    0,
                    error / largest,
                    30 * many.InterpolationError + rounding,
                    $"{name}, {parameters[n]}"
                );
            }
        }

        static double Square(Complex z) => Math.Max(z.Magnitude, 1) * Math.Max(z.Magnitude, 1);
    }

    [Theory]
    [InlineData(0, -1, "frequency")]
    [InlineData(0, 3, "frequency")]
    [InlineData(-1, 0, "parameter")]
    [InlineData(1, 0, "parameter")]
    public void What_was_not_asked_for_is_refused(int parameter, int frequency, string name)
    {
        var column = Column(new CylinderSection(Mm(20), Mm(500)), new ClosedEnd());
        var gradient = column.ImpedanceGradient(
            FrequencyGrid.FromHertz(100, 200, 300),
            [ColumnParameter.SectionLength(0)]
        );
        var problem = Assert.Throws<ArgumentOutOfRangeException>(() => gradient.At(parameter, frequency));
        Assert.Equal(name, problem.ParamName);
    }

    // At low frequencies it is the losses that ask for many terms, however little the waves turn.
    [Theory]
    [InlineData(6)]
    [InlineData(12)]
    public void A_dense_logarithmic_curve_is_too(double diameter)
    {
        var column = Column(new CylinderSection(Mm(diameter), Mm(1000)), new ClosedEnd());
        ColumnParameter[] parameters = [ColumnParameter.Diameter(0), ColumnParameter.SectionLength(0)];
        var dense = FrequencyGrid.Logarithmic(1, 2000, 1000);
        var many = column.ImpedanceGradient(dense, parameters);
        int[] places = [.. Enumerable.Range(0, 25).Select(i => 40 * i)];
        var few = column.ImpedanceGradient(
            FrequencyGrid.FromHertz([.. places.Select(i => dense[i].Hertz)]),
            parameters
        );
        Assert.Equal(0, few.InterpolationError);
        Assert.InRange(many.InterpolationError, 1e-16, 1e-8);
        for (var i = 0; i < places.Length; i++)
        {
            Near.Relative(few.Impedance[i], many.Impedance[places[i]], 1e-10, places[i]);
            Near.Relative(few.At(0, i), many.At(0, places[i]), 1e-8, places[i]);
            Near.Relative(few.At(1, i), many.At(1, places[i]), 1e-8, places[i]);
        }
    }

    // Saturated air can only become drier, a tube of the smallest diameter wider.
    [Fact]
    public void At_the_end_of_a_range_the_derivative_is_one_sided()
    {
        var column = new Column(
            Bore.Build().Cylinder(Mm(0.01), Mm(2)).Cylinder(Mm(20), Mm(300)).OpenEnd(),
            Air.At(AirState.ExhaledBreath)
        );
        ColumnParameter[] all = [ColumnParameter.Humidity, ColumnParameter.Diameter(0)];
        var gradient = column.ImpedanceGradient(FrequencyGrid.FromHertz(400), all);
        var sides = new[] { -1, 1 };
        for (var n = 0; n < all.Length; n++)
        {
            var (at, step) = (all[n].Of(column), 1e-3 * sides[n] * all[n].StepAt(column.Parts));
            var (z, z1, z2) = (Z(0), Z(1), Z(2));
            var expected = (4 * z1 - z2 - 3 * z) / (2 * step);
            Near.Relative(expected, gradient.At(n, 0), 1e-4, all[n]);

            Complex Z(int steps) =>
                all[n].With(column, at + steps * step).ImpedanceAt(Frequency.FromHertz(400));
        }
    }

    // The end correction of a rim grows as its thickness to 2/3.
    [Fact]
    public void A_thin_edge_has_no_derivative_with_its_thickness()
    {
        var column = Column(new CylinderSection(Mm(40), Mm(700)), new OpenEnd(Mm(0)));
        var problem = Assert.Throws<ArgumentException>(() =>
            column.ImpedanceGradient(FrequencyGrid.FromHertz(100), [ColumnParameter.Wall])
        );
        Assert.Contains("wall at the far end is 0 mm", problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(ColumnParameter.Wall, ColumnParameter.AllOf(column));
    }

    [Fact]
    public void A_hole_on_a_joint_is_named()
    {
        var column = new Column(
            Bore.Build()
                .Cylinder(Mm(19), Mm(250))
                .Cylinder(Mm(19), Mm(250))
                .Hole(Mm(250), Mm(6), Mm(3))
                .OpenEnd(Mm(2)),
            TableAir
        );
        var problem = Assert.Throws<ArgumentException>(() =>
            column.ImpedanceGradient(FrequencyGrid.FromHertz(100), [ColumnParameter.SectionLength(0)])
        );
        Assert.Contains("where two sections meet", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Parameters_that_change_together_add_up()
    {
        var column = GradientColumns.Named("stepped tube");
        var (a, b) = (ColumnParameter.SectionLength(0), ColumnParameter.SectionLength(2));
        var gradient = column.ImpedanceGradient(
            FrequencyGrid.FromHertz(Some),
            [a, b, ColumnParameter.Together(a, b)]
        );
        for (var i = 0; i < Some.Length; i++)
        {
            Near.Relative(gradient.At(0, i) + gradient.At(1, i), gradient.At(2, i), 1e-10);
        }
    }

    [Fact]
    public void A_parameter_the_column_does_not_have_is_named()
    {
        var column = GradientColumns.Named("stepped tube");
        foreach (
            var (parameter, says) in new[]
            {
                (ColumnParameter.SectionLength(3), "length of section 4"),
                (ColumnParameter.HoleDiameter(0), "diameter of hole 1"),
                (ColumnParameter.PointDiameter(1, 0), "section 2 is not a profile"),
                (ColumnParameter.BlownCorrection, "closed blown end"),
            }
        )
        {
            var problem = Assert.Throws<ArgumentException>(() =>
                column.ImpedanceGradient(FrequencyGrid.FromHertz(100), [parameter])
            );
            Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        }

        var dry = Column(new CylinderSection(Mm(40), Mm(700)), new ClosedEnd());
        var air = Assert.Throws<ArgumentException>(() =>
            dry.ImpedanceGradient(FrequencyGrid.FromHertz(100), [ColumnParameter.Temperature])
        );
        Assert.Contains("constants", air.Message, StringComparison.Ordinal);
    }
}
