using AirColumn.Acoustics.Radiation;

namespace AirColumn.Tests.Acoustics;

public class TaperedMouthTests
{
    // Static field solutions of the inside and outside of a mouth whose bore has the slope 0.02 or 0.04 behind it (spectral elements of
    // order 6, graded to the rim), computed apart: change of l/a with the slope, less what the area of the bore gives. The first is also
    // the sum over the evanescent modes of a straight pipe in a baffle, 0.07797.
    [Theory]
    [InlineData(double.PositiveInfinity, 0.07807)]
    [InlineData(1.2, 0.08386)]
    [InlineData(1.05, 0.09121)]
    [InlineData(1.02, 0.09540)]
    public void Static_value_is_that_of_field_solutions(double outerOverInner, double slope) =>
        Near.Absolute(slope, TaperedMouth.StaticSlope(outerOverInner), 2e-4);

    [Fact]
    public void At_low_frequency_it_lengthens_the_end_correction_by_its_static_value()
    {
        var straight = ThinEnd.Baffled.At(1e-3);
        var mouth = new TaperedMouth(new Wall(0.03, 0.02, 0), double.PositiveInfinity).Of(straight, 1e-3);
        Near.Absolute(straight.EndCorrection + 0.02 * 0.07797, mouth.EndCorrection, 2e-6);
        // The radiated power, which counts flow squared, stays.
        Near.Relative(straight.LogModulus, mouth.LogModulus, 1e-3);
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(-0.3)]
    [InlineData(0.9)]
    [InlineData(3)]
    public void Stays_passive_whatever_the_taper(double slope)
    {
        var model = RadiationModel.Exact.Of(new BaffledEnd(), new Wall(0.03, slope, 20), true);
        for (var ka = 0.01; ka <= 3.8; ka += 0.05)
        {
            var reflection = model.At(ka);
            Assert.True(reflection.LogModulus < 0, $"ka = {ka}: ln|R| = {reflection.LogModulus}");
            Assert.True(double.IsFinite(reflection.EndCorrection));
        }
    }

    [Fact]
    public void Plane_fronts_and_steep_mouths_keep_the_end_of_a_straight_pipe()
    {
        var straight = ThinEnd.Baffled.At(0.7);
        var plane = RadiationModel.Exact.Of(new BaffledEnd(), new Wall(0.03, 0.3, 0), false);
        var steep = RadiationModel.Exact.Of(new BaffledEnd(), new Wall(0.03, 1.2, 0), true);
        Assert.Equal(straight, plane.At(0.7));
        Assert.Equal(straight, steep.At(0.7));
    }
}
