using System.Numerics;
using AirColumn.Tests;
using AirColumn.Tests.Acoustics;

namespace AirColumn.Accuracy;

/// <summary>Rows of the page about openings that hear each other outside.</summary>
internal static class CoupledHoleRows
{
    private const double LowKa = 0.11;

    public static IEnumerable<Quantity> All()
    {
        var pairs = TwoHolesOfColumn.Pairs().ToList();
        foreach (var isLow in new[] { true, false })
        {
            foreach (var isMutual in new[] { true, false })
            {
                yield return Row(
                    "Two open holes: the lowest resonance of a pipe that ends in them",
                    "two-holes-field.csv",
                    isMutual,
                    pairs.Where(pair => pair.Row["ka"] <= LowKa == isLow),
                    pair => pair.Row["ka"],
                    pair =>
                    {
                        var (even, odd) = TwoHolesOfColumn.Pair(pair.Row, isMutual, pair.Even);
                        return
                        [
                            TwoHolesOfColumn.Cents(pair.Even, even),
                            TwoHolesOfColumn.Cents(pair.Odd, odd),
                        ];
                    }
                );
            }
        }

        foreach (var isMutual in new[] { true, false })
        {
            yield return Row(
                "An open hole near the open end: the lowest resonance of a pipe that ends in them",
                "hole-near-end-field.csv",
                isMutual,
                ReferenceTable.Read("hole-near-end-field.csv").Rows,
                row => row["ka"],
                row =>
                {
                    var field = new Complex(row["r_re"], row["r_im"]);
                    return [TwoHolesOfColumn.Cents(field, TwoHolesOfColumn.NearEnd(row, isMutual))];
                }
            );
        }
    }

    private static Quantity Row<T>(
        string name,
        string file,
        bool isMutual,
        IEnumerable<T> cases,
        Func<T, double> ka,
        Func<T, double[]> cents
    )
    {
        var all = cases.ToList();
        return new Quantity(
            isMutual ? name : $"{name}, without `MutualRadiation`, for comparison",
            $"`{file}`, finite elements in three dimensions",
            FormattableString.Invariant($"ka {all.Min(ka)} to {all.Max(ka)}"),
            "cent",
            [.. all.SelectMany(cents)]
        );
    }
}
