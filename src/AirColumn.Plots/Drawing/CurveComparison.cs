using ScottPlot;

namespace AirColumn.Plots.Drawing;

/// <summary>Several impedance curves over the same axes, each as a level over the characteristic impedance of its own column.</summary>
internal sealed class CurveComparison
{
    // Columns without losses have no end.
    private const double MostDecibels = 80;

    private static readonly (Color Color, LinePattern Pattern)[] Kinds =
    [
        (Palette.Blue, LinePattern.Solid),
        (Palette.Vermilion, LinePattern.Dashed),
        (Palette.Green, LinePattern.DenselyDashed),
        (Palette.Ink, LinePattern.Dotted),
    ];

    private readonly (string Name, double[] Hertz, double[] Decibels)[] curves;
    private readonly Axis up;

    public CurveComparison(IReadOnlyList<(string Name, ImpedanceCurve Curve)> curves)
    {
        this.curves =
        [
            .. curves.Select(each =>
                (
                    each.Name,
                    each.Curve.Grid.Hertz.ToArray(),
                    each.Curve.Decibels().Select(db => Math.Clamp(db, -MostDecibels, MostDecibels)).ToArray()
                )
            ),
        ];
        var levels = this.curves.SelectMany(curve => curve.Decibels).Where(double.IsFinite).ToList();
        var (low, high) = (levels.Min(), levels.Max());
        var room = Math.Max(0.05 * (high - low), 1);
        up = Axis.Linear(low - room, high + room, 6);
    }

    /// <summary>The most curves that can be told apart.</summary>
    public static int Most => Kinds.Length;

    public Scene Scene() =>
        new(
            $"Input impedances compared: {string.Join(", ", curves.Select(curve => curve.Name))}, "
                + $"{Numbers.Plain(curves.Min(curve => curve.Hertz[0]), 4)} to {Numbers.Plain(curves.Max(curve => curve.Hertz[^1]), 4)} Hz.",
            look => look.Top + 24 * look.Text,
            Draw
        );

    private void Draw(Page page)
    {
        var look = page.Look;
        page.Begin("Input impedances compared", "At the blown end");
        var across = Axis.Linear(
            curves.Min(curve => curve.Hertz[0]),
            curves.Max(curve => curve.Hertz[^1]),
            (int)Math.Clamp(page.Width / (6 * look.Text), 2, 12)
        );
        var area = new Bounds(
            Chart.LabelRoom(look, up),
            look.Top + 3.4f * look.Text,
            page.Width - Chart.EndRoom(look, across),
            page.Height - 4f * look.Text
        ).AtLeast(2 * look.Text);
        using var chart = new Chart(page, area, across, up);
        for (var i = 0; i < curves.Length; i++)
        {
            chart.Curve(curves[i].Hertz, curves[i].Decibels, Kinds[i].Color, Kinds[i].Pattern);
        }

        chart.Draw("Frequency, Hz", "Level over the characteristic impedance, dB");
        Key(page, chart);
    }

    // Which curve is which: a piece of its line and its name, from the left above the chart.
    private void Key(Page page, Chart chart)
    {
        var look = page.Look;
        var baseline = chart.Area.Top - 2.3f * look.Text;
        var (x, room) = (look.Margin, (page.Width - 2 * look.Margin) / curves.Length);
        for (var i = 0; i < curves.Length; i++)
        {
            var middle = baseline - 0.33f * look.Text;
            page.Line(x, middle, x + 2.4f * look.Text, middle, Kinds[i].Color, look.Stroke, Dashes(i));
            var left = x + 2.9f * look.Text;
            page.Text(
                left,
                baseline,
                curves[i].Name,
                Anchor.Start,
                Palette.Ink,
                look.Text,
                room: room - 3.4f * look.Text
            );
            x += Math.Min(room, 4.4f * look.Text + Page.TextWidth(curves[i].Name, look.Text));
        }
    }

    // As the curves are, but short enough for a short line; in widths of the line.
    private static float[] Dashes(int curve) =>
        curve switch
        {
            0 => [],
            1 => [4, 3],
            2 => [2.5f, 1.5f],
            _ => [1, 2],
        };
}
