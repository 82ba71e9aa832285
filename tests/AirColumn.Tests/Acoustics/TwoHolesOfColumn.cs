using System.Numerics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>Two equal holes as a column has them, and a hole near its open end: reflections at the axis of the first, without losses.</summary>
internal static class TwoHolesOfColumn
{
    private const double A = 0.0075; // m, radius of the bore
    private const double Arm = 10 * A;

    /// <summary>The pairs that were solved, with the reflections of their halves.</summary>
    public static IEnumerable<(ReferenceTable.Row Row, Complex Even, Complex Odd)> Pairs() =>
        ReferenceTable
            .Read("two-holes-field.csv")
            .Rows.Where(row => row["spacing_over_a"] > 0)
            .Select(row =>
                (
                    row,
                    Reflection(new Complex(row["even_re"], row["even_im"])),
                    Reflection(new Complex(row["odd_re"], row["odd_im"]))
                )
            );

    /// <summary>Reflection of the one half of a pair, with the plane midway rigid (even), and with no pressure there (odd).</summary>
    public static (Complex Even, Complex Odd) Pair(ReferenceTable.Row row, bool isMutual, Complex evenOfField)
    {
        var k = row["ka"] / A;
        var (delta, t, d) = (row["delta"] * A, row["t_over_a"] * A, row["spacing_over_a"] * A);
        var pipe = Bore.Build()
            .Cylinder(Metres(2 * A), Metres(2 * Arm + d))
            .Hole(new ToneHole(Metres(Arm), Metres(2 * delta), Metres(t)))
            .Hole(new ToneHole(Metres(Arm + d), Metres(2 * delta), Metres(t)));
        // Of a symmetric two-port: Z₁₁ behind a stop, Z₁₁ − Z₁₂²/Z₁₁ behind no pressure.
        var (self, loaded) = (
            Impedance(pipe.ClosedEnd(), k, isMutual),
            Impedance(pipe.IdealOpenEnd(), k, isMutual)
        );
        var across = Complex.Sqrt(self * (self - loaded));
        var (one, other) = (AtAxis(self + across, k), AtAxis(self - across, k));
        // The root has two signs, which change even with odd.
        return (one - evenOfField).Magnitude < (other - evenOfField).Magnitude ? (one, other) : (other, one);
    }

    /// <summary>Reflection of a hole with the open end behind it.</summary>
    public static Complex NearEnd(ReferenceTable.Row row, bool isMutual)
    {
        var k = row["ka"] / A;
        var t = Metres(row["t_over_a"] * A);
        var bore = Bore.Build()
            .Cylinder(Metres(2 * A), Metres(Arm + row["end_over_a"] * A))
            .Hole(new ToneHole(Metres(Arm), Metres(2 * row["delta"] * A), t))
            .OpenEnd(t);
        return AtAxis(Impedance(bore, k, isMutual), k);
    }

    /// <summary>The reflection of an impedance over ρc/S.</summary>
    public static Complex Reflection(Complex z) => (z - 1) / (z + 1);

    /// <summary>How far the lowest resonance of a pipe that ends so is off, cents.</summary>
    public static double Cents(Complex field, Complex ours) =>
        1200 / Math.Log(2) * (ours / field).Phase / Math.PI;

    private static Complex AtAxis(Complex z, double k) =>
        Reflection(z) * Complex.Exp(new Complex(0, 2 * k * Arm));

    private static Complex Impedance(Bore bore, double k, bool isMutual)
    {
        var gas = TableAir.Constants;
        var column = new Column(
            bore,
            TableAir,
            Lossless with
            {
                MutualRadiation = isMutual,
                RelativeTolerance = 1e-10,
            }
        );
        return column.ImpedanceAt(Frequency.FromHertz(k * gas.SpeedOfSound / (2 * Math.PI)))
            / column.CharacteristicImpedance;
    }

    private static Length Metres(double value) => Length.FromMeters(value);
}
