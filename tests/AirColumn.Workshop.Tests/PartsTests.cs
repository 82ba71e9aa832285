using AirColumn.Bores;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests;

public class PartsTests
{
    [Fact]
    public void Parts_stand_in_order_from_the_blown_end()
    {
        var parts = new TubeParts(
            Mm(44),
            Mm(3),
            new Fitting("mouthpiece", Mm(20), Mm(29)),
            new Fitting("coupler", Mm(45), Mm(57))
        );
        var expected = Bore.Build()
            .Cylinder(Mm(29), Mm(20))
            .Cylinder(Mm(44), Mm(1000))
            .Cylinder(Mm(57), Mm(45))
            .OpenEnd(Mm(3));

        Assert.Equal(expected, parts.BoreWith(Mm(1000)));
        Assert.Equal(1, parts.PipeSection);
        Assert.Equal(65, parts.FittingsLength.Millimeters, 1e-12);
        Assert.Equal(Mm(29), parts.BlownDiameter);
    }

    [Fact]
    public void Bare_pipe_is_one_cylinder()
    {
        var parts = new TubeParts(Mm(38));
        Assert.Equal(Bore.Build().Cylinder(Mm(38), Mm(1200)).OpenEnd(), parts.BoreWith(Mm(1200)));
        Assert.Equal((0, Length.Zero), (parts.PipeSection, parts.FittingsLength.ToUnit(Length.Zero.Unit)));
        Assert.Equal(Mm(38), parts.BlownDiameter);
    }

    [Fact]
    public void Sizes_in_different_units_are_equal()
    {
        Assert.Equal(
            new Fitting("bell", Mm(50.8), Mm(76.2)),
            new Fitting(" bell ", Length.FromInches(2), Length.FromCentimeters(7.62))
        );
        Assert.Equal(new TubeParts(Mm(40), Mm(2)), new TubeParts(Length.FromCentimeters(4), Mm(2)));
    }

    [Fact]
    public void Impossible_sizes_are_named_with_value_and_range()
    {
        Refused("addedLength is 0 mm; allowed is 0.1 mm to 10000 mm.", () => new Fitting("x", Mm(0), Mm(30)));
        Refused(
            "insideDiameter is -30 mm; allowed is 5 mm to 500 mm.",
            () => new Fitting("x", Mm(9), Mm(-30))
        );
        Refused("pipeDiameter is 0 mm; allowed is 5 mm to 500 mm.", () => new TubeParts(default));
        Refused("wall is -1 mm; allowed is 0 mm to 100 mm.", () => new TubeParts(Mm(40), Mm(-1)));
        Refused(
            "TrimmingCents is NaN cents; allowed is 0 cents to 200 cents.",
            () => new TubePlanOptions { TrimmingCents = double.NaN }
        );
        Refused(
            "MeasuringTolerance is -1 mm; allowed is 0 mm to 100 mm.",
            () => new TubePlanOptions { MeasuringTolerance = Mm(-1) }
        );
        Assert.Throws<ArgumentException>(() => new Fitting(" ", Mm(9), Mm(30)));
    }

    private static void Refused(string message, Func<object> make) =>
        Assert.StartsWith(message, Assert.Throws<ArgumentOutOfRangeException>(make).Message);
}
