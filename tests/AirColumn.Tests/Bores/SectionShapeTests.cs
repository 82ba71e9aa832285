using UnitsNet;

namespace AirColumn.Tests.Bores;

/// <summary>Shapes between their ends, changed ends, and slices.</summary>
public class SectionShapeTests
{
    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static ProfileSection Profile(ProfileJoin join) =>
        new([new(Mm(0), Mm(38)), new(Mm(40), Mm(44)), new(Mm(90), Mm(70)), new(Mm(150), Mm(30))], join);

    public static TheoryData<Section> All =>
        [
            new CylinderSection(Mm(20), Mm(100)),
            new ConeSection(Mm(20), Mm(50), Mm(100)),
            new ConeSection(Mm(50), Mm(20), Mm(100)),
            new BendSection(Mm(20), Mm(30), Angle.FromDegrees(90)),
            new HornSection(HornLaw.Exponential, Mm(20), Mm(50), Mm(100)),
            new HornSection(HornLaw.Cosine, Mm(50), Mm(20), Mm(100)),
            Profile(ProfileJoin.Straight),
            Profile(ProfileJoin.Smooth),
        ];

    // The laws as they are named, from 20 mm to 80 mm across over 100 mm, at 30 mm.
    [Theory]
    [InlineData(HornLaw.Exponential)]
    [InlineData(HornLaw.Catenoidal)]
    [InlineData(HornLaw.Parabolic)]
    [InlineData(HornLaw.Bessel)]
    [InlineData(HornLaw.Cosine)]
    public void Horns_follow_the_law_they_are_named_after(HornLaw law)
    {
        var horn =
            law == HornLaw.Bessel
                ? new HornSection(Mm(20), Mm(80), Mm(100), 0.5)
                : new HornSection(law, Mm(20), Mm(80), Mm(100));
        var expected = law switch
        {
            HornLaw.Exponential => 20 * Math.Pow(4, 0.3),
            HornLaw.Catenoidal => 20 * Math.Cosh(0.3 * Math.Acosh(4)),
            // Area in proportion: 1 to 16 times.
            HornLaw.Parabolic => 20 * Math.Sqrt(1 + 15 * 0.3),
            // One over the root of the distance from where it would be infinite: 20·√(f/(f − x)), with f/(f − 100) = 16.
            HornLaw.Bessel => 20 * Math.Sqrt(100 * 16 / 15.0 / (100 * 16 / 15.0 - 30)),
            // A quarter of a cosine's period, flat at the narrow end.
            _ => 80 - 60 * Math.Cos(0.3 * Math.PI / 2),
        };
        Near.Relative(expected, horn.DiameterAt(Mm(30)).Millimeters, 1e-12);
        Assert.Equal(law, horn.Law);
        Assert.Equal(law == HornLaw.Bessel ? 0.5 : null, horn.Exponent);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_slice_is_that_part_of_its_section(Section section)
    {
        var (from, to) = (0.3 * section.LengthMetres, 0.8 * section.LengthMetres);
        var slice = section.Slice(from, to);
        var again = slice.Slice(0.1 * slice.LengthMetres, 0.6 * slice.LengthMetres);
        Near.Relative(to - from, slice.LengthMetres, 1e-12);
        Near.Relative(0.5 * slice.LengthMetres, again.LengthMetres, 1e-12);
        for (var i = 0; i <= 10; i++)
        {
            var x = slice.LengthMetres * i / 10;
            Same(section.WallAt(from + x), slice.WallAt(x));
            var y = again.LengthMetres * i / 10;
            Same(section.WallAt(from + 0.1 * slice.LengthMetres + y), again.WallAt(y));
        }

        Assert.Equal(section.InertiaFactor, slice.InertiaFactor);
        Assert.True(
            slice.LargestRadius >= Math.Max(slice.WallAt(0).Radius, slice.WallAt(slice.LengthMetres).Radius)
        );

        static void Same(Wall expected, Wall actual)
        {
            Near.Relative(expected.Radius, actual.Radius, 1e-12);
            Near.Absolute(expected.Slope, actual.Slope, 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Changed_ends_are_where_they_were_put_and_the_length_stays(Section section)
    {
        var changed = section.WithEnds(0.026, section is BendSection ? 0.026 : 0.030);
        Near.Relative(52, changed.InletDiameter.Millimeters, 1e-12);
        Near.Relative(section is BendSection ? 52 : 60, changed.OutletDiameter.Millimeters, 1e-12);
        Near.Relative(section.LengthMetres, changed.LengthMetres, 1e-12);
        Near.Relative(1.5 * section.Length.Millimeters, Longer().Length.Millimeters, 1e-12);
        Near.Relative(section.InletDiameter.Millimeters, Longer().InletDiameter.Millimeters, 1e-12);
        Near.Relative(section.OutletDiameter.Millimeters, Longer().OutletDiameter.Millimeters, 1e-12);

        Section Longer() => section.WithLength(1.5 * section.Length);
    }

    [Fact]
    public void A_cylinder_with_unequal_ends_is_a_cone_and_a_bend_refuses_them()
    {
        var cylinder = new CylinderSection(Mm(20), Mm(100));
        Assert.Equal(new ConeSection(Mm(20), Mm(30), Mm(100)), cylinder.WithEnds(0.01, 0.015));
        Assert.Equal(new CylinderSection(Mm(30), Mm(100)), cylinder.WithEnds(0.015, 0.015));
        var bend = new BendSection(Mm(20), Mm(30), Angle.FromDegrees(90));
        Assert.Contains(
            "one diameter",
            Assert.Throws<NotSupportedException>(() => bend.WithEnds(0.01, 0.015)).Message,
            StringComparison.Ordinal
        );
        Near.Relative(90, bend.WithEnds(0.015, 0.015).Angle.Degrees, 1e-12);
    }

    [Fact]
    public void Parts_of_sections_cannot_be_changed()
    {
        Section[] parts =
        [
            Profile(ProfileJoin.Smooth).SmoothParts[1],
            new HornSection(HornLaw.Exponential, Mm(20), Mm(50), Mm(100)).Slice(0.01, 0.02),
        ];
        foreach (var part in parts)
        {
            Assert.Throws<NotSupportedException>(() => part.WithLength(Mm(3)));
            Assert.Throws<NotSupportedException>(() => part.WithEnds(0.01, 0.02));
        }
    }

    [Fact]
    public void Widest_narrowest_and_steepest_places_are_found()
    {
        var cone = new ConeSection(Mm(50), Mm(20), Mm(100));
        Near.Relative(0.025, cone.LargestRadius, 1e-12);
        Near.Relative(0.010, cone.SmallestRadius, 1e-12);
        Near.Relative(0.15, cone.SteepestSlope, 1e-12);
        // From 70 mm to 30 mm over 60 mm.
        var profile = Profile(ProfileJoin.Straight);
        Near.Relative(0.035, profile.LargestRadius, 1e-12);
        Near.Relative(20.0 / 60, profile.SteepestSlope, 1e-12);
        // A cosine horn is steepest at its wide end: (R − r)·π/2 over its length.
        var horn = new HornSection(HornLaw.Cosine, Mm(20), Mm(80), Mm(100));
        Near.Relative(30 * Math.PI / 200, horn.SteepestSlope, 1e-12);
        Near.Relative(0.04, horn.LargestRadius, 1e-12);
        Near.Relative(
            30 * Math.PI / 200,
            new HornSection(HornLaw.Cosine, Mm(80), Mm(20), Mm(100)).SteepestSlope,
            1e-12
        );
        // Hermite's cubic between flat ends is steepest in its middle: one and a half times its mean.
        var rise = new ProfileSection(
            [new(Mm(0), Mm(20)), new(Mm(10), Mm(20)), new(Mm(30), Mm(40)), new(Mm(40), Mm(40))],
            ProfileJoin.Smooth
        );
        Near.Relative(1.5 * 10 / 20, rise.SteepestSlope, 1e-12);
    }

    [Fact]
    public void A_point_of_a_profile_is_replaced_and_the_others_stay()
    {
        var profile = Profile(ProfileJoin.Smooth).WithPoint(1, new(Mm(50), Mm(46)));
        Assert.Equal(ProfileJoin.Smooth, profile.Join);
        Assert.Equal(
            ["38 mm at 0 mm", "46 mm at 50 mm", "70 mm at 90 mm", "30 mm at 150 mm"],
            profile.Points.Select(point => point.ToString())
        );
        Assert.StartsWith(
            "index is 4; allowed is 0 to 3.",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => profile.WithPoint(4, new(Mm(160), Mm(46))))
                .Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => profile.WithPoint(-1, new(Mm(0), Mm(46))));
    }

    [Fact]
    public void Two_points_make_a_cone_whatever_the_join() =>
        Assert.IsType<ConeSection>(
            Assert.Single(
                new ProfileSection([new(Mm(0), Mm(20)), new(Mm(10), Mm(40))], ProfileJoin.Smooth).SmoothParts
            )
        );

    [Fact]
    public void Refused_profiles_and_horns_say_why()
    {
        Says(
            "A profile has 1 points; it needs at least 2, from its inlet to its outlet.",
            () => new ProfileSection(new ProfilePoint(Mm(0), Mm(38)))
        );
        Says(
            "The first profile point is at 1 mm; positions are measured from the section's inlet, so it must be at 0 mm.",
            () => new ProfileSection(new ProfilePoint(Mm(1), Mm(38)), new ProfilePoint(Mm(2), Mm(38)))
        );
        Says(
            "Profile point 3 is at 4 mm, point 2 at 5 mm; positions must increase. For a sudden change of diameter, use two "
                + "sections.",
            () => new ProfileSection(new(Mm(0), Mm(38)), new(Mm(5), Mm(38)), new(Mm(4), Mm(38)))
        );
        Says(
            "A Bessel horn needs its exponent: use new HornSection(from, to, length, exponent) or Bore.Build().Horn(from, to, length, exponent).",
            () => new HornSection(HornLaw.Bessel, Mm(40), Mm(50), Mm(100))
        );
        Says(
            "from and to are both 40 mm; a horn changes its diameter. Use a cylinder.",
            () => new HornSection(HornLaw.Exponential, Mm(40), Mm(40), Mm(100))
        );

        Assert.StartsWith(
            "Diameter of profile point 2 is 12000 mm; allowed is 0.01 mm to 10000 mm.",
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    new ProfileSection(new ProfilePoint(Mm(0), Mm(38)), new ProfilePoint(Mm(5), Mm(12_000)))
                )
                .Message,
            StringComparison.Ordinal
        );

        static void Says(string message, Func<object> make) =>
            Assert.StartsWith(
                message,
                Assert.Throws<ArgumentException>(make).Message,
                StringComparison.Ordinal
            );
    }

    [Fact]
    public void A_place_a_rounding_error_beyond_the_end_is_the_end()
    {
        var cone = new ConeSection(Mm(38), Mm(70), Mm(90));
        Near.Relative(70, cone.DiameterAt(Mm(90 * (1 + 1e-10))).Millimeters, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => cone.DiameterAt(Mm(90 * (1 + 1e-8))));
    }
}
