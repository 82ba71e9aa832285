namespace AirColumn.Documents;

/// <summary>The keys in docs/references.bib of the formulas that a column is computed by.</summary>
internal static class SourceKeys
{
    private const double MostStandardCarbonDioxide = 0.01; // beyond, transport follows a mixture rule

    /// <summary>The keys, in order of the alphabet, each once.</summary>
    /// <param name="column">The column.</param>
    /// <param name="airs">The airs that fill it.</param>
    public static IReadOnlyList<string> Of(Column column, IEnumerable<Air> airs) =>
        [
            .. airs.SelectMany(OfAir)
                .Concat(OfOptions(column))
                .Concat(OfBore(column.Bore))
                .Concat(OfFarEnd(column.Bore.FarEnd, column.Options.Radiation))
                .Append("chaigne2016")
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];

    private static IEnumerable<string> OfAir(Air air) =>
        air.Model switch
        {
            AirModel.Iec61094 => ["iec61094-2", "cramer1993", "picard2008"],
            AirModel.GasMixture =>
            [
                "mcbride2002",
                "hyland1983",
                "tsonopoulos1974",
                "hirschfelder1954",
                "cramer1993",
                "iec61094-2",
                "picard2008",
                .. air.State!.CarbonDioxide.DecimalFractions > MostStandardCarbonDioxide
                    ? (string[])["wilke1950", "mason1958"]
                    : [],
            ],
            _ => [],
        };

    private static IEnumerable<string> OfOptions(Column column) =>
        [
            .. column.Options.Losses switch
            {
                WallLosses.Full => (string[])["zwikker1949", "tijdeman1975"],
                WallLosses.LargeTube => ["keefe1984"],
                _ => [],
            },
            .. column.Wavefronts switch
            {
                Wavefronts.Multimodal => (string[])["pagneux1996", "amir1997", "felix2018", "berggren2018"],
                Wavefronts.Plane => [],
                _ => ["rayleigh1916"],
            },
            .. column.Options.BlownEnd.Free is { } free ? OfFarEnd(free, RadiationModel.Exact) : [],
        ];

    private static IEnumerable<string> OfBore(Bore bore)
    {
        if (bore.Steps.Count > 0)
        {
            yield return "kergomard1987";
        }

        if (bore.Sections.Any(section => section is BendSection))
        {
            yield return "nederveen1998torus";
        }

        if (bore.Holes.Count + bore.Branches.Count > 0)
        {
            foreach (
                var key in (string[])
                    ["keefe1990", "dubos1999", "dalmont2002", "nederveen1998", "lefebvre2012"]
            )
            {
                yield return key;
            }
        }

        if (bore.Holes.Count > 0)
        {
            yield return "dalmont2001";
        }

        foreach (
            var key in bore.Branches.SelectMany(branch =>
                OfBore(branch.Bore).Concat(OfFarEnd(branch.Bore.FarEnd, RadiationModel.Exact))
            )
        )
        {
            yield return key;
        }
    }

    private static IEnumerable<string> OfFarEnd(BoreEnd end, RadiationModel model)
    {
        if (model.Impedance is not null || end is not (OpenEnd or BaffledEnd))
        {
            return [];
        }

        if (model != RadiationModel.Exact)
        {
            // The baffled end of one publication is that of another.
            return model == RadiationModel.Dalmont2001 && end is BaffledEnd
                ? ["norris1989"]
                : [Vocabulary.Radiation.For(model)!];
        }

        return end switch
        {
            BaffledEnd => ["zorumski1973"],
            OpenEnd { WallMetres: > 0 } => ["levine1948", "zorumski1973", "dalmont2001"],
            _ => ["levine1948"],
        };
    }
}
