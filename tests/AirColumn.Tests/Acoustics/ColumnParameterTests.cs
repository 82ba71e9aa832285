using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class ColumnParameterTests
{
    [Theory]
    [MemberData(nameof(GradientColumns.Names), MemberType = typeof(GradientColumns))]
    public void A_value_that_is_set_is_the_value_it_has(string name)
    {
        var column = GradientColumns.Named(name);
        foreach (var parameter in ColumnParameter.AllOf(column))
        {
            var (value, step) = (parameter.Of(column), parameter.StepAt(column.Parts));
            var other = value + step;
            var changed = parameter.With(column, other);
            Near.Relative(other, parameter.Of(changed), 1e-12, parameter);
            Near.Relative(value, parameter.Of(column), 1e-15, parameter);
            Near.Relative(value, parameter.Of(parameter.With(changed, value)), 1e-12, parameter);
        }
    }

    [Fact]
    public void What_stays_the_same_is_shared()
    {
        var column = GradientColumns.Named("stepped tube");
        var other = ColumnParameter.SectionLength(2).With(column, 0.13);
        Assert.Equal(column.Model.Way.Length, other.Model.Way.Length);
        // Three sections and the masses of two steps; the last has changed, and the step before it is compiled with it.
        Assert.Equal(3, column.Model.Way.Intersect(other.Model.Way).Count());
        var flute = GradientColumns.Named("flute");
        var moved = flute.WithBore(
            flute.Bore.WithHole(2, new ToneHole(Mm(460), Mm(6), Mm(4)) { Pad = new HolePad(Mm(2), Mm(9)) })
        );
        Assert.Equal(
            2,
            flute
                .Model.Way.Intersect(moved.Model.Way)
                .Count(element => element is AirColumn.Acoustics.Line.SideColumn)
        );
    }

    [Theory]
    [MemberData(nameof(GradientColumns.Names), MemberType = typeof(GradientColumns))]
    public void A_column_that_shares_answers_as_a_new_one(string name)
    {
        var column = GradientColumns.Named(name);
        foreach (var parameter in ColumnParameter.AllOf(column))
        {
            var (value, step) = (parameter.Of(column), parameter.StepAt(column.Parts));
            var changed = parameter.With(column, value + step);
            var fresh = new Column(changed.Bore, changed.AirProfile, changed.Options);
            foreach (var hertz in new[] { 83.0, 440, 1100 })
            {
                Assert.Equal(
                    fresh.ImpedanceAt(Frequency.FromHertz(hertz)),
                    changed.ImpedanceAt(Frequency.FromHertz(hertz))
                );
            }
        }
    }

    [Fact]
    public void Equal_parameters_are_equal_and_say_what_they_are()
    {
        Assert.Equal(ColumnParameter.JointDiameter(1), ColumnParameter.JointDiameter(1));
        Assert.Equal(
            ColumnParameter.JointDiameter(1).GetHashCode(),
            ColumnParameter.JointDiameter(1).GetHashCode()
        );
        Assert.NotEqual(ColumnParameter.InletDiameter(1), ColumnParameter.OutletDiameter(1));
        Assert.NotEqual(ColumnParameter.SectionLength(1), ColumnParameter.Diameter(1));
        Assert.NotEqual(
            ColumnParameter.Together(ColumnParameter.SectionLength(0), ColumnParameter.Wall),
            ColumnParameter.Together(ColumnParameter.Wall, ColumnParameter.SectionLength(0))
        );
        Assert.Equal(
            "outlet diameter of section 2 and inlet diameter of section 3",
            ColumnParameter.JointDiameter(1).ToString()
        );
        Assert.Equal("K", ColumnParameter.Temperature.Unit);
        Assert.Throws<ArgumentOutOfRangeException>(() => ColumnParameter.SectionLength(-1));
        Assert.Throws<ArgumentException>(() => ColumnParameter.Together());
        Assert.Throws<ArgumentException>(() =>
            ColumnParameter.Together(ColumnParameter.Wall, ColumnParameter.Temperature)
        );
    }

    [Fact]
    public void A_value_out_of_range_says_so()
    {
        var column = GradientColumns.Named("stepped tube");
        Assert.Throws<ArgumentOutOfRangeException>(() => ColumnParameter.Diameter(1).With(column, -0.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => ColumnParameter.Temperature.With(column, 400));
        Assert.ThrowsAny<ArgumentException>(() => ColumnParameter.Diameter(1).With(column, double.NaN));
    }
}
