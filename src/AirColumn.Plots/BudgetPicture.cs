using AirColumn.Design;
using AirColumn.Pitches;
using AirColumn.Plots.Drawing;

namespace AirColumn.Plots;

/// <summary>Pictures of what makes a resonance unsure: each tolerance with what it is worth in cents.</summary>
public static class BudgetPicture
{
    private const int MostRows = 20;
    private const float RowHeight = 2.9f; // of the text
    private const float Around = 5.2f;

    /// <summary>The contributions to one budget, the largest first, as bars of their standard deviation.</summary>
    /// <param name="budget">What <see cref="Uncertainty.Budgets"/> found for a resonance.</param>
    /// <param name="tuning">The tuning that names the note; A4 = 440 Hz in equal temperament if left out.</param>
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
        var look = page.Look;
        page.Begin(heading, below);
        var room = page.Height - look.Top - Around * look.Text;
        var shown = rows.Take(Math.Max(1, (int)(room / (2.2f * look.Text) + 0.01))).ToList();
        var values = shown.Select(c => $"{Numbers.Fixed(c.StandardDeviationCents, 2)}   {Share(c)}").ToList();
        var valueRoom = values.Max(v => Page.TextWidth(v, look.Text));
        var most = shown.Max(c => c.StandardDeviationCents);
        var area = new Bounds(
            look.Margin,
            look.Top + 0.6f * look.Text,
            page.Width - look.Margin - valueRoom - look.Text,
            page.Height - 4.2f * look.Text
        ).AtLeast(3 * look.Text);
        var across = Axis.Linear(
            0,
            most > 0 ? 1.02 * most : 1,
            (int)Math.Clamp(area.Width / (6 * look.Text), 2, 8)
        );
        using var chart = new Chart(page, area, across, new Axis(shown.Count + 0.65, 0.5, []));
        chart.Draw("Standard deviation from each alone, cents");
        for (var i = 0; i < shown.Count; i++)
        {
            var baseline = chart.Y(i + 1) - 0.1f * look.Text;
            page.Text(
                area.Left,
                baseline,
                shown[i].Tolerance.ToString(),
                Anchor.Start,
                Palette.Ink,
                look.Text,
                room: area.Width
            );
            var (top, bottom) = (baseline + 0.45f * look.Text, baseline + 1.05f * look.Text);
            var to = Math.Max(chart.X(shown[i].StandardDeviationCents), area.Left + look.Thin);
            page.Shape([(area.Left, top), (to, top), (to, bottom), (area.Left, bottom)], Palette.Blue);
            page.Text(page.Width - look.Margin, bottom, values[i], Anchor.End, Palette.Quiet, look.Text);
        }
    }
}
