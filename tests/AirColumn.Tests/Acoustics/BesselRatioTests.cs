using System.Numerics;
using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Vectors;
using AirColumn.Tests.Oracle;

namespace AirColumn.Tests.Acoustics;

public class BesselRatioTests
{
    // A gas in which s = a·√ω, so that s may be given as a radius at ω = 1; the thermal argument is the same.
    private static readonly GasConstants Unit = new(1, 1, 1, 1, 1, 2);

    // bessel-ratio.csv: 60-digit evaluation of the definition (zwikker1949), printed to 25 digits.
    [Fact]
    public void Agrees_with_60_digit_values_also_where_one_minus_F_cancels()
    {
        var layer = new BoundaryLayer(Unit, WallLosses.Full);
        foreach (var row in ReferenceTable.Read("bessel-ratio.csv").Rows)
        {
            var (f, oneMinusF) = (
                new Complex(row["F_re"], row["F_im"]),
                new Complex(row["one_minus_F_re"], row["one_minus_F_im"])
            );
            layer.At(row["s"], FrequencyVector.All(1), out WallFunctions found);
            Near.Relative(oneMinusF, found.H.At(0), 2e-14, row);
            Near.Relative(f, found.Heat.At(0), 2e-14, row);
            Near.Relative(1 + f, found.T.At(0), 2e-14, row);
            var (oracle, rest) = BesselRatio.At(row["s"]);
            Near.Relative(f, oracle, 4e-15, row);
            Near.Relative(oneMinusF, rest, 4e-15, row);
        }
    }

    // Either side of the place where the series takes over from the recurrence.
    [Fact]
    public void Recurrence_and_asymptotic_series_meet()
    {
        var layer = new BoundaryLayer(Unit, WallLosses.Full);
        layer.At(BoundaryLayer.Thin * (1 - 1e-14), FrequencyVector.All(1), out WallFunctions below);
        layer.At(BoundaryLayer.Thin, FrequencyVector.All(1), out WallFunctions above);
        Near.Relative(below.H.At(0), above.H.At(0), 1e-13);
        Near.Relative(below.HSlope.At(0), above.HSlope.At(0), 1e-11);
    }

    // The slopes against differences of the oracle, and the terms of a taper against theirs.
    [Theory]
    [InlineData(WallLosses.Full)]
    [InlineData(WallLosses.LargeTube)]
    public void Slopes_are_those_of_the_functions(WallLosses model)
    {
        var layer = new BoundaryLayer(Unit, model);
        foreach (var s in new[] { 0.3, 2, 11, 24, 26, 60 })
        {
            layer.At(s, FrequencyVector.All(1), out WallFunctions found);
            layer.OfTaper(s, FrequencyVector.All(1), out var taper);
            var slope = Difference(x => H(x), s);
            Near.Relative(slope, found.HSlope.At(0), 1e-7, s);
            Near.Relative(Difference(x => F(x), s), found.HeatSlope.At(0), 1e-7, s);
            Near.Relative(1 + slope / (2 * H(s)), taper.Lean.At(0), 1e-8, s);
            // √H'' over √H, by differences.
            var bend = Difference(x => Difference(y => Complex.Sqrt(H(y)), x), s) / Complex.Sqrt(H(s));
            var lean = Difference(x => Complex.Sqrt(H(x)), s) / Complex.Sqrt(H(s));
            // D² of a·√H over it, less D: 2·lean + (D²√H − D√H)/√H.
            Near.Absolute(0, Complex.Abs(2 * lean + bend - lean - taper.Bend.At(0)), 1e-5, s);
            Near.Relative((1 + F(s)) / H(s), taper.Wave.At(0), 1e-12, s);

            Complex H(double x) => model == WallLosses.Full ? BesselRatio.At(x).OneMinusF : 1 / (1 + F(x));

            Complex F(double x) =>
                model == WallLosses.Full
                    ? BesselRatio.At(x).F
                    : 2 / x * new Complex(Math.Sqrt(0.5), -Math.Sqrt(0.5));
        }

        static Complex Difference(Func<double, Complex> function, double s)
        {
            const double Step = 1e-3;
            return (
                    8 * (function(s * (1 + Step)) - function(s * (1 - Step)))
                    - (function(s * (1 + 2 * Step)) - function(s * (1 - 2 * Step)))
                ) / (12 * Step);
        }
    }
}
