using System.Numerics;
using AirColumn.Acoustics.Losses;

namespace AirColumn.Tests.Acoustics;

public class BesselRatioTests
{
    // bessel-ratio.csv: 60-digit evaluation of the definition (zwikker1949), printed to 25 digits.
    [Fact]
    public void Agrees_with_60_digit_values_also_where_one_minus_F_cancels()
    {
        foreach (var row in ReferenceTable.Read("bessel-ratio.csv").Rows)
        {
            var (f, oneMinusF) = BesselRatio.At(row["s"]);
            Near.Relative(new Complex(row["F_re"], row["F_im"]), f, 4e-15, row);
            Near.Relative(new Complex(row["one_minus_F_re"], row["one_minus_F_im"]), oneMinusF, 4e-15, row);
        }
    }

    [Fact]
    public void Recurrence_and_asymptotic_series_meet()
    {
        var below = BesselRatio.At(28).F;
        var above = BesselRatio.At(28 * (1 + 1e-15)).F;
        Near.Relative(below, above, 1e-14);
    }
}
