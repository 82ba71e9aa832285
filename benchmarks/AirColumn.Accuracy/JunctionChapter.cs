using AirColumn.Acoustics.Junctions;
using AirColumn.Tests;

namespace AirColumn.Accuracy;

/// <summary>Steps, holes and bends.</summary>
internal static class JunctionChapter
{
    public static Chapter Make()
    {
        var steps = ReferenceTable.Read("step-inertance.csv").Rows.ToList();
        var ours = steps.Select(row => StepInertance.LengthRatio(row["alpha"]) - row["l_over_a1"]).ToArray();
        var fit = steps
            .Where(row => row["alpha"] <= 0.9)
            .Select(row => (Alpha: row["alpha"], Error: Fit(row["alpha"]) - row["l_over_a1"]))
            .ToArray();
        var holes = ReferenceTable.Read("tone-hole-static.csv").Rows.ToList();
        return new Chapter(
            "Steps, holes and branches",
            "A single step is exact: an abrupt, concentric change of radius, up to the first radial mode of its wider side. "
                + "Holes follow published fits, which hold for holes small against the wavelength and apart by more than their width; "
                + "a bend follows potential flow, exact at low frequency, and causes a warning if the wave in it slows down by more than 5 cents. "
                + "The sound that open holes send each other outside is not modelled.",
            [
                new Quantity(
                    "Step: l/a₁ at low frequency",
                    "`step-inertance.csv`, mode matching to 1e-8 [kergomard1987]",
                    "ratio of radii 0.02 to 0.98",
                    "",
                    ours,
                    1e-5
                ),
                new Quantity(
                    "Step: the published fit of l/a₁, for comparison",
                    "the same",
                    "ratio of radii 0.02 to 0.9",
                    "",
                    [.. fit.Select(f => f.Error)]
                ),
                new Quantity(
                    "Hole: shunt length over its radius",
                    "`tone-hole-static.csv`, three-dimensional potential flow to 0.002",
                    "hole over bore 0.3 to 0.85",
                    "",
                    [.. holes.Select(row => Hole(row, true).InnerLength / row["delta"] - row["ti_over_b"])]
                ),
                new Quantity(
                    "Hole: series length over bδ², closed",
                    "the same, to 0.0015",
                    "hole over bore 0.3 to 0.85",
                    "",
                    [
                        .. holes.Select(row =>
                            Hole(row, false).SeriesLength / Math.Pow(row["delta"], 3) - row["ta_closed"]
                        ),
                    ]
                ),
            ],
            [
                new Plot(
                    "step.svg",
                    "Air mass of a step, l/a₁",
                    "ratio of radii",
                    "error of l/a₁",
                    [
                        new Series("ours", [.. steps.Select((row, i) => (row["alpha"], ours[i]))]),
                        new Series("published fit", [.. fit.Select(f => (f.Alpha, f.Error))]),
                    ]
                )
                {
                    LogY = true,
                    Band = 1e-5,
                },
            ]
        );
    }

    // kergomard1987.
    private static double Fit(double a) =>
        Math.PI * (0.26164 + a * (-0.353 + a * a * (0.0809 + a * (0.03816 + a * (-0.12386 + a * 0.09616)))));

    private static SideOpening Hole(ReferenceTable.Row row, bool open) =>
        new(1, row["delta"], row["t_over_b"] * row["delta"], open);
}
