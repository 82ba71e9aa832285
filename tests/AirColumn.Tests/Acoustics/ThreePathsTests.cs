using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Tests.Oracle;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Tests.Acoustics;

/// <summary>
/// A column by the product of its two-ports, by the state carried through it, and by the kernel for many frequencies: three programs, of
/// few bores here, so that it takes no time.
/// </summary>
public class ThreePathsTests
{
    private static readonly Dictionary<string, Bore> Bores = new()
    {
        ["holes"] = Bore.Build()
            .Cylinder(Mm(15), Mm(500))
            .Hole(Mm(210), Mm(7), Mm(4))
            .Hole(Mm(330), Mm(6), Mm(5))
            .OpenEnd(Mm(2)),
        ["branch"] = Bore.Build()
            .Cylinder(Mm(20), Mm(400))
            .Branch(Mm(130), Bore.Build().Cone(Mm(6), Mm(9), Mm(120)).ClosedEnd())
            .OpenEnd(Mm(2)),
        ["narrow cone"] = Bore.Build().Cone(Mm(0.6), Mm(9), Mm(200)).OpenEnd(),
        ["capillary"] = Bore.Build().Cone(Mm(0.3), Mm(0.5), Mm(60)).Cylinder(Mm(8), Mm(200)).ClosedEnd(),
        ["long capillary"] = Bore.Build().Cylinder(Mm(0.1), Metres(4)).ClosedEnd(),
        ["steep cone"] = Bore.Build().Cone(Mm(60), Mm(6), Mm(90)).Cylinder(Mm(20), Mm(300)).OpenEnd(Mm(1)),
        ["bend"] = Bore.Build()
            .Cylinder(Mm(30), Mm(200))
            .Bend(Mm(30), Mm(40), UnitsNet.Angle.FromDegrees(180))
            .Cone(Mm(50), Mm(300))
            .OpenEnd(Mm(1)),
    };

    public static TheoryData<string, WallLosses> Cases
    {
        get
        {
            var cases = new TheoryData<string, WallLosses>();
            foreach (var name in Bores.Keys)
            {
                foreach (var losses in Enum.GetValues<WallLosses>())
                {
                    cases.Add(name, losses);
                }
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Two_ports_states_and_kernel_agree(string name, WallLosses losses)
    {
        var bore = Bores[name];
        var options = OneDimensional with { Losses = losses, RelativeTolerance = 1e-13 };
        if (bore.Holes.Count > 0)
        {
            // A two-port knows nothing of what is heard outside.
            options = options with
            {
                Fingering = Fingering.Of(true, false),
                MutualRadiation = false,
            };
        }

        var column = new Column(bore, TableAir, options);
        foreach (var hertz in new[] { 61.0, 333, 1210 })
        {
            var omega = 2 * Math.PI * hertz;
            var chain = column.InputImpedance(omega);
            var m = column.TransferMatrixAt(UnitsNet.Frequency.FromHertz(hertz));
            var (p, u) = column.Model.End.At(omega);
            Near.Relative(chain, (m.A * p + m.B * u) / (m.C * p + m.D * u), 1e-9, $"{hertz} Hz, two-ports");
            var (real, imaginary) = (new double[1], new double[1]);
            column.Impedance([hertz], real, imaginary);
            Near.Relative(chain, new Complex(real[0], imaginary[0]), 1e-9, $"{hertz} Hz, kernel");
        }
    }

    // a' = 0.5, a = 20 mm, a'' = 30/m: d = aa'' − 3a'² = −0.15. Worked by hand.
    [Theory]
    [InlineData(Wavefronts.Plane, 1)]
    [InlineData(Wavefronts.Sloped, 1.125)]
    [InlineData(Wavefronts.Curved, 1.125 - 0.0225 / 54.028125)]
    public void Fronts_that_are_not_plane_add_inertia(Wavefronts fronts, double factor)
    {
        var element = new BoreSegment(
            new ConeSection(Mm(30), Mm(60), Mm(100)),
            new Medium(TableAir.Constants, WallLosses.Full),
            fronts
        );
        Near.Relative(factor, element.SeriesFactor(new Wall(0.02, 0.5, 30)), 1e-14);
    }
}
