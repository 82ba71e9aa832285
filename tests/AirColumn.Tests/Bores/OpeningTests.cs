using UnitsNet;

namespace AirColumn.Tests.Bores;

public class OpeningTests
{
    private static Length Mm(double value) => Length.FromMillimeters(value);

    private static BoreBuilder Tube => Bore.Build().Cylinder(Mm(15), Mm(300));

    [Fact]
    public void Holes_and_branches_stand_in_order_whatever_order_they_were_given_in()
    {
        var bore = Tube.Hole(Mm(250), Mm(8), Mm(3))
            .Hole(Mm(200), Mm(7), Mm(3))
            .Branch(Mm(100), Bore.Build().Cylinder(Mm(5), Mm(40)).ClosedEnd(), "stub")
            .OpenEnd();
        Near.Relative(200, bore.Holes[0].Position.Millimeters, 1e-12);
        Near.Relative(250, bore.Holes[1].Position.Millimeters, 1e-12);
        Assert.Equal("stub", bore.Branches[0].Name);
        Assert.Equal(
            "15 mm to 15 mm, 300 mm long; open end, wall 0 mm; hole 7 mm at 200 mm, 3 mm high; hole 8 mm at 250 mm, 3 mm high; "
                + "branch stub at 100 mm (5 mm to 5 mm, 40 mm long; closed end)",
            bore.ToString()
        );
    }

    [Fact]
    public void Bores_with_equal_holes_are_equal()
    {
        Assert.Equal(With(Mm(8)), With(Length.FromCentimeters(0.8)));
        Assert.Equal(With(Mm(8)).GetHashCode(), With(Mm(8)).GetHashCode());
        Assert.NotEqual(With(Mm(8)), With(Mm(8.1)));
        Assert.NotEqual(With(Mm(8)), Tube.OpenEnd());

        static Bore With(Length diameter) =>
            Tube.Hole(
                    new ToneHole(Mm(250), diameter, Mm(3))
                    {
                        Name = "E",
                        ChimneyWall = Mm(1),
                        Pad = new HolePad(Mm(2), Mm(11)),
                    }
                )
                .OpenEnd();
    }

    [Theory]
    [InlineData(299, 8, "reaches beyond the bore, which is 300 mm long")]
    [InlineData(2, 8, "reaches beyond the bore")]
    [InlineData(250, 15.1, "wider than the bore there, 15 mm")]
    [InlineData(205, 8, "overlaps the hole 7 mm at 200 mm")]
    public void Holes_that_do_not_fit_are_refused(double position, double diameter, string reason)
    {
        var problem = Assert.Throws<ArgumentException>(() =>
            Tube.Hole(Mm(200), Mm(7), Mm(3)).Hole(Mm(position), Mm(diameter), Mm(3)).OpenEnd()
        );
        Assert.Contains(reason, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_branch_does_not_overlap_a_hole_and_has_none_itself()
    {
        var stub = Bore.Build().Cylinder(Mm(5), Mm(40)).ClosedEnd();
        Assert.Throws<ArgumentException>(() =>
            Tube.Hole(Mm(200), Mm(7), Mm(3)).Branch(Mm(204), stub).OpenEnd()
        );
        var pierced = Bore.Build().Cylinder(Mm(5), Mm(40)).Hole(Mm(20), Mm(3), Mm(1)).ClosedEnd();
        var problem = Assert.Throws<ArgumentException>(() => new SideBranch(Mm(100), pierced));
        Assert.Contains("tone holes", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(1e8)]
    public void Impossible_holes_are_refused(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new ToneHole(Mm(value), Mm(7), Mm(3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ToneHole(Mm(100), Mm(value), Mm(3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ToneHole(Mm(100), Mm(7), Mm(value)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new HolePad(Mm(value * 100), Mm(9)));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new ToneHole(Mm(100), Mm(7), Mm(3)) { ChimneyWall = Mm(value) }
        );
    }

    [Fact]
    public void Holes_keep_their_place_when_a_section_changes()
    {
        var bore = Bore.Build()
            .Cylinder(Mm(15), Mm(100))
            .Cylinder(Mm(14), Mm(200))
            .Hole(Mm(250), Mm(8), Mm(3))
            .OpenEnd();
        var longer = bore.WithSectionLength(0, Mm(150));
        Assert.Equal(bore.Holes[0], longer.Holes[0]);
        var problem = Assert.Throws<ArgumentException>(() => bore.WithSectionLength(1, Mm(150)));
        Assert.Contains("hole 8 mm at 250 mm", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bend_is_as_long_as_its_centreline()
    {
        var bend = new BendSection(Mm(20), Mm(30), Angle.FromDegrees(180));
        Near.Relative(Math.PI * 30, bend.Length.Millimeters, 1e-12);
        Near.Relative(180, bend.Angle.Degrees, 1e-12);
        Near.Relative(90, bend.WithLength(Mm(Math.PI * 15)).Angle.Degrees, 1e-12);
        Assert.Equal(bend, new BendSection(Length.FromCentimeters(2), Mm(30), Angle.FromDegrees(180)));
        Assert.NotEqual<Section>(bend, new CylinderSection(Mm(20), bend.Length));
    }

    [Theory]
    [InlineData(20, 9.9, 90, "curvatureRadius")]
    [InlineData(20, 30, 0, "angle")]
    [InlineData(20, 30, 1e6, "angle")]
    [InlineData(20, -30, 90, "curvatureRadius")]
    [InlineData(0, 30, 90, "diameter")]
    public void Impossible_bends_are_refused(
        double diameter,
        double radius,
        double angle,
        string parameter
    ) =>
        Assert.Equal(
            parameter,
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    new BendSection(Mm(diameter), Mm(radius), Angle.FromDegrees(angle))
                )
                .ParamName
        );
}
