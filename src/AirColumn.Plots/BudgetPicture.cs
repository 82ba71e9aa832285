using AirColumn.Plots.Drawing;

namespace AirColumn.Plots;

/// <summary>Pictures of an uncertainty budget: the contribution of each tolerance in cents.</summary>
public static class BudgetPicture
{
    private const int MostRows = 20;
    private const float RowHeight = 2.9f; // of the text
    private const float Around = 5.2f;

    /// <summary>The contributions to one budget, the largest first, as bars of their standard deviation.</summary>
    /// <param name="budget">The budget of a resonance, from <see cref="Uncertainty.Budgets"/>.</param>
    /// <param name="tuning">The tuning that names the note. Default: A4 = 440 Hz, equal temperament.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The resonance is not from 1 Hz to 100 kHz, where notes have names.</exception>
    public static Picture Of(ResonanceBudget budget, Tuning? tuning = null)
    {
        ArgumentNullException.ThrowIfNull(budget);
        var note = budget.Resonance.Nearest(tuning ?? Tuning.Concert);
        var heading =
            $"{note.Pitch} {Numbers.Cents(note.Cents)} cents, ±{Numbers.Fixed(budget.PlusMinusCents, 1)}";
        var below =
            $"19 times out of 20; resonance at {Numbers.Fixed(budget.Resonance.Frequency.Hertz, 2)} Hz, "
            + $"standard deviation {Numbers.Fixed(budget.StandardDeviationCents, 1)} cents"
            + (budget.IsLinear ? "" : "; not in proportion, see its remark");
        var rows = budget.Contributions.Take(MostRows).ToList();
        return new Picture(
            new Scene(
                $"{heading}, 19 times out of 20. "
                    + string.Join("; ", rows.Select(c => $"{c.Tolerance}: {Share(c)}"))
                    + ".",
                look => look.Top + (Around + RowHeight * Math.Max(rows.Count, 1)) * look.Text,
                page => Draw(page, rows, heading, below)
            )
        );
    }

    private static string Share(Contribution contribution) =>
        $"{Numbers.Fixed(100 * contribution.Share, 1)} %";

    private static void Draw(Page page, List<Contribution> rows, string heading, string below)
    {
        page.Begin(heading, below);
        NamedBars.Draw(
            page,
            "Standard deviation from each alone, cents",
            [
                .. rows.Select(c => new NamedBar(
                    c.Tolerance.ToString(),
                    c.StandardDeviationCents,
                    $"{Numbers.Fixed(c.StandardDeviationCents, 2)}   {Share(c)}"
                )),
            ],
            most => most > 0 ? 1.02 * most : 1,
            ""
        );
    }
}
