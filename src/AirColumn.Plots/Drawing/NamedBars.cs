namespace AirColumn.Plots.Drawing;

/// <summary>Bars one below the other, each under its name and before its value.</summary>
internal static class NamedBars
{
    /// <summary>Draws as many as there is room for, from the first.</summary>
    /// <param name="page">The frequency.</param>
    /// <param name="axis">The title of the axis.</param>
    /// <param name="bars">At least one.</param>
    /// <param name="end">Where the axis ends, for the largest of the values drawn.</param>
    /// <param name="widest">A text as wide as any value may be, so that pictures beside each other are alike.</param>
    public static void Draw(
        Page page,
        string axis,
        IReadOnlyList<NamedBar> bars,
        Func<double, double> end,
        string widest
    )
    {
        var look = page.Look;
        var room = page.Height - look.Top - 5.2f * look.Text;
        var shown = bars.Take(Math.Max(1, (int)(room / (2.2f * look.Text) + 0.01))).ToList();
        var valueRoom = shown
            .Select(bar => bar.Text)
            .Append(widest)
            .Max(text => Page.TextWidth(text, look.Text));
        var area = new Bounds(
            look.Margin,
            look.Top + 0.6f * look.Text,
            page.Width - look.Margin - valueRoom - look.Text,
            page.Height - 4.2f * look.Text
        ).AtLeast(3 * look.Text);
        var across = Axis.Linear(
            0,
            end(shown.Max(bar => bar.Value)),
            (int)Math.Clamp(area.Width / (6 * look.Text), 2, 8)
        );
        using var chart = new Chart(page, area, across, new Axis(shown.Count + 0.65, 0.5, []));
        chart.Draw(axis);
        for (var i = 0; i < shown.Count; i++)
        {
            var baseline = chart.Y(i + 1) - 0.1f * look.Text;
            page.Text(
                area.Left,
                baseline,
                shown[i].Name,
                Anchor.Start,
                Palette.Ink,
                look.Text,
                room: area.Width
            );
            var (top, bottom) = (baseline + 0.45f * look.Text, baseline + 1.05f * look.Text);
            var to = Math.Max(chart.X(shown[i].Value), area.Left + look.Thin);
            page.Shape([(area.Left, top), (to, top), (to, bottom), (area.Left, bottom)], Palette.Blue);
            page.Text(page.Width - look.Margin, bottom, shown[i].Text, Anchor.End, Palette.Quiet, look.Text);
        }
    }
}

/// <summary>A bar.</summary>
/// <param name="Name">Above it.</param>
/// <param name="Value">Its length, on the axis.</param>
/// <param name="Text">The value as it is written.</param>
internal sealed record NamedBar(string Name, double Value, string Text);
