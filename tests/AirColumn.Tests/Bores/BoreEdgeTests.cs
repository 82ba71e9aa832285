using UnitsNet;

namespace AirColumn.Tests.Bores;

/// <summary>What is just allowed, what is just not, and what is told of a bore with everything in it.</summary>
public class BoreEdgeTests
{
    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static BoreBuilder Tube => Bore.Build().Cylinder(Mm(15), Mm(300));

    private static Bore Stub => Bore.Build().Cylinder(Mm(6), Mm(40)).ClosedEnd();

    [Theory]
    [InlineData(4, 8)] // ends at the inlet
    [InlineData(296, 8)] // ends at the far end
    [InlineData(150, 15)] // as wide as the bore
    public void Holes_that_just_fit_are_accepted(double position, double diameter) =>
        Assert.Single(Tube.Hole(Mm(position), Mm(diameter), Mm(3)).OpenEnd().Holes);

    [Fact]
    public void Holes_that_touch_are_accepted()
    {
        var bore = Tube.Hole(Mm(200), Mm(7), Mm(3)).Hole(Mm(207), Mm(7), Mm(3)).OpenEnd();
        Assert.Equal(2, bore.Holes.Count);
        Assert.Single(Tube.Hole(Mm(200), Mm(7), Mm(3)).Branch(Mm(206.5), Stub).OpenEnd().Branches);
    }

    [Theory]
    [InlineData(3.999)]
    [InlineData(296.001)]
    public void Holes_a_micrometre_beyond_the_ends_are_refused(double position) =>
        Assert.StartsWith(
            $"The hole 8 mm at {position.ToString(System.Globalization.CultureInfo.InvariantCulture)} mm, 3 mm high "
                + "reaches beyond the bore, which is 300 mm long; place it so that all of it lies between the ends.",
            Assert.Throws<ArgumentException>(() => Tube.Hole(Mm(position), Mm(8), Mm(3)).OpenEnd()).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_refusal_names_what_is_in_the_way_and_where_it_was_given()
    {
        var wide = Assert.Throws<ArgumentException>(() => Tube.Hole(Mm(150), Mm(15.001), Mm(3)).OpenEnd());
        Assert.Equal("holes", wide.ParamName);
        Assert.Contains(
            "is wider than the bore there, 15 mm; it may be at most as wide as the bore.",
            wide.Message,
            StringComparison.Ordinal
        );
        var over = Assert.Throws<ArgumentException>(() =>
            Tube.Hole(Mm(200), Mm(7), Mm(3)).Branch(Mm(206.499), Stub, "stub").OpenEnd()
        );
        Assert.Equal("branches", over.ParamName);
        Assert.Contains(
            "overlaps the hole 7 mm at 200 mm, 3 mm high; move them apart along the bore.",
            over.Message,
            StringComparison.Ordinal
        );
    }

    // At a step the narrower side counts: a hole across it lies in both.
    [Fact]
    public void A_hole_at_a_step_is_no_wider_than_the_narrower_side()
    {
        var steps = Bore.Build().Cylinder(Mm(20), Mm(100)).Cylinder(Mm(10), Mm(100));
        Assert.Single(steps.Hole(Mm(100), Mm(10), Mm(2)).OpenEnd().Holes);
        Assert.Throws<ArgumentException>(() => steps.Hole(Mm(100), Mm(10.1), Mm(2)).OpenEnd());
        Assert.Single(steps.Hole(Mm(80), Mm(20), Mm(2)).OpenEnd().Holes);

        var bore = steps.Cone(Mm(30), Mm(100)).OpenEnd();
        Near.Relative(0.010, bore.RadiusAt(0), 1e-12);
        Near.Relative(0.010, bore.RadiusAt(0.0999), 1e-12);
        Near.Relative(0.005, bore.RadiusAt(0.1), 1e-12);
        Near.Relative(0.005, bore.RadiusAt(0.15), 1e-12);
        Near.Relative(0.010, bore.RadiusAt(0.25), 1e-12);
        Near.Relative(0.015, bore.RadiusAt(0.3), 1e-12);
        Near.Relative(0.015, bore.RadiusAt(0.4), 1e-12);
    }

    [Fact]
    public void Every_step_has_its_own_place()
    {
        var bore = Bore.Build()
            .Cylinder(Mm(20), Mm(100))
            .Cylinder(Mm(20), Mm(50))
            .Cylinder(Mm(10), Mm(30))
            .Cylinder(Mm(12), Mm(40))
            .OpenEnd();
        Assert.Equal(
            ["20 mm to 10 mm at 150 mm", "10 mm to 12 mm at 180 mm"],
            bore.Steps.Select(step => step.ToString())
        );
    }

    [Fact]
    public void Lengths_and_widths_count_what_hangs_on_the_bore()
    {
        var bulb = Bore.Build().Cylinder(Mm(8), Mm(10)).Cylinder(Mm(50), Mm(30)).ClosedEnd();
        var bore = Tube.Hole(Mm(100), Mm(8), Mm(5)).Branch(Mm(200), bulb).OpenEnd();
        Near.Relative(0.3 + 0.005 + 0.04, bore.PassageMetres, 1e-12);
        Near.Relative(0.204, bore.LastOpeningMetres, 1e-12);
        Near.Relative(0.025, bore.LargestRadius, 1e-12);
        Near.Relative(0.254, Tube.Hole(Mm(250), Mm(8), Mm(5)).OpenEnd().LastOpeningMetres, 1e-12);
        Assert.Equal(0, Tube.OpenEnd().LastOpeningMetres);
    }

    [Fact]
    public void Parts_are_replaced_and_the_rest_stays()
    {
        var bore = Tube.Hole(Mm(100), Mm(8), Mm(5)).Hole(Mm(200), Mm(7), Mm(5)).OpenEnd();
        var changed = bore.WithHole(1, new ToneHole(Mm(210), Mm(6), Mm(5)));
        Assert.Same(bore.Holes[0], changed.Holes[0]);
        Assert.Equal(new ToneHole(Mm(210), Mm(6), Mm(5)), changed.Holes[1]);
        Assert.Equal(2, changed.Holes.Count);
        Assert.Equal(new ClosedEnd(), bore.WithFarEnd(new ClosedEnd()).FarEnd);
        Assert.Equal(bore.Holes, bore.WithFarEnd(new ClosedEnd()).Holes);
        Assert.Equal(Mm(400), bore.WithSection(0, new CylinderSection(Mm(15), Mm(400))).Length);
        Assert.StartsWith(
            "index is 2; allowed is 0 to 1.",
            Assert.Throws<ArgumentOutOfRangeException>(() => bore.WithHole(2, bore.Holes[0])).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => bore.WithHole(-1, bore.Holes[0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => bore.WithSectionLength(-1, Mm(3)));
    }

    [Fact]
    public void What_is_missing_is_refused_by_name()
    {
        var bore = Tube.Hole(Mm(100), Mm(8), Mm(5)).OpenEnd();
        Named("sections", () => new Bore(null!, new ClosedEnd()));
        Named("sections", () => new Bore([null!], new ClosedEnd()));
        Named("farEnd", () => new Bore(bore.Sections, null!));
        Named("holes", () => new Bore(bore.Sections, new ClosedEnd(), [null!]));
        Named("branches", () => new Bore(bore.Sections, new ClosedEnd(), null, [null!]));
        Named("section", () => bore.WithSection(0, null!));
        Named("hole", () => bore.WithHole(0, null!));
        Named("farEnd", () => bore.WithFarEnd(null!));
        Named("section", () => Bore.Build().Add(null!));
        Named("hole", () => Bore.Build().Hole(null!));
        Named("bore", () => new SideBranch(Mm(10), null!));
        Named("points", () => new ProfileSection(null!));

        static void Named(string parameter, Func<object> make) =>
            Assert.Equal(parameter, Assert.Throws<ArgumentNullException>(make).ParamName);
    }

    // A branch of a branch is reached by no fingering either.
    [Fact]
    public void A_branch_of_a_branch_has_no_holes_and_may_have_branches()
    {
        var pierced = Tube.Hole(Mm(100), Mm(3), Mm(1)).ClosedEnd();
        var holed = new Bore(pierced.Sections, new ClosedEnd(), pierced.Holes);
        Assert.Throws<ArgumentException>(() => new SideBranch(Mm(100), holed));
        var branched = Bore.Build().Cylinder(Mm(6), Mm(40)).Branch(Mm(20), Stub).ClosedEnd();
        Assert.Single(new SideBranch(Mm(100), branched).Bore.Branches);
    }

    [Fact]
    public void Everything_says_what_it_is()
    {
        Assert.Equal("open end in a baffle", Tube.BaffledEnd().FarEnd.ToString());
        Assert.Equal("ideal open end", Tube.IdealOpenEnd().FarEnd.ToString());
        Assert.Equal("closed end", Tube.ClosedEnd().FarEnd.ToString());
        Assert.Equal("30 mm at 12.5 mm", new ProfilePoint(Mm(12.5), Mm(30)).ToString());
        Assert.Equal(
            "hole E 8 mm at 250 mm, 3 mm high, chimney wall 1.5 mm, pad 11 mm 2 mm above it",
            new ToneHole(Mm(250), Mm(8), Mm(3))
            {
                Name = "E",
                ChimneyWall = Mm(1.5),
                Pad = new HolePad(Mm(2), Mm(11)),
            }.ToString()
        );
        Assert.Equal(
            "branch at 100 mm (6 mm to 6 mm, 40 mm long; closed end)",
            new SideBranch(Mm(100), Stub).ToString()
        );
    }

    [Fact]
    public void What_was_given_is_given_back()
    {
        var hole = new ToneHole(Mm(250), Mm(8), Mm(3))
        {
            ChimneyWall = Mm(1.5),
            Pad = new HolePad(Mm(2), Mm(11)),
        };
        Near.Relative(8, hole.Diameter.Millimeters, 1e-12);
        Near.Relative(3, hole.Height.Millimeters, 1e-12);
        Near.Relative(1.5, hole.ChimneyWall!.Value.Millimeters, 1e-12);
        Near.Relative(2, hole.Pad.Height.Millimeters, 1e-12);
        Near.Relative(11, hole.Pad.Diameter.Millimeters, 1e-12);
        Assert.Null(new ToneHole(Mm(250), Mm(8), Mm(3)).ChimneyWall);
        Near.Relative(3.5, new OpenEnd(Mm(3.5)).Wall.Millimeters, 1e-12);
        Near.Relative(100, new SideBranch(Mm(100), Stub).Position.Millimeters, 1e-12);
        Near.Relative(15, new CylinderSection(Mm(15), Mm(9)).Diameter.Millimeters, 1e-12);
        var bend = new BendSection(Mm(20), Mm(30), Angle.FromDegrees(90));
        Near.Relative(20, bend.Diameter.Millimeters, 1e-12);
        Near.Relative(30, bend.CurvatureRadius.Millimeters, 1e-12);
    }

    [Theory]
    [InlineData(20, 10, 36_000)] // bent as tightly as it can be, a hundred times round
    [InlineData(20, 1e6, 1)]
    public void Bends_that_are_just_possible_are_accepted(double diameter, double radius, double degrees) =>
        Near.Relative(
            degrees,
            new BendSection(Mm(diameter), Mm(radius), Angle.FromDegrees(degrees)).Angle.Degrees,
            1e-12
        );

    [Theory]
    [InlineData(0.01, 0.001)]
    [InlineData(10_000, 1_000_000)]
    public void The_largest_and_smallest_dimensions_are_accepted(double diameter, double length)
    {
        Assert.NotNull(new CylinderSection(Mm(diameter), Mm(length)));
        Assert.NotNull(new OpenEnd(Mm(10_000)));
    }
}
