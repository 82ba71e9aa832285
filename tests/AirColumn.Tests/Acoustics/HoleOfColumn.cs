using System.Numerics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>The T of one hole as a column has it: out of the two-port of the whole, its arms taken away.</summary>
internal static class HoleOfColumn
{
    /// <summary>ta/(bδ²), and the shunt in the middle of the T over ρc/(πb²), at a wavenumber, without losses.</summary>
    public static (double Series, Complex Shunt) T(double a, double b, double t, double k, bool isOpen)
    {
        var arm = 10 * a;
        var gas = TableAir.Constants;
        var bore = Bore.Build()
            .Cylinder(Metres(2 * a), Metres(2 * arm))
            .Hole(new ToneHole(Metres(arm), Metres(2 * b), Metres(t)))
            .IdealOpenEnd();
        var column = new Column(
            bore,
            TableAir,
            Lossless with
            {
                Fingering = isOpen ? Fingering.AllOpen : Fingering.AllClosed,
                RelativeTolerance = 1e-10,
            }
        );
        var whole = column.TransferMatrixAt(Frequency.FromHertz(k * gas.SpeedOfSound / (2 * Math.PI)));
        // Both arms taken away.
        var unit = gas.Density * gas.SpeedOfSound / (Math.PI * a * a);
        var (cos, j) = (Math.Cos(k * arm), -Complex.ImaginaryOne * Math.Sin(k * arm));
        var (p1, p2) = (cos * whole.A + j * unit * whole.C, cos * whole.B + j * unit * whole.D);
        var (u1, u2) = (j / unit * whole.A + cos * whole.C, j / unit * whole.B + cos * whole.D);
        var first = p1 * cos + p2 * j / unit;
        var shunt = 1 / (u1 * cos + u2 * j / unit);
        var mass = 2 * (first - 1) * shunt / unit;
        var delta = b / a;
        return (mass.Imaginary / (k * a) / (delta * delta * delta), shunt / unit * delta * delta);
    }

    private static Length Metres(double value) => Length.FromMeters(value);
}
