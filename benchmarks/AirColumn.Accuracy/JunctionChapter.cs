using System.Numerics;
using AirColumn.Acoustics.Junctions;
using AirColumn.Tests;
using AirColumn.Tests.Acoustics;

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
                + "Holes follow fits to field solutions and published fits. These hold for holes that are small against the wavelength and farther apart than their width. "
                + "The lengths of open holes were fitted to the low-frequency rows of `tone-hole-static.csv` and `tone-hole-field.csv`; their course at higher frequencies was not fitted. "
                + "A bend follows potential flow, exact at low frequency, and causes a warning if the wave in it slows down by more than 5 cents. "
                + "The sound that openings receive from each other outside was not fitted to the field solutions below. The error of a pair also contains the error of each hole: 1 % of the shunt of a hole counts for up to 5.5 cents.",
            [
                new Quantity(
                    "Step: l/a₁ at low frequency",
                    "`step-inertance.csv`, mode matching, error 1e-8 [kergomard1987]",
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
                    "Hole: length at its foot over its radius",
                    "`tone-hole-static.csv`, three-dimensional potential flow, error 0.002",
                    "hole over bore 0.3 to 0.85",
                    "",
                    [.. holes.Select(row => Hole(row, true).InnerLength / row["delta"] - row["ti_over_b"])]
                ),
                new Quantity(
                    "Hole: series length over bδ², closed",
                    "`tone-hole-static.csv`, error 0.0015",
                    "hole over bore 0.3 to 0.85",
                    "",
                    [
                        .. holes.Select(row =>
                            Hole(row, false).SeriesLength / Math.Pow(row["delta"], 3) - row["ta_closed"]
                        ),
                    ]
                ),
                OpenHole(
                    "Open hole: shunt length, relative",
                    0,
                    0.21,
                    (z, row) => z.Imaginary / row["ka"] / row["delta"] / row["shunt"] - 1
                ),
                OpenHole(
                    "Open hole: shunt length, relative",
                    0.21,
                    1,
                    (z, row) => z.Imaginary / row["ka"] / row["delta"] / row["shunt"] - 1
                ),
                OpenHole(
                    "Open hole: resistance, relative",
                    0.1,
                    1,
                    (z, row) => z.Real / row["resistance"] - 1
                ),
                .. CoupledHoleRows.All(),
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

    private static Quantity OpenHole(
        string name,
        double aboveKa,
        double toKa,
        Func<Complex, ReferenceTable.Row, double> error
    )
    {
        var rows = ReferenceTable
            .Read("tone-hole-field.csv")
            .Rows.Where(row => row["ka"] > aboveKa && row["ka"] <= toKa)
            .ToList();
        var (low, high) = (rows.Min(row => row["ka"]), rows.Max(row => row["ka"]));
        const double Bore = 0.01; // m
        return new Quantity(
            name,
            "`tone-hole-field.csv`, finite elements in three dimensions, error 0.001",
            FormattableString.Invariant($"hole over bore 0.2 to 0.95, ka {low} to {high}"),
            "",
            [
                .. rows.Select(row =>
                    error(
                        HoleOfColumn
                            .T(Bore, Bore * row["delta"], Bore * row["t_over_a"], row["ka"] / Bore, true)
                            .Shunt,
                        row
                    )
                ),
            ]
        );
    }

    // kergomard1987.
    private static double Fit(double a) =>
        Math.PI * (0.26164 + a * (-0.353 + a * a * (0.0809 + a * (0.03816 + a * (-0.12386 + a * 0.09616)))));

    private static SideOpening Hole(ReferenceTable.Row row, bool open) =>
        new(1, row["delta"], row["t_over_b"] * row["delta"], open);
}
