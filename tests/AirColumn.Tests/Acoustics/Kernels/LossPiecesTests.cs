using System.Numerics;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Kernels;
using AirColumn.Acoustics.Losses;

namespace AirColumn.Tests.Acoustics.Kernels;

public class LossPiecesTests
{
    // Against the reference table of 34-digit values.
    [Fact]
    public void Agree_with_reference_values()
    {
        foreach (var row in ReferenceTable.Read("bessel-ratio.csv").Rows)
        {
            var s = row["s"];
            LossPieces.At(Vector512.Create(s), s, s, 1, out var series, out var shunt);
            var f = new Complex(row["F_re"], row["F_im"]);
            Near.Relative(f, shunt.Lane(2), 1e-13, row);
            var oneMinusF = new Complex(row["one_minus_F_re"], row["one_minus_F_im"]);
            Near.Relative(f / oneMinusF, series.Lane(5), 1e-13, row);
        }
    }

    // Lanes in different pieces, and derivatives by Bessel's equation: Dε = 2(1 + ε) − ½j·s²·ε².
    [Fact]
    public void Lanes_in_different_pieces_are_each_right()
    {
        for (var s = 0.02; s < 3000; s *= 1.37)
        {
            double[] all = [s, 1.1 * s, 1.9 * s, 2.2 * s, 3 * s, 4.5 * s, 7 * s, 0.9 * s];
            LossPieces.WithSlopes(
                Vector512.Create<double>(all),
                0.9 * s,
                7 * s,
                0.84,
                out var series,
                out var slope,
                out var bend,
                out var shunt
            );
            for (var i = 0; i < all.Length; i++)
            {
                var (f, oneMinusF) = BesselRatio.At(all[i]);
                var loss = f / oneMinusF;
                Near.Relative(loss, series.Lane(i), 1e-13, all[i]);
                Near.Relative(BesselRatio.At(0.84 * all[i]).F, shunt.Lane(i), 1e-13, all[i]);
                var squared = new Complex(0, all[i] * all[i]);
                var d = 2 * (1 + loss) - squared / 2 * loss * loss;
                var dd = 2 * d - squared * loss * (loss + d);
                // Both of these differences cancel, to what is left of their digits.
                var digits = 1e-14 * (1 + all[i]) + 1e-14 / (all[i] * all[i]);
                Near.Absolute(0, Complex.Abs(d - slope.Lane(i)), 20 * digits, all[i]);
                Near.Absolute(0, Complex.Abs(dd + d - bend.Lane(i)), 100 * digits, all[i]);
            }
        }
    }
}
