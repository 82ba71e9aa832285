using System.Numerics;
using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;
using AirColumn.Tests;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Accuracy;

/// <summary>Wall losses and sections against closed forms and long arithmetic: how well the equations are solved.</summary>
internal static class SectionChapter
{
    private static readonly (string Case, string Name, Section Section)[] Tapers =
    [
        ("cone_a", "cone, 4 to 20 mm", new ConeSection(Mm(4), Mm(20), Mm(300))),
        ("cone_b", "cone, 30 to 90 mm", new ConeSection(Mm(30), Mm(90), Mm(1400))),
        ("cone_c", "cone, 90 to 30 mm", new ConeSection(Mm(90), Mm(30), Mm(1400))),
        ("cone_d", "cone, 1 to 10 mm", new ConeSection(Mm(1), Mm(10), Mm(500))),
        ("exp_a", "exponential horn", new HornSection(HornLaw.Exponential, Mm(11.5), Mm(123), Mm(450))),
        ("cat_a", "catenoidal horn", new HornSection(HornLaw.Catenoidal, Mm(12), Mm(80), Mm(500))),
        ("par_a", "parabolic horn", new HornSection(HornLaw.Parabolic, Mm(6), Mm(30), Mm(600))),
        ("bes_a", "Bessel horn", new HornSection(Mm(11.5), Mm(123), Mm(450), 0.7)),
    ];

    private const double Finest = 1e-13;
    private static readonly double Default = new ColumnOptions().RelativeTolerance;

    public static Chapter Make()
    {
        var quantities = new List<Quantity> { BesselRatios(), Cylinders(), LosslessCones() };
        var series = new List<Series>();
        var byDefault = new List<double>();
        foreach (var (name, told, section) in Tapers)
        {
            var errors = Taper(name, section, Finest);
            byDefault.AddRange(Taper(name, section, Default).Select(error => error.Error));
            quantities.Add(
                new Quantity(
                    $"Two-port: {told}",
                    "`horns-lossy-1d.csv`, integrated, error 1e-21 [zwikker1949, webster1919]",
                    $"{section.Length.Millimeters:0} mm, 20 Hz to {errors.Max(error => error.Hertz):0} Hz, with and without losses",
                    "",
                    [.. errors.Select(error => error.Error)],
                    1e-9
                )
            );
            series.Add(
                new Series(
                    told,
                    [.. errors.Where(error => error.Lossy).Select(error => (error.Hertz, error.Error))]
                )
            );
        }

        quantities.Add(
            new Quantity(
                "Two-port: all of these tapers at the default tolerance",
                "`horns-lossy-1d.csv`, integrated, error 1e-21 [zwikker1949, webster1919]",
                "as above",
                "",
                byDefault,
                1e-9
            )
        );
        quantities.Add(Cones("Impedance of ten cones in a row, with losses", Finest, 2e-13));
        quantities.Add(Cones("The same at the default tolerance", Default, 1e-9));
        return new Chapter(
            "Losses and sections",
            "This chapter shows how well the one-dimensional equations are solved, not how true they are. The losses are friction and "
                + "heat conduction in a circular duct of any width, with smooth, rigid and isothermal walls; roughness, porosity and bends are "
                + "left out. `ColumnOptions.RelativeTolerance` sets the error of tapers. Here it is 1e-13, the finest, unless stated; the default "
                + "is 1e-10.",
            quantities,
            [
                new Plot(
                    "tapers.svg",
                    "Two-ports of tapers with losses, plane fronts",
                    "frequency, Hz",
                    "largest relative error of the four entries",
                    series
                )
                {
                    LogX = true,
                    LogY = true,
                    Band = 1e-9,
                },
            ]
        );
    }

    private static Quantity BesselRatios() =>
        new(
            "Boundary-layer function F and 1 − F",
            "`bessel-ratio.csv`, 60 digits [zwikker1949]",
            "radius over boundary layer 0.01 to 10 000",
            "",
            [
                .. ReferenceTable
                    .Read("bessel-ratio.csv")
                    .Rows.SelectMany(row =>
                    {
                        UnitLayer.At(row["s"], FrequencyVector.All(1), out WallFunctions found);
                        return new[]
                        {
                            Relative(new Complex(row["F_re"], row["F_im"]), found.Heat.At(0)),
                            Relative(
                                new Complex(row["one_minus_F_re"], row["one_minus_F_im"]),
                                found.H.At(0)
                            ),
                        };
                    }),
            ],
            4e-15
        );

    // A gas in which radius over boundary layer is the radius at ω = 1.
    private static readonly BoundaryLayer UnitLayer = new(
        new GasConstants(1, 1, 1, 1, 1, 2),
        WallLosses.Full
    );

    private static Quantity Cylinders() =>
        new(
            "Impedance of a cylinder, closed and ideally open",
            "`cylinder-lossy.csv`, 50 digits [zwikker1949, keefe1984]",
            "all rows",
            "",
            [
                .. ReferenceTable
                    .Read("cylinder-lossy.csv")
                    .Rows.SelectMany(row =>
                    {
                        var section = new CylinderSection(
                            Metres(2 * row["radius_m"]),
                            Metres(row["length_m"])
                        );
                        var hertz = Frequency.FromHertz(row["freq_Hz"]);
                        return new[]
                        {
                            Relative(
                                new Complex(row["Zclosed_re"], row["Zclosed_im"]),
                                Column(section, new ClosedEnd()).ImpedanceAt(hertz)
                            ),
                            Relative(
                                new Complex(row["Zopen_re"], row["Zopen_im"]),
                                Column(section, new IdealOpenEnd()).ImpedanceAt(hertz)
                            ),
                        };
                    }),
            ],
            2e-12
        );

    private static Quantity LosslessCones() =>
        new(
            "Transfer impedance of a cone without losses",
            "`cone-lossless.csv`, closed form to 25 digits [morse1948, causse1984]",
            "all rows, plane fronts",
            "",
            [
                .. ReferenceTable
                    .Read("cone-lossless.csv")
                    .Rows.Select(row =>
                    {
                        var section = new ConeSection(
                            Metres(2 * row["r1_m"]),
                            Metres(2 * row["r2_m"]),
                            Metres(row["L_m"])
                        );
                        var b = Matrix(section, row["freq_Hz"], WallLosses.None, Finest).B;
                        return Relative(new Complex(0, row["B_im"]), b);
                    }),
            ],
            1e-10
        );

    private static List<(double Hertz, bool Lossy, double Error)> Taper(
        string name,
        Section section,
        double tolerance
    ) =>
        [
            .. ReferenceTable
                .Read("horns-lossy-1d.csv")
                .Rows.Where(row => row.Text("case") == name)
                .Select(row =>
                {
                    var lossy = row["lossy"] == 1;
                    var m = Matrix(
                        section,
                        row["freq_Hz"],
                        lossy ? WallLosses.Full : WallLosses.None,
                        tolerance
                    );
                    var errors = new[]
                    {
                        Relative(new Complex(row["A_re"], row["A_im"]), m.A),
                        Relative(new Complex(row["B_re"], row["B_im"]), m.B),
                        Relative(new Complex(row["C_re"], row["C_im"]), m.C),
                        Relative(new Complex(row["D_re"], row["D_im"]), m.D),
                    };
                    return (row["freq_Hz"], lossy, errors.Max());
                }),
        ];

    // Ten cones in a row, as a curve is computed.
    private static Quantity Cones(string name, double tolerance, double goal)
    {
        var errors = new List<double>();
        foreach (var row in ReferenceTable.Read("cones-lossy-34-digits.csv").Rows)
        {
            var diameters = Enumerable
                .Range(0, 11)
                .Select(i =>
                    row.Text("bore") switch
                    {
                        "widening" => 30 + 3.0 * i,
                        "narrow" => 2 + 0.1 * i,
                        _ => i % 2 == 0 ? 30 : 33,
                    }
                )
                .ToList();
            var bore = new Bore(
                diameters.Zip(diameters.Skip(1), (a, b) => new ConeSection(Mm(a), Mm(b), Mm(130))),
                new ClosedEnd()
            );
            var (real, imaginary) = (new double[1], new double[1]);
            new Column(bore, TableAir, new ColumnOptions { RelativeTolerance = tolerance }).Impedance(
                [row["frequency_hz"]],
                real,
                imaginary
            );
            errors.Add(Relative(new Complex(row["re"], row["im"]), new Complex(real[0], imaginary[0])));
        }

        return new Quantity(
            name,
            "`cones-lossy-34-digits.csv`, collocation in 34 digits",
            "2 to 60 mm, 1.3 m, 25 Hz to 2 kHz",
            "",
            errors,
            goal
        );
    }

    private static TransferMatrix Matrix(Section section, double hertz, WallLosses losses, double tolerance)
    {
        var options = new ColumnOptions
        {
            Losses = losses,
            Wavefronts = Wavefronts.Plane,
            RelativeTolerance = tolerance,
        };
        var bore = new Bore([section], new ClosedEnd());
        var (a, b, c, d) = TwoPort.Of(new Column(bore, TableAir, options).Model, 2 * Math.PI * hertz);
        return new TransferMatrix(a, b, c, d);
    }

    private static double Relative(Complex expected, Complex actual) =>
        Complex.Abs(actual - expected) / Complex.Abs(expected);
}
