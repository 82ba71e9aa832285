using System.Numerics;
using AirColumn.Acoustics.Multimodal;
using AirColumn.Acoustics.Radiation;
using AirColumn.Tests;
using AirColumn.Tests.Acoustics;
using UnitsNet;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Accuracy;

/// <summary>Radial modes: how many are needed, and what they keep.</summary>
internal static class ModeChapter
{
    private const int Peaks = 8;

    private static readonly double[] Shares = [0.01, 0.07, 0.2, 0.45, 0.7, 0.95];

    private static readonly int[] Counts = [1, 2, 3, 4, 6, 8];

    private static readonly Bore Flared = Bore.Build()
        .Cylinder(Mm(40.9), Mm(1200))
        .Horn(HornLaw.Cosine, Mm(40.9), Mm(90), Mm(120))
        .OpenEnd(Mm(3));

    public static Chapter Make()
    {
        var quantities = new List<Quantity>();
        var (flared, bell) = (new List<(double, double)>(), new List<(double, double)>());
        foreach (var count in Counts)
        {
            var told = count == 1 ? "1 mode" : $"{count} modes";
            var errors = FlaredEnd(count);
            flared.Add((count, Math.Log10(errors.Max(Math.Abs))));
            quantities.Add(
                new Quantity(
                    $"Flared end, {told}",
                    "`field-flared-end.csv`, rows lossless [berggren2018]",
                    $"first {Peaks} maxima of \\|Z\\|",
                    "cent",
                    errors,
                    count >= 4 ? 0.2 : null
                )
            );
        }

        foreach (var count in Counts)
        {
            var errors = Bell(count);
            bell.Add((count, Math.Log10(errors.Max(Math.Abs))));
            quantities.Add(
                new Quantity(
                    $"Bell of slope up to 2.7, {(count == 1 ? "1 mode" : $"{count} modes")}",
                    "`baffled-horns.csv`, spectral elements, error 0.001 cent",
                    "7 of the first 8 complex resonances, lossless, in a baffle",
                    "cent",
                    errors
                )
            );
        }

        quantities.Add(OneMode());
        quantities.Add(Energy());
        quantities.Add(Mouth("Field of a mouth in a baffle", "radiation-flanged.csv", null));
        quantities.Add(Mouth("Field of a mouth with a rim, b/a 1.02", "radiation-wall-thickness.csv", 1.02));
        quantities.Add(Mouth("Field of a mouth with a rim, b/a 1.2", "radiation-wall-thickness.csv", 1.2));
        quantities.Add(Mouth("Field of a mouth with a rim, b/a 3", "radiation-wall-thickness.csv", 3));
        return new Chapter(
            "Radial modes",
            "This chapter shows the modes of `Wavefronts.Multimodal` [pagneux1996] against their number. One mode is plane-wave theory "
                + "and gives its results. The error falls as about the square of the number, because of edges and corners. By default a column "
                + "takes enough modes for an estimated error of 0.1 cent. The field of a mouth is compared before its plane mode is "
                + "corrected by the tables of plane-wave theory. Holes, branches and bends act on the plane mode only.",
            quantities,
            [
                new Plot(
                    "modes.svg",
                    "Error against the number of modes",
                    "modes",
                    "log10 of the largest error, cents",
                    [new Series("flared end", [.. flared]), new Series("bell", [.. bell])]
                ),
            ]
        );
    }

    private static Column Of(Bore bore, int? modes, WallLosses losses) =>
        new(
            bore,
            TableAir,
            new ColumnOptions
            {
                Wavefronts = Wavefronts.Multimodal,
                Modes = modes,
                Losses = losses,
            }
        );

    private static double[] FlaredEnd(int modes) =>
        [
            .. ReferenceTable
                .Read("field-flared-end.csv")
                .Rows.Where(row => row.Text("kind") == "peak" && row.Text("model") == "lossless")
                .Zip(Of(Flared, modes, WallLosses.None).FirstResonances(Peaks))
                .Select(r => Cents.Between(Frequency.FromHertz(r.First["f_Hz"]), r.Second.Frequency)),
        ];

    private static double[] Bell(int modes)
    {
        var found = Of(FieldTubes.Named("bell"), modes, WallLosses.None).FirstResonances(Peaks);
        return
        [
            .. ReferenceTable
                .Read("baffled-horns.csv")
                .Rows.Where(row => row.Text("case") == "bell")
                .Select(row => 1200 * Math.Log2(found[(int)row["n"] - 1].Pole.Real / row["pole_re_Hz"])),
        ];
    }

    private static IEnumerable<Bore> Bores =>
        [
            Flared,
            FieldTubes.Named("steep_cone"),
            FieldTubes.Named("bell"),
            Bore.Build().Cone(Mm(30), Mm(90), Mm(1400)).OpenEnd(Mm(5)),
            FieldTubes.Named("drone"),
        ];

    private static Quantity OneMode()
    {
        var errors =
            from bore in Bores
            from losses in new[] { WallLosses.None, WallLosses.Full }
            let one = Of(bore, 1, losses)
            let plane = new Column(
                bore,
                TableAir,
                new ColumnOptions
                {
                    Wavefronts = Wavefronts.Plane,
                    Losses = losses,
                    RelativeTolerance = 1e-13,
                }
            )
            from share in Shares
            let omega = 2 * Math.PI * share * one.HighestFrequency.Hertz
            let expected = plane.ImpedanceAt(Frequency.FromHertz(omega / (2 * Math.PI)))
            select Complex.Abs(one.ImpedanceAt(Frequency.FromHertz(omega / (2 * Math.PI))) - expected)
                / (Complex.Abs(expected) + plane.CharacteristicImpedance);
        return new Quantity(
            "One mode, input impedance",
            "plane-wave theory: `Wavefronts.Plane`",
            "five bores, with losses and without, up to the cut-on",
            "",
            [.. errors],
            1e-9
        );
    }

    private static Quantity Energy()
    {
        var errors =
            from bore in Bores
            let column = Of(bore, 5, WallLosses.Full)
            from share in Shares
            select column.PowerAt(share * column.HighestFrequency).Imbalance;
        return new Quantity(
            "Five modes, power radiated and lost over power sent in, minus 1",
            "conservation of energy",
            "five bores, up to the cut-on",
            "",
            [.. errors],
            1e-8
        );
    }

    private static Quantity Mouth(string name, string table, double? outer)
    {
        var field = new MouthField(outer ?? double.PositiveInfinity);
        var rows = ReferenceTable
            .Read(table)
            .Rows.Where(row =>
                row["ka"] is >= 0.05 and <= 3.8 && (outer is null || row["b_over_a"] == outer)
            );
        return new Quantity(
            name,
            $"`{table}`",
            "impedance of a straight pipe's end, ka 0.05 to 3.8",
            "",
            [
                .. rows.Select(row =>
                {
                    var ka = row["ka"];
                    var x = field.At(new RadialBasis(1), Vector.Create(ka))[0].At(0);
                    var z = new Complex(0, Math.PI * ka) * x;
                    var expected = new EndReflection(
                        Math.Log(row["absR"]),
                        row["l_over_a"]
                    ).RelativeImpedance(ka);
                    return Complex.Abs(z - expected) / Complex.Abs(expected);
                }),
            ]
        );
    }
}
