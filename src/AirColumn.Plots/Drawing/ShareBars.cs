namespace AirColumn.Plots.Drawing;

/// <summary>Shares of a whole as bars.</summary>
internal static class ShareBars
{
    public static void Draw(Page page, List<(string Name, double Share)> shares, string of)
    {
        var look = page.Look;
        page.Begin(
            $"What moves the {of}",
            $"together {Numbers.Fixed(100 * shares.Sum(one => one.Share), 0)} % by each alone; the rest by several at once, or by chance"
        );
        var shown = shares
            .Take(Math.Max(1, (int)((page.Height - look.Top - 5.2f * look.Text) / (2.2f * look.Text) + 0.01)))
            .ToList();
        var valueRoom = Page.TextWidth("100 %", look.Text);
        var area = new Bounds(
            look.Margin,
            look.Top + 0.6f * look.Text,
            page.Width - look.Margin - valueRoom - look.Text,
            page.Height - 4.2f * look.Text
        ).AtLeast(3 * look.Text);
        var most = Math.Max(1, Math.Ceiling(10 * shown.Max(one => one.Share)) * 10);
        var across = Axis.Linear(0, most, (int)Math.Clamp(area.Width / (6 * look.Text), 2, 8));
        using var chart = new Chart(page, area, across, new Axis(shown.Count + 0.65, 0.5, []));
        chart.Draw("Share of the variance, %");
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
            var to = Math.Max(chart.X(100 * shown[i].Share), area.Left + look.Thin);
            page.Shape([(area.Left, top), (to, top), (to, bottom), (area.Left, bottom)], Palette.Blue);
            page.Text(
                page.Width - look.Margin,
                bottom,
                $"{Numbers.Fixed(100 * shown[i].Share, 0)} %",
                Anchor.End,
                Palette.Quiet,
                look.Text
            );
        }
    }
}
