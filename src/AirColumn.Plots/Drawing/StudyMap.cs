using ScottPlot;

namespace AirColumn.Plots.Drawing;

/// <summary>Items of a study over two quantities.</summary>
internal static class StudyMap
{
    public static void Draw(
        Page page,
        List<StudyPoint> items,
        (string Across, string Up, string Colour) names,
        (double Least, double Most) colours
    )
    {
        var look = page.Look;
        page.Begin(
            names.Colour,
            $"{items.Count} items; from {Numbers.Plain(colours.Least, 4)}, light, to {Numbers.Plain(colours.Most, 4)}, dark"
        );
        using var chart = Begin(page, items, names.Across, names.Up);
        // The dark ones, of which there may be few, are drawn last.
        foreach (var item in items.OrderBy(item => item.Colour))
        {
            var share =
                colours.Most > colours.Least
                    ? (item.Colour - colours.Least) / (colours.Most - colours.Least)
                    : 0;
            Dot(page, chart, item, Shade(share), 0.34f * look.Text);
        }
    }

    public static void DrawFront(
        Page page,
        List<StudyPoint> items,
        List<StudyPoint> front,
        (string Across, string Up) names
    )
    {
        var look = page.Look;
        page.Begin(
            $"{names.Up} against {names.Across}",
            $"{items.Count} items, {front.Count} on the front: an item that beats one of these in one goal is worse in the other"
        );
        using var chart = Begin(page, items, names.Across, names.Up);
        foreach (var item in items)
        {
            Dot(page, chart, item, Palette.Grid, 0.22f * look.Text);
        }

        for (var i = 1; i < front.Count; i++)
        {
            var (x, y) = (chart.X(front[i].X), chart.Y(front[i - 1].Y));
            page.Line(chart.X(front[i - 1].X), y, x, y, Palette.Vermilion, look.Thin);
            page.Line(x, y, x, chart.Y(front[i].Y), Palette.Vermilion, look.Thin);
        }

        foreach (var item in front)
        {
            Dot(page, chart, item, Palette.Vermilion, 0.34f * look.Text);
        }
    }

    private static Chart Begin(Page page, List<StudyPoint> items, string across, string up)
    {
        var look = page.Look;
        var y = Scale(items.Select(item => item.Y), 6);
        var x = Scale(items.Select(item => item.X), (int)Math.Clamp(page.Width / (7 * look.Text), 2, 8));
        var area = new Bounds(
            Chart.LabelRoom(look, y),
            look.Top + 1.6f * look.Text,
            page.Width - Chart.EndRoom(look, x),
            page.Height - 4.2f * look.Text
        ).AtLeast(3 * look.Text);
        var chart = new Chart(page, area, x, y);
        chart.Draw(across, up);
        return chart;
    }

    // A little more than the values need; some width where there is but one.
    private static Axis Scale(IEnumerable<double> values, int ticks)
    {
        var (least, most) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var value in values)
        {
            (least, most) = (Math.Min(least, value), Math.Max(most, value));
        }

        var around = most > least ? 0.03 * (most - least) : Math.Max(1e-9, 0.1 * Math.Abs(most));
        return Axis.Linear(least - around, most + around, ticks);
    }

    private static void Dot(Page page, Chart chart, StudyPoint item, Color color, float side)
    {
        var (x, y) = (chart.X(item.X), chart.Y(item.Y));
        var half = side / 2;
        page.Shape([(x - half, y), (x, y - half), (x + half, y), (x, y + half)], color);
    }

    // One hue from thin to full, so that a grey print shows the same order.
    private static Color Shade(double share) => Palette.Blue.WithAlpha(0.1 + 0.9 * Math.Round(8 * share) / 8);
}
