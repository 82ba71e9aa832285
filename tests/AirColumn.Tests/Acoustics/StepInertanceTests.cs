using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Junctions;

namespace AirColumn.Tests.Acoustics;

public class StepInertanceTests
{
    // step-inertance.csv: static mode matching with the edge singularity, each row with its own error. These rows are
    // the nodes of the interpolation, so this checks that none was mistyped.
    [Fact]
    public void Agrees_with_mode_matching()
    {
        foreach (var row in ReferenceTable.Read("step-inertance.csv").Rows)
        {
            Near.Absolute(row["l_over_a1"], StepInertance.LengthRatio(row["alpha"]), row["err"], row);
        }
    }

    // kergomard1987's published fit, good to about 1 % for ratios up to 0.7.
    [Theory]
    [InlineData(0.03)]
    [InlineData(0.125)]
    [InlineData(0.333)]
    [InlineData(0.525)]
    [InlineData(0.675)]
    public void Agrees_with_the_published_fit_between_tabulated_ratios(double a)
    {
        var fit =
            Math.PI
            * (0.26164 + a * (-0.353 + a * a * (0.0809 + a * (0.03816 + a * (-0.12386 + a * 0.09616)))));
        Near.Relative(fit, StepInertance.LengthRatio(a), 0.012);
    }

    // Between the tabulated values: each one in turn left out and interpolated from the others is a harder question than
    // any that is asked, the gap being twice as wide.
    [Fact]
    public void A_value_left_out_is_found_again()
    {
        var rows = ReferenceTable.Read("step-inertance.csv").Rows.ToList();
        foreach (var missing in rows)
        {
            var others = rows.Where(row => row["alpha"] != missing["alpha"]).ToList();
            var interpolant = new RationalInterpolant(
                [0, .. others.Select(row => row["alpha"]), 1],
                [0.8216742364, .. others.Select(row => row["l_over_a1"]), 0],
                5
            );
            Near.Absolute(missing["l_over_a1"], interpolant.At(missing["alpha"]), 6e-5, missing);
        }
    }

    [Fact]
    public void No_step_has_no_mass() => Assert.Equal(0, StepInertance.LengthRatio(1));

    [Fact]
    public void Falls_steadily_as_the_radii_approach_each_other()
    {
        var before = StepInertance.LengthRatio(0);
        for (var alpha = 0.005; alpha <= 1; alpha += 0.005)
        {
            var now = StepInertance.LengthRatio(alpha);
            Assert.InRange(now, 0, before);
            before = now;
        }
    }
}
