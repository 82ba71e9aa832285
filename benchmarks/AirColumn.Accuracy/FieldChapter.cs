using AirColumn.Tests;
using AirColumn.Tests.Acoustics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Accuracy;

/// <summary>Whole tubes: resonances against solutions of the wave equation in two dimensions.</summary>
internal static class FieldChapter
{
    private const int Peaks = 8;

    private static readonly Wavefronts[] All =
    [
        Wavefronts.Multimodal,
        Wavefronts.Curved,
        Wavefronts.Sloped,
        Wavefronts.Plane,
    ];

    private static readonly (string Name, string Table, Bore Bore, double Curved)[] Tubes =
    [
        (
            "Straight tube, rim of 3.7 mm",
            "field-cylinder.csv",
            Bore.Build().Cylinder(Mm(40.9), Mm(1300)).OpenEnd(Mm(3.7)),
            0.3
        ),
        (
            "Straight tube in a baffle",
            "field-cylinder-baffle.csv",
            Bore.Build().Cylinder(Mm(40.9), Mm(1300)).BaffledEnd(),
            0.3
        ),
        (
            "Cone, 30 to 90 mm",
            "field-cone.csv",
            Bore.Build().Cone(Mm(30), Mm(90), Mm(1400)).OpenEnd(Mm(5)),
            0.2
        ),
        (
            "Flared end, 40.9 to 90 mm in 120 mm",
            "field-flared-end.csv",
            Bore.Build()
                .Cylinder(Mm(40.9), Mm(1200))
                .Horn(HornLaw.Cosine, Mm(40.9), Mm(90), Mm(120))
                .OpenEnd(Mm(3)),
            1.7
        ),
    ];

    public static Chapter Make()
    {
        var quantities = new List<Quantity>();
        var series = new List<Series>();
        foreach (var (name, table, bore, bound) in Tubes)
        {
            foreach (var fronts in Fronts(bore))
            {
                var (cents, level) = Errors(table, bore, fronts);
                var told = Fronts(bore).Length > 1 ? $"{name}, {Told(fronts)}" : name;
                var curved = fronts == Wavefronts.Curved;
                quantities.Add(
                    new Quantity(
                        $"{told}: frequency",
                        $"`{table}`, rows BLinner [berggren2018]",
                        $"first {Peaks} maxima of \\|Z\\|",
                        "cent",
                        cents,
                        curved ? bound
                            : fronts == Wavefronts.Multimodal ? 0.2
                            : null
                    )
                );
                quantities.Add(
                    new Quantity(
                        $"{told}: height",
                        "the same",
                        $"first {Peaks} maxima of \\|Z\\|",
                        "dB",
                        level,
                        fronts == Wavefronts.Multimodal
                        || (curved && table.Contains("cylinder", StringComparison.Ordinal))
                            ? 0.2
                            : null
                    )
                );
                series.Add(
                    new Series(
                        told.Split(',')[0] + (Fronts(bore).Length > 1 ? $", {Told(fronts)}" : ""),
                        Numbered(cents)
                    )
                );
            }
        }

        quantities.AddRange(Horns());
        quantities.AddRange(Inside());
        quantities.Add(TruncatedCones());
        return new Chapter(
            "Whole tubes",
            "The field solutions solve the wave equation inside and outside a tube of circular cross-section, with the boundary layer "
                + "at its wall, and use no one-dimensional theory. Their stated discretisation error is "
                + $"at most {Own():0.0000} cent. "
                + "*Modes* are several radial modes of the bore, in the number that the column chooses; the next chapter is about them. "
                + "Curved wave fronts, the automatic choice in gentle bores, multiply the "
                + "series impedance by the kinetic energy of the flow across the axis, to second order in the slope of the wall. They count the "
                + "taper behind an open mouth to first order. They are not valid for slopes above 45°: the engine warns there. For "
                + "comparison there are sloped fronts, the first order 1 + a'²/2, and plane fronts, the textbook horn equation, both with "
                + "the end of a straight pipe.",
            quantities,
            [
                new Plot(
                    "whole-tubes.svg",
                    "Resonances against field solutions",
                    "number of the maximum",
                    "ours − field solution, cents",
                    series
                ),
            ]
        );
    }

    // Stated for the lossless and the fully lossy solutions on the same meshes.
    private static double Own() =>
        Tubes
            .SelectMany(tube => ReferenceTable.Read(tube.Table).Rows)
            .Where(row => row.Text("kind") == "peak" && row.Text("err_cents").Length > 0)
            .Max(row => Math.Abs(row["err_cents"]));

    private static IEnumerable<ReferenceTable.Row> Rows(string table) =>
        ReferenceTable
            .Read(table)
            .Rows.Where(row => row.Text("kind") == "peak" && row.Text("model") == "BLinner")
            .Take(Peaks);

    private static Wavefronts[] Fronts(Bore bore) =>
        bore.Sections.All(section => section is CylinderSection) ? [Wavefronts.Curved] : All;

    private static string Told(Wavefronts fronts) =>
        fronts == Wavefronts.Multimodal ? "modes" : $"{fronts.ToString().ToLowerInvariant()} fronts";

    private static (double[] Cents, double[] Level) Errors(string table, Bore bore, Wavefronts fronts)
    {
        var found = new Column(bore, TableAir, new ColumnOptions { Wavefronts = fronts }).FirstResonances(
            Peaks
        );
        var rows = Rows(table).Zip(found).ToList();
        return (
            [.. rows.Select(r => Cents.Between(Frequency.FromHertz(r.First["f_Hz"]), r.Second.Frequency))],
            [.. rows.Select(r => 20 * Math.Log10(r.Second.Magnitude / r.First["absZ"]))]
        );
    }

    private static IEnumerable<Quantity> Horns()
    {
        (string Case, string Name)[] cases =
        [
            ("cone", "Cone, 20 to 100 mm in 1 m"),
            ("flare", "Exponential horn, 12 to 110 mm in 400 mm"),
            ("steep_cone", "Steep cone, 10 to 310 mm in 500 mm"),
            ("bell", "Bell, 11.5 to 123 mm in 450 mm, slope up to 2.7"),
        ];
        foreach (var (key, name) in cases)
        {
            var rows = ReferenceTable
                .Read("baffled-horns.csv")
                .Rows.Where(row => row.Text("case") == key)
                .ToList();
            foreach (var fronts in All)
            {
                var options = new ColumnOptions { Losses = WallLosses.None, Wavefronts = fronts };
                var found = new Column(FieldTubes.Named(key), TableAir, options).FirstResonances(Peaks);
                yield return new Quantity(
                    $"{name}, {Told(fronts)}",
                    "`baffled-horns.csv`, spectral elements, error 0.001 cent",
                    $"{rows.Count} of the first {Peaks} complex resonances, lossless, in a baffle",
                    "cent",
                    [
                        .. rows.Select(row =>
                            1200 * Math.Log2(found[(int)row["n"] - 1].Pole.Real / row["pole_re_Hz"])
                        ),
                    ]
                );
            }
        }
    }

    private static IEnumerable<Quantity> Inside()
    {
        (string Case, string Name, double? Bound)[] cases =
        [
            ("step", "Step, 41 to 60 mm", 0.3),
            ("insert", "Mouth insert, 16 mm in 40 mm", 0.3),
            ("drone", "Insert and wider end, 30, 38, 60 mm", 0.3),
            ("wavy_gentle", "Wavy bore, 40 ± 4.4 mm, waves of 100 mm", 0.5),
            ("wavy_strong", "Wavy bore, 40 ± 8 mm, waves of 100 mm", null),
            ("wavy_short", "Wavy bore, 40 ± 6 mm, waves of 50 mm", null),
        ];
        foreach (var (key, name, bound) in cases)
        {
            var rows = ReferenceTable
                .Read("interior-field.csv")
                .Rows.Where(row => row.Text("case") == key)
                .ToList();
            var bore = FieldTubes.Named(key);
            foreach (var fronts in Fronts(bore))
            {
                var options = new ColumnOptions { Losses = WallLosses.None, Wavefronts = fronts };
                var found = new Column(bore, TableAir, options).FirstResonances(Peaks);
                yield return new Quantity(
                    Fronts(bore).Length > 1 ? $"{name}, {Told(fronts)}" : name,
                    $"`interior-field.csv`, spectral elements, error {rows.Max(row => row["err_cents"]):0.0e-0} cent",
                    $"first {Peaks} resonances, lossless, ideal open end",
                    "cent",
                    [
                        .. rows.Zip(found)
                            .Select(r =>
                                Cents.Between(Frequency.FromHertz(r.First["f_Hz"]), r.Second.Frequency)
                            ),
                    ],
                    fronts == Wavefronts.Curved ? bound : null
                );
            }
        }
    }

    // morse1948: tan kL = −k·x₀ in a cone closed where it is narrow, ideally open where it is wide; f₂/f₁ to four decimals.
    private static Quantity TruncatedCones()
    {
        (double Ratio, double Expected)[] table =
        [
            (0.1, 2.0157),
            (0.2, 2.0829),
            (0.3, 2.1846),
            (0.4, 2.3009),
            (0.5, 2.4218),
            (0.6, 2.5426),
            (0.8, 2.7775),
        ];
        var options = new ColumnOptions { Losses = WallLosses.None, Wavefronts = Wavefronts.Plane };
        return new Quantity(
            "Truncated cone, second over first resonance",
            "tan kL = −kx₀ [morse1948], 4 decimals",
            "narrow over wide end 0.1 to 0.8, lossless, plane fronts",
            "",
            [
                .. table.Select(row =>
                {
                    var cone = new ConeSection(Mm(50 * row.Ratio), Mm(50), Mm(1000));
                    var found = Column(cone, new IdealOpenEnd(), options).FirstResonances(2);
                    return found[1].Frequency / found[0].Frequency - row.Expected;
                }),
            ],
            0.5e-4
        );
    }

    private static (double, double)[] Numbered(double[] values) =>
        [.. values.Select((value, i) => ((double)(i + 1), value))];
}
