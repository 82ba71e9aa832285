using System.Numerics;
using AirColumn.Acoustics;
using AirColumn.Acoustics.Losses;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>Loss terms along a taper from a fit are those of each radius, as near as was asked for.</summary>
public class LossFitTests
{
    // Radii in millimetres. In the wide ones the series for thin layers does by itself, in the narrow ones the fit of what it leaves out
    // counts, and over the last range no fit does and each radius is evaluated.
    [Theory]
    [InlineData(8, 30, 200, 1e-8)]
    [InlineData(8, 30, 200, 1e-12)]
    [InlineData(3, 12, 100, 1e-8)]
    [InlineData(1, 2, 60, 1e-7)]
    [InlineData(0.8, 1.2, 100, 1e-9)]
    [InlineData(0.4, 0.5, 100, 1e-8)]
    [InlineData(0.4, 0.4, 100, 1e-8)]
    [InlineData(0.2, 9, 60, 1e-12)]
    public void Terms_are_those_of_the_radius(double smallest, double largest, double hertz, double allowed)
    {
        var (gas, omega) = (TableAir.Constants, 2 * Math.PI * hertz);
        var fit = new LossFit(
            1e-3 * smallest,
            1e-3 * largest,
            omega,
            gas,
            WallLosses.Full,
            allowed,
            new Complex[LossFit.Room]
        );
        for (var i = 0; i <= 50; i++)
        {
            var radius = 1e-3 * (smallest + (largest - smallest) * i / 50);
            var (exact, fitted) = (LossTerms.At(radius, omega, gas, WallLosses.Full), fit.At(radius));
            // The rounding of the terms themselves on top.
            var room = 2 * allowed + 1e-13;
            Near.Absolute(
                0,
                Complex.Abs(exact.Series - fitted.Series) / room,
                1,
                $"{1000 * radius} mm, series"
            );
            Near.Absolute(0, Complex.Abs(exact.Shunt - fitted.Shunt) / room, 1, $"{1000 * radius} mm, shunt");
        }
    }
}
