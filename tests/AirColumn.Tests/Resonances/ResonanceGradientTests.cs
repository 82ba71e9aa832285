using AirColumn.Tests.Acoustics;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Resonances;

public class ResonanceGradientTests
{
    [Theory]
    [MemberData(nameof(GradientColumns.Names), MemberType = typeof(GradientColumns))]
    public void Each_derivative_is_what_the_resonance_moves_by(string name)
    {
        var column = GradientColumns.Named(name);
        var parameters = GradientColumns.Parameters(column);
        var resonances = column.FirstResonances(5);
        var gradients = column.Gradients(resonances, parameters);
        Assert.Equal(resonances.Count, gradients.Count);
        for (var n = 0; n < parameters.Count; n++)
        {
            var step = parameters[n].StepAt(column.Parts);
            var expected = GradientColumns.Difference(
                column,
                parameters[n],
                step,
                other => [.. other.FirstResonances(resonances.Count).Select(r => r.Frequency.Hertz)]
            );
            for (var i = 0; i < resonances.Count; i++)
            {
                // What differences of frequencies good to 1e-11 can tell.
                var noise = 1e-10 * resonances[i].Frequency.Hertz / step;
                Near.Absolute(
                    expected[i],
                    gradients[i].HertzPerUnit[n],
                    1e-7 * Math.Abs(expected[i]) + noise,
                    $"{name}, {parameters[n]}, resonance {i + 1}"
                );
            }
        }
    }

    // Each hole multiplies the wave by the pressure at its foot, some 10⁶ Pa: two dozen of them must not make it overflow.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Long_rows_of_open_holes_have_gradients(bool isMutual)
    {
        var bore = Bore.Build().Cylinder(Mm(15), Mm(900));
        for (var i = 0; i < 24; i++)
        {
            bore = bore.Hole(Mm(250 + 25 * i), Mm(8), Mm(3));
        }

        var options = OneDimensional with { MutualRadiation = isMutual };
        var column = new Column(bore.OpenEnd(Mm(3)), TableAir, options);
        ColumnParameter[] parameters = [ColumnParameter.HolePosition(0), ColumnParameter.HoleDiameter(1)];
        var resonances = column.FirstResonances(3);
        var gradients = column.Gradients(resonances, parameters);
        for (var n = 0; n < parameters.Length; n++)
        {
            var step = parameters[n].StepAt(column.Parts);
            var expected = GradientColumns.Difference(
                column,
                parameters[n],
                step,
                other => [.. other.FirstResonances(3).Select(r => r.Frequency.Hertz)]
            );
            for (var i = 0; i < resonances.Count; i++)
            {
                var noise = 1e-10 * resonances[i].Frequency.Hertz / step;
                Near.Absolute(
                    expected[i],
                    gradients[i].HertzPerUnit[n],
                    1e-6 * Math.Abs(expected[i]) + noise
                );
            }
        }
    }

    // f = c/4L and a diameter without effect.
    [Fact]
    public void A_quarter_wave_shortens_as_it_should()
    {
        var column = Column(new CylinderSection(Mm(40), Mm(700)), new IdealOpenEnd(), Lossless);
        var first = column.FirstResonances(1);
        var gradient = column.Gradients(
            first,
            [ColumnParameter.SectionLength(0), ColumnParameter.Diameter(0)]
        )[0];
        Near.Relative(-first[0].Frequency.Hertz / 0.7, gradient.HertzPerUnit[0], 1e-9);
        Near.Relative(-1200 / Math.Log(2) / 0.7, gradient.CentsPerUnit(0), 1e-9);
        Near.Absolute(0, gradient.HertzPerUnit[1] * 0.04, 1e-9);
    }

    // The mass of a step is held from nine tenths of the cut-on of the wide side, a corner in frequency: just above it.
    [Fact]
    public void Beside_a_corner_of_a_model_the_gradient_is_that_of_its_side()
    {
        var column = new Column(
            Bore.Build().Cylinder(Mm(344.33), Mm(0.1)).Cylinder(Mm(5), Mm(1.36)).OpenEnd(),
            TableAir,
            OneDimensional
        );
        var first = column.FirstResonances(1);
        Assert.InRange(first[0].Frequency.Hertz, 1100, 1120);
        var length = ColumnParameter.SectionLength(1);
        var expected = GradientColumns.Difference(
            column,
            length,
            1e-6,
            other => [other.FirstResonances(1)[0].Frequency.Hertz]
        )[0];
        Near.Relative(expected, column.Gradients(first, [length])[0].HertzPerUnit[0], 1e-5);
    }

    [Fact]
    public void A_resonance_of_another_column_is_refused()
    {
        var one = GradientColumns.Named("stepped tube");
        var other = GradientColumns.Named("large-tube losses");
        var problem = Assert.Throws<ArgumentException>(() => one.Gradients(other.FirstResonances(1)));
        Assert.Contains("not one of this column", problem.Message, StringComparison.Ordinal);
    }
}
