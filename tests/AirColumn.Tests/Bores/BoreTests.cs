using UnitsNet;

namespace AirColumn.Tests.Bores;

public class BoreTests
{
    private static Length Mm(double value) => Length.FromMillimeters(value);

    [Fact]
    public void Sections_are_equal_by_their_dimensions_whatever_the_unit()
    {
        var metric = new CylinderSection(Mm(25.4), Mm(1000));
        var inches = new CylinderSection(Length.FromInches(1), Length.FromMeters(1));
        Assert.Equal(metric, inches);
        Assert.NotEqual(metric, new CylinderSection(Mm(25.4), Mm(1001)));
    }

    [Fact]
    public void Bores_are_equal_by_their_sections_and_ends()
    {
        Assert.Equal(Tube(Mm(3)), Tube(Mm(3)));
        Assert.Equal(Tube(Mm(3)).GetHashCode(), Tube(Mm(3)).GetHashCode());
        Assert.NotEqual(Tube(Mm(3)), Tube(Mm(4)));

        static Bore Tube(Length wall) =>
            Bore.Build().Cylinder(Mm(30), Mm(25)).Cone(Mm(38), Mm(900)).OpenEnd(wall);
    }

    [Fact]
    public void Steps_arise_where_diameters_differ()
    {
        var bore = Bore.Build()
            .Cylinder(Mm(30), Mm(25))
            .Cylinder(Mm(38), Mm(500))
            .Cone(Mm(70), Mm(90))
            .OpenEnd();
        var step = Assert.Single(bore.Steps);
        Near.Relative(25, step.Position.Millimeters, 1e-12);
        Near.Relative(30, step.Before.Millimeters, 1e-12);
        Near.Relative(38, step.After.Millimeters, 1e-12);
        Near.Relative(615, bore.Length.Millimeters, 1e-12);
    }

    [Fact]
    public void One_diameter_written_in_two_units_is_no_step() =>
        Assert.Empty(
            Bore.Build().Cylinder(Length.FromInches(1.5), Mm(100)).Cylinder(Mm(38.1), Mm(100)).OpenEnd().Steps
        );

    [Fact]
    public void A_section_has_a_diameter_at_each_place()
    {
        Near.Relative(30, new CylinderSection(Mm(30), Mm(25)).DiameterAt(Mm(7)).Millimeters, 1e-12);
        var cone = new ConeSection(Mm(38), Mm(70), Mm(90));
        Near.Relative(38, cone.DiameterAt(Length.Zero).Millimeters, 1e-12);
        Near.Relative(54, cone.DiameterAt(Mm(45)).Millimeters, 1e-12);
        Near.Relative(70, cone.DiameterAt(Mm(90)).Millimeters, 1e-12);
        // Half way along an exponential horn: the geometric mean.
        var horn = new HornSection(HornLaw.Exponential, Mm(40), Mm(90), Mm(100));
        Near.Relative(60, horn.DiameterAt(Mm(50)).Millimeters, 1e-12);
        var profile = new ProfileSection(
            new ProfilePoint(Mm(0), Mm(38)),
            new ProfilePoint(Mm(40), Mm(44)),
            new ProfilePoint(Mm(90), Mm(70))
        );
        Near.Relative(44, profile.DiameterAt(Mm(40)).Millimeters, 1e-12);
        Near.Relative(57, profile.DiameterAt(Mm(65)).Millimeters, 1e-12);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(90.1)]
    public void A_place_outside_a_section_is_refused(double millimetres)
    {
        var cone = new ConeSection(Mm(38), Mm(70), Mm(90));
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => cone.DiameterAt(Mm(millimetres)));
        Assert.Contains("allowed is 0 mm to 90", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_beginning_can_be_shared()
    {
        var beginning = Bore.Build().Cylinder(Mm(30), Mm(25));
        var one = beginning.Cylinder(Mm(40), Mm(100)).OpenEnd();
        var other = beginning.Cylinder(Mm(50), Mm(100)).OpenEnd();
        Assert.Equal(2, one.Sections.Count);
        Near.Relative(40, one.Sections[1].OutletDiameter.Millimeters, 1e-12);
        Near.Relative(50, other.Sections[1].OutletDiameter.Millimeters, 1e-12);
    }

    [Fact]
    public void A_profile_keeps_its_points_and_stretches_along_the_axis()
    {
        var profile = new ProfileSection(new(Mm(0), Mm(38)), new(Mm(40), Mm(44)), new(Mm(90), Mm(70)));
        Assert.Equal(3, profile.Points.Count);
        Near.Relative(44, profile.Points[1].Diameter.Millimeters, 1e-12);
        var stretched = profile.WithLength(Mm(180));
        Near.Relative(80, stretched.Points[1].Position.Millimeters, 1e-12);
        Near.Relative(70, stretched.OutletDiameter.Millimeters, 1e-12);
        Near.Relative(57, 2000 * stretched.WallAt(0.13).Radius, 1e-12);
    }

    [Fact]
    public void Replacing_a_section_leaves_the_others()
    {
        var bore = Bore.Build().Cylinder(Mm(30), Mm(25)).Cylinder(Mm(38), Mm(500)).OpenEnd();
        var longer = bore.WithSectionLength(1, Mm(600));
        Near.Relative(625, longer.Length.Millimeters, 1e-12);
        Assert.Same(bore.Sections[0], longer.Sections[0]);
        Near.Relative(525, bore.Length.Millimeters, 1e-12);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-30)]
    [InlineData(1e9)]
    public void Impossible_dimensions_are_refused_with_name_value_and_range(double value)
    {
        var diameter = Assert.Throws<ArgumentOutOfRangeException>(() =>
            new CylinderSection(Mm(value), Mm(100))
        );
        Assert.Equal("diameter", diameter.ParamName);
        Assert.Contains("allowed is 0.01 mm to 10000 mm", diameter.Message, StringComparison.Ordinal);

        var length = Assert.Throws<ArgumentOutOfRangeException>(() =>
            new ConeSection(Mm(30), Mm(40), Mm(value))
        );
        Assert.Equal("length", length.ParamName);
        Assert.Contains("allowed is 0.001 mm to 1000000 mm", length.Message, StringComparison.Ordinal);

        Assert.Throws<ArgumentOutOfRangeException>(() => new ConeSection(Mm(value), Mm(40), Mm(100)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ConeSection(Mm(30), Mm(value), Mm(100)));
    }

    [Fact]
    public void Impossible_bores_are_refused()
    {
        Assert.Contains(
            "needs at least 1",
            Assert.Throws<ArgumentException>(() => Bore.Build().OpenEnd()).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<InvalidOperationException>(() => Bore.Build().Cone(Mm(40), Mm(100)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new OpenEnd(Mm(-1)));
        Assert.Throws<ArgumentNullException>(() => new Bore([null!], new ClosedEnd()));
        var bore = Bore.Build().Cylinder(Mm(30), Mm(25)).OpenEnd();
        Assert.Contains(
            "the only index is 0",
            Assert.Throws<ArgumentOutOfRangeException>(() => bore.WithSectionLength(1, Mm(3))).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Impossible_profiles_are_refused()
    {
        Refused("needs at least 2", new ProfilePoint(Mm(0), Mm(38)));
        Refused("must be at 0 mm", new ProfilePoint(Mm(1), Mm(38)), new ProfilePoint(Mm(2), Mm(38)));
        Refused("positions must increase", new ProfilePoint(Mm(0), Mm(38)), new ProfilePoint(Mm(0), Mm(40)));

        static void Refused(string reason, params ProfilePoint[] points) =>
            Assert.Contains(
                reason,
                Assert.Throws<ArgumentException>(() => new ProfileSection(points)).Message,
                StringComparison.Ordinal
            );
    }
}
