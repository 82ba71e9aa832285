using AirColumn.Acoustics.Radiation;
using AirColumn.Tests;
using static AirColumn.Tests.Acoustics.ReferenceAir;

namespace AirColumn.Accuracy;

/// <summary>Open ends: reflection and end correction.</summary>
internal static class EndChapter
{
    private static readonly (RadiationModel Model, string Table, string Key)[] Published =
    [
        (RadiationModel.Dalmont2001, "radiation-unflanged.csv", "dalmont2001"),
        (RadiationModel.Dalmont2001, "radiation-flanged.csv", "dalmont2001"),
        (RadiationModel.Norris1989, "radiation-unflanged.csv", "norris1989"),
        (RadiationModel.Silva2009, "radiation-unflanged.csv", "silva2009"),
        (RadiationModel.Silva2009, "radiation-flanged.csv", "silva2009"),
        (RadiationModel.Causse1984, "radiation-unflanged.csv", "causse1984"),
    ];

    public static Chapter Make()
    {
        var quantities = new List<Quantity>();
        var series = new List<Series>();
        Add(
            "Thin free edge",
            RadiationModel.Exact,
            "radiation-unflanged.csv",
            "integrals to 16 digits [levine1948]",
            1e-6
        );
        Add(
            "End in a baffle",
            RadiationModel.Exact,
            "radiation-flanged.csv",
            "mode matching, error 1e-12 [zorumski1973]",
            1e-6
        );
        quantities.AddRange(Rims());
        foreach (var (model, table, key) in Published)
        {
            var end = table == "radiation-flanged.csv" ? "baffle" : "thin edge";
            Add($"{model.Name}, {end}", model, table, $"the same exact values; fit of [{key}]", null);
        }

        return new Chapter(
            "Open ends",
            "A thin edge and a baffle are exact in linear acoustics without flow, up to ka = 3.8, just below the first radial mode. A "
                + "rim of finite thickness is interpolated between field solutions, up to ka = 3.8 and an outer radius of three times the "
                + "inner one. Beyond that there is a warning. How well a tapering mouth is "
                + "treated is shown in the chapter above. "
                + "A model refuses frequencies above its range. The published fits can be chosen by name; the rows below show their errors.",
            quantities,
            [
                new Plot(
                    "end-correction.svg",
                    "End corrections l/a against the exact ones",
                    "ka",
                    "error of l/a",
                    series
                )
                {
                    LogY = true,
                },
            ]
        );

        void Add(string name, RadiationModel model, string table, string source, double? bound)
        {
            var end = table == "radiation-flanged.csv" ? (BoreEnd)new BaffledEnd() : new OpenEnd(Mm(0));
            var open = model.Of(end, 0.02);
            var rows = ReferenceTable.Read(table).Rows.Where(row => row["ka"] <= open.HighestKa).ToList();
            var range = $"ka 0.001 to {rows.Max(row => row["ka"]):0.##}";
            quantities.Add(
                new Quantity($"{name}: \\|R\\|", $"`{table}`, {source}", range, "", Moduli(rows, open), bound)
            );
            var corrections = Corrections(rows, open);
            quantities.Add(new Quantity($"{name}: l/a", "the same", range, "", corrections, bound));
            series.Add(new Series(Short(name), [.. rows.Select((row, i) => (row["ka"], corrections[i]))]));
        }
    }

    private static IEnumerable<Quantity> Rims()
    {
        var rows = ReferenceTable.Read("radiation-wall-thickness.csv").Rows.ToList();
        const string Source =
            "`radiation-wall-thickness.csv`, field solutions; the nodes of the interpolation";
        const string Range = "outer over inner radius 1.02 to 3, ka 0.02 to 3";
        yield return new Quantity(
            "Rim: \\|R\\|, excess over the table's own error",
            Source,
            Range,
            "",
            [.. rows.Select(row => Excess(row["absR"], Rim(row).Modulus, row["err"]))]
        );
        yield return new Quantity(
            "Rim: l/a, excess over the table's own error",
            "the same",
            Range,
            "",
            [.. rows.Select(row => Excess(row["l_over_a"], Rim(row).EndCorrection, row["err"] / row["ka"]))]
        );

        foreach (var rim in new[] { 1.07, 1.25, 1.4, 1.7, 2.5 })
        {
            yield return new Quantity(
                $"Rim between the tabulated ones, b/a = {rim}: l/a",
                "`radiation-rims-between.csv`, field solutions, error 2e-6",
                "ka 0.5 to 3",
                "",
                [
                    .. ReferenceTable
                        .Read("radiation-rims-between.csv")
                        .Rows.Where(row => row["b_over_a"] == rim)
                        .Select(row => Rim(row).EndCorrection - row["l_over_a"]),
                ]
            );
        }
    }

    private static EndReflection Rim(ReferenceTable.Row row) => new RimmedEnd(row["b_over_a"]).At(row["ka"]);

    private static double Excess(double expected, double actual, double own) =>
        Math.Max(0, Math.Abs(actual - expected) - own);

    private static double[] Moduli(List<ReferenceTable.Row> rows, OpenEndModel end) =>
        [.. rows.Select(row => end.At(row["ka"]).Modulus - row["absR"])];

    private static double[] Corrections(List<ReferenceTable.Row> rows, OpenEndModel end) =>
        [.. rows.Select(row => end.At(row["ka"]).EndCorrection - row["l_over_a"])];

    private static string Short(string name) =>
        name.Replace(", Nederveen and Joly", "", StringComparison.Ordinal)
            .Replace(", Kergomard and Lurton", "", StringComparison.Ordinal)
            .Replace(" and others", "", StringComparison.Ordinal)
            .Replace(" and Sheng", "", StringComparison.Ordinal);
}
