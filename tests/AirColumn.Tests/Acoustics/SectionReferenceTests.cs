using System.Numerics;
using AirColumn.Acoustics.Propagation;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

public class SectionReferenceTests
{
    // cylinder-lossy.csv: closed form in 50-digit arithmetic (zwikker1949; keefe1984). Rounding of trigonometric
    // functions of ΓL up to 275 costs a few of the 16 digits near resonances.
    [Fact]
    public void Cylinder_with_losses_agrees_with_50_digit_closed_form()
    {
        foreach (var row in ReferenceTable.Read("cylinder-lossy.csv").Rows)
        {
            var section = new CylinderSection(Metres(2 * row["radius_m"]), Metres(row["length_m"]));
            var omega = 2 * Math.PI * row["freq_Hz"];
            var closed = Column(section, new ClosedEnd()).AnswerAt(omega);
            var open = Column(section, new IdealOpenEnd()).AnswerAt(omega);
            Near.Relative(new Complex(row["Zclosed_re"], row["Zclosed_im"]), closed, 2e-12, row);
            Near.Relative(new Complex(row["Zopen_re"], row["Zopen_im"]), open, 2e-12, row);
        }
    }

    // cone-lossless.csv: closed form of the spherical wave to 25 digits (morse1948; causse1984).
    [Fact]
    public void Cone_without_losses_agrees_with_closed_form()
    {
        foreach (var row in ReferenceTable.Read("cone-lossless.csv").Rows)
        {
            var section = new ConeSection(
                Metres(2 * row["r1_m"]),
                Metres(2 * row["r2_m"]),
                Metres(row["L_m"])
            );
            var matrix = Matrix(section, row["freq_Hz"], WallLosses.None, 1e-10);
            var expected = new TransferMatrix(
                row["A_re"],
                new Complex(0, row["B_im"]),
                new Complex(0, row["C_im"]),
                row["D_re"]
            );
            // One exponential is exact but for a cone far shorter than the wavelength, which is integrated to the
            // tolerance. Near a zero of A or D rounding is relative to their oscillation, of size 1.
            var allowed = row["L_m"] * row["freq_Hz"] < 20 ? 1e-10 : 2e-12;
            Near.Absolute(expected.A.Real, matrix.A.Real, allowed * Math.Max(1, expected.A.Magnitude), row);
            Near.Relative(expected.B, matrix.B, allowed, row);
            Near.Relative(expected.C, matrix.C, allowed, row);
            Near.Absolute(expected.D.Real, matrix.D.Real, allowed * Math.Max(1, expected.D.Magnitude), row);
        }
    }

    // horns-lossy-1d.csv: the plane-wave equations with local losses solved to 1e-21 (zwikker1949, webster1919).
    [Theory]
    [InlineData("cone_a", 0.002, 0.010, 0.3)]
    [InlineData("cone_b", 0.015, 0.045, 1.4)]
    [InlineData("cone_c", 0.045, 0.015, 1.4)]
    [InlineData("cone_d", 0.0005, 0.005, 0.5)]
    [InlineData("exp_a", 0.00575, 0.0615, 0.45)]
    [InlineData("cat_a", 0.006, 0.040, 0.5)]
    [InlineData("par_a", 0.003, 0.015, 0.6)]
    [InlineData("bes_a", 0.00575, 0.0615, 0.45)]
    public void Taper_agrees_with_34_digit_integration(string name, double r1, double r2, double length)
    {
        var (from, to) = (Metres(2 * r1), Metres(2 * r2));
        Section section = name[..3] switch
        {
            "exp" => new HornSection(HornLaw.Exponential, from, to, Metres(length)),
            "cat" => new HornSection(HornLaw.Catenoidal, from, to, Metres(length)),
            "par" => new HornSection(HornLaw.Parabolic, from, to, Metres(length)),
            "bes" => new HornSection(from, to, Metres(length), 0.7),
            _ => new ConeSection(from, to, Metres(length)),
        };
        var rows = ReferenceTable
            .Read("horns-lossy-1d.csv")
            .Rows.Where(row => row.Text("case") == name)
            .ToList();
        Assert.Equal(16, rows.Count);
        foreach (var row in rows)
        {
            var losses = row["lossy"] == 1 ? WallLosses.Full : WallLosses.None;
            var matrix = Matrix(section, row["freq_Hz"], losses, 1e-10);
            var expected = new TransferMatrix(
                new Complex(row["A_re"], row["A_im"]),
                new Complex(row["B_re"], row["B_im"]),
                new Complex(row["C_re"], row["C_im"]),
                new Complex(row["D_re"], row["D_im"])
            );
            Same(expected, matrix, 1e-9, row);
            var column = Column(section, new ClosedEnd(), Plane(losses));
            if (losses == WallLosses.Full)
            {
                var z = column.AnswerAt(2 * Math.PI * row["freq_Hz"]);
                Near.Relative(new Complex(row["Zclosed_re"], row["Zclosed_im"]), z, 1e-8, row);
            }
        }
    }

    // A closed cone far shorter than a wavelength is a spring: Z = ρc²/(jωV), V = πL(r1² + r1r2 + r2²)/3 (morse1948). The
    // next term is of relative order (kL)², below 1e-11 here.
    [Theory]
    [InlineData(0.02, 0.06, 0.001)]
    [InlineData(0.0005, 0.1, 0.002)]
    [InlineData(0.05, 0.002, 0.01)]
    public void Short_steep_cone_at_low_frequency_is_a_spring(double r1, double r2, double length)
    {
        const double omega = 2 * Math.PI * 0.01;
        var column = Column(
            new ConeSection(Metres(2 * r1), Metres(2 * r2), Metres(length)),
            new ClosedEnd(),
            Plane(WallLosses.None)
        );
        var volume = Math.PI * length * (r1 * r1 + r1 * r2 + r2 * r2) / 3;
        Near.Relative(-1.2045 * 343.37 * 343.37 / (omega * volume), column.AnswerAt(omega).Imaginary, 3e-10);
    }

    internal static TransferMatrix Matrix(Section section, double hertz, WallLosses losses, double tolerance)
    {
        var options = new ColumnOptions
        {
            Losses = losses,
            Wavefronts = Wavefronts.Plane,
            RelativeTolerance = tolerance,
        };
        var (a, b, c, d) = TwoPort.Of(Column(section, new ClosedEnd(), options).Model, 2 * Math.PI * hertz);
        return new TransferMatrix(a, b, c, d);
    }

    private static ColumnOptions Plane(WallLosses losses) =>
        new() { Losses = losses, Wavefronts = Wavefronts.Plane };

    private static void Same(TransferMatrix expected, TransferMatrix actual, double tolerance, object context)
    {
        Near.Relative(expected.A, actual.A, tolerance, "A " + context);
        Near.Relative(expected.B, actual.B, tolerance, "B " + context);
        Near.Relative(expected.C, actual.C, tolerance, "C " + context);
        Near.Relative(expected.D, actual.D, tolerance, "D " + context);
    }
}
