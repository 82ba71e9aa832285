using AirColumn.Workshop.Tubes;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests;

public class PartsTests
{
    [Fact]
    public void Parts_stand_in_order_from_the_blown_end()
    {
        var parts = TubeAssembly.OnePipe(
            Mm(44),
            Mm(3),
            new AddedPart("mouthpiece", Mm(20), Mm(29)),
            new AddedPart("coupler", Mm(45), Mm(57))
        );
        var expected = Bore.Build()
            .Cylinder(Mm(29), Mm(20))
            .Cylinder(Mm(44), Mm(1000))
            .Cylinder(Mm(57), Mm(45))
            .OpenEnd(Mm(3));

        Assert.Equal(expected, parts.Assemble(Mm(1000)).Bore);
        Assert.Equal(Mm(29), parts.BlownDiameter);
    }

    [Fact]
    public void Bare_pipe_is_one_cylinder()
    {
        var parts = TubeAssembly.OnePipe(Mm(38));
        Assert.Equal(Bore.Build().Cylinder(Mm(38), Mm(1200)).OpenEnd(), parts.Assemble(Mm(1200)).Bore);
        Assert.Equal(Mm(38), parts.BlownDiameter);
    }

    [Fact]
    public void Sizes_in_different_units_are_equal() =>
        Assert.Equal(
            new AddedPart("bell", Mm(50.8), Mm(76.2)),
            new AddedPart(" bell ", Length.FromInches(2), Length.FromCentimeters(7.62))
        );

    [Fact]
    public void Impossible_sizes_are_named_with_value_and_range()
    {
        Refused("adds is 0 mm; allowed is 0.1 mm to 10000 mm.", () => new AddedPart("x", Mm(0), Mm(30)));
        Refused("inside is -30 mm; allowed is 5 mm to 500 mm.", () => new AddedPart("x", Mm(9), Mm(-30)));
        Refused("inside is 0 mm; allowed is 5 mm to 500 mm.", () => TubeAssembly.OnePipe(default));
        Refused("wall is -1 mm; allowed is 0 mm to 100 mm.", () => TubeAssembly.OnePipe(Mm(40), Mm(-1)));
        Assert.Throws<ArgumentException>(() => new AddedPart(" ", Mm(9), Mm(30)));
    }

    private static void Refused(string message, Func<object> make) =>
        Assert.StartsWith(message, Assert.Throws<ArgumentOutOfRangeException>(make).Message);
}
