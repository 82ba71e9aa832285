using ScottPlot;

namespace AirColumn.Plots.Drawing;

/// <summary>A resonance, the note nearest to it, and half of its 95 % range in cents where that is known.</summary>
internal sealed record TuningRow(int Number, Resonance Resonance, PitchReading Note, double? PlusMinus)
{
    public string Deviation =>
        Numbers.Cents(Note.Cents) + (PlusMinus is { } sure ? $" ± {Numbers.Fixed(sure, 1)}" : "");
}

/// <summary>Resonances one below the other, each with a stem from its note to where it is.</summary>
internal sealed class TuningRows(IReadOnlyList<TuningRow> rows, Tuning tuning)
{
    private const int MostRows = 30;
    private const float RowHeight = 1.9f; // of the text
    private const float Around = 6.2f;

    public Scene Scene() =>
        new(
            rows.Count == 0
                ? "No resonances."
                : "Resonances and their distance from the nearest notes: "
                    + string.Join(
                        ", ",
                        rows.Take(MostRows)
                            .Select(row =>
                                $"{Numbers.Fixed(row.Resonance.Frequency.Hertz, 2)} Hz {row.Note.Pitch} {row.Deviation} cents"
                            )
                    )
                    + ".",
            look => look.Top + (Around + RowHeight * Math.Clamp(rows.Count, 1, MostRows)) * look.Text,
            Draw
        );

    private void Draw(Page page)
    {
        var look = page.Look;
        var room = page.Height - look.Top - Around * look.Text;
        var fitting = Math.Clamp((int)(room / (1.3f * look.Text) + 0.01), 1, MostRows);
        var shown = rows.Take(fitting).ToList();
        page.Begin("Tuning", Below(shown));
        var reach = Math.Max(
            50,
            10
                * Math.Ceiling(
                    shown
                        .Select(r => 1.05 * (Math.Abs(r.Note.Cents) + (r.PlusMinus ?? 0)))
                        .DefaultIfEmpty()
                        .Max() / 10
                )
        );
        var labels = shown
            .Select(r =>
                (Note: r.Note.Pitch.ToString(), Hertz: Numbers.Fixed(r.Resonance.Frequency.Hertz, 2) + " Hz")
            )
            .ToList();
        var noteRoom = labels.Select(l => Page.TextWidth(l.Note, look.Text, true)).DefaultIfEmpty().Max();
        var hertzRoom = labels.Select(l => Page.TextWidth(l.Hertz, look.Text)).DefaultIfEmpty().Max();
        var valueRoom = shown
            .Select(r => Page.TextWidth(r.Deviation, look.Text, true))
            .DefaultIfEmpty()
            .Max();
        var area = new Bounds(
            look.Margin + noteRoom + hertzRoom + 2 * look.Text,
            look.Top + 1.4f * look.Text,
            page.Width - look.Margin - valueRoom - look.Text,
            page.Height - 4.2f * look.Text
        ).AtLeast(3 * look.Text);
        var up = new Axis(shown.Count + 0.5, 0.5, []);
        var across = Axis.Linear(-reach, reach, (int)Math.Clamp(area.Width / (5 * look.Text), 2, 10));
        across = across with
        {
            Ticks = [.. across.Ticks.Select(t => (t.At, t.At > 0 ? "+" + t.Label : t.Label))],
        };
        using var chart = new Chart(page, area, across, shown.Count == 0 ? new Axis(1.5, 0.5, []) : up);
        chart.Line(0, up.From, 0, up.To, Palette.Green, look.Stroke, LinePattern.Dashed);
        for (var i = 0; i < shown.Count; i++)
        {
            Row(chart, look, shown[i], i + 1);
        }

        chart.Marks(
            [.. shown.Select(r => r.Note.Cents)],
            [.. shown.Select((_, i) => i + 1.0)],
            Palette.Vermilion
        );
        chart.Draw("Distance from the note, cents");
        page.Text(
            chart.X(0),
            area.Top - 0.5f * look.Text,
            "note",
            Anchor.Middle,
            Palette.GreenText,
            look.Small,
            true
        );
        if (shown.Count == 0)
        {
            page.Text(
                area.Left + area.Width / 2,
                area.Top + area.Height / 2,
                "No resonances",
                Anchor.Middle,
                Palette.Quiet,
                look.Text
            );
        }

        for (var i = 0; i < shown.Count; i++)
        {
            var y = chart.Y(i + 1) + 0.35f * look.Text;
            page.Text(look.Margin, y, labels[i].Note, Anchor.Start, Palette.Ink, look.Text, true);
            page.Text(area.Left - look.Text, y, labels[i].Hertz, Anchor.End, Palette.Quiet, look.Text);
            page.Text(
                page.Width - look.Margin,
                y,
                shown[i].Deviation,
                Anchor.End,
                Palette.Ink,
                look.Text,
                true
            );
        }
    }

    private static void Row(Chart chart, Look look, TuningRow row, int place)
    {
        chart.Line(chart.XAxis.From, place, chart.XAxis.To, place, Palette.Grid, look.Thin);
        if (row.PlusMinus is not { } sure)
        {
            chart.Line(0, place, row.Note.Cents, place, Palette.Vermilion, look.Stroke);
            return;
        }

        var (from, to) = (row.Note.Cents - sure, row.Note.Cents + sure);
        chart.Line(from, place, to, place, Palette.Blue, 1.6f * look.Stroke);
        foreach (var end in new[] { from, to })
        {
            chart.Line(end, place - 0.22, end, place + 0.22, Palette.Blue, look.Stroke);
        }
    }

    private string Below(List<TuningRow> shown) =>
        (shown.Any(row => row.PlusMinus is not null) ? "Bars hold 19 times out of 20; " : "")
        + tuning
        + (shown.Count < rows.Count ? $"; the first {shown.Count} of {rows.Count}" : "");
}
