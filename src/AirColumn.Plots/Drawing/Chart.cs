using ScottPlot;
using ScottPlot.TickGenerators;
using SkiaSharp;

namespace AirColumn.Plots.Drawing;

/// <summary>
/// Curves and marks over a pair of axes in our look: no frame, quiet lines across, what the heights are in a line above them.
/// </summary>
internal sealed class Chart : IDisposable
{
    private readonly Page page;
    private readonly Plot plot = new();
    private readonly Axis x;
    private readonly Axis y;

    /// <summary>A chart.</summary>
    /// <param name="page">Where it is drawn.</param>
    /// <param name="area">Where its data go; marks of the axes lie outside.</param>
    /// <param name="x">Across.</param>
    /// <param name="y">Up.</param>
    /// <param name="isBottom">Whether the numbers below the x axis are shown, as they are in the lowest of several charts.</param>
    public Chart(Page page, Bounds area, Axis x, Axis y, bool isBottom = true)
    {
        (this.page, this.x, this.y, Area) = (page, x, y, area);
        _ = OpenFont.Typeface(false);
        plot.RenderManager.ClearCanvasBeforeEachRender = false;
        plot.FigureBackground.Color = Colors.Transparent;
        plot.DataBackground.Color = Colors.Transparent;
        // The library marks no axis of a plot without anything in it.
        plot.Add.Scatter(new[] { x.From, x.To }, new[] { y.From, y.To }).IsVisible = false;
        plot.Axes.SetLimits(x.From, x.To, y.From, y.To);
        plot.Layout.Fixed(area.Pixels);
        plot.Axes.Right.IsVisible = false;
        plot.Axes.Top.IsVisible = false;
        var look = page.Look;
        Style(plot.Axes.Bottom, look, isBottom ? x : x with { Ticks = [.. x.Ticks.Select(t => (t.At, ""))] });
        Style(plot.Axes.Left, look, y);
        plot.Axes.Left.FrameLineStyle.Width = 0;
        plot.Axes.Left.MajorTickStyle.Length = 0;
        plot.Grid.XAxisStyle.IsVisible = false;
        plot.Grid.YAxisStyle.MajorLineStyle.Color = Palette.Grid;
        plot.Grid.YAxisStyle.MajorLineStyle.Width = look.Thin;
    }

    /// <summary>Where the data go.</summary>
    public Bounds Area { get; }

    /// <summary>The axis across.</summary>
    public Axis XAxis => x;

    /// <summary>Width of a thin line.</summary>
    public float Thin => page.Look.Thin;

    /// <summary>How much room the numbers of an axis need to its left.</summary>
    public static float LabelRoom(Look look, params ReadOnlySpan<Axis> axes)
    {
        var widest = 0f;
        foreach (var axis in axes)
        {
            foreach (var (_, label) in axis.Ticks)
            {
                widest = Math.Max(widest, Page.TextWidth(label, look.Text));
            }
        }

        return look.Margin + widest + 0.8f * look.Text;
    }

    /// <summary>How much room the last number below the x axis may need to the right of its end.</summary>
    public static float EndRoom(Look look, Axis across) =>
        Math.Max(
            look.Margin,
            0.5f * (across.Ticks.Count > 0 ? Page.TextWidth(across.Ticks[^1].Label, look.Text) : 0)
                + 0.5f * look.Text
        );

    public float X(double value) => Area.Left + (float)((value - x.From) / (x.To - x.From)) * Area.Width;

    public float Y(double value) => Area.Bottom - (float)((value - y.From) / (y.To - y.From)) * Area.Height;

    /// <summary>A curve; with <paramref name="isFilled"/> the air below it is tinted.</summary>
    public void Curve(
        double[] xs,
        double[] ys,
        Color color,
        LinePattern? pattern = null,
        bool isFilled = false
    )
    {
        if (xs.Length == 0)
        {
            return;
        }

        var curve = plot.Add.Scatter(xs, ys, color);
        curve.MarkerSize = 0;
        curve.LineWidth = page.Look.Stroke;
        curve.LinePattern = pattern ?? LinePattern.Solid;
        if (isFilled)
        {
            curve.FillY = true;
            curve.FillYValue = y.From;
            curve.FillYColor = Palette.Air.WithAlpha(0.55);
        }
    }

    /// <summary>Marks at places, ringed in white so that they stand out from the curve.</summary>
    public void Marks(double[] xs, double[] ys, Color color, MarkerShape shape = MarkerShape.FilledCircle)
    {
        if (xs.Length == 0)
        {
            return;
        }

        var ring = plot.Add.Markers(xs, ys, shape, 1.45f * page.Look.Marker, Colors.White);
        ring.MarkerStyle.LineWidth = 0;
        var marks = plot.Add.Markers(xs, ys, shape, page.Look.Marker, color);
        marks.MarkerStyle.LineWidth = 0;
    }

    /// <summary>A straight line from one place to another.</summary>
    public void Line(
        double x1,
        double y1,
        double x2,
        double y2,
        Color color,
        float stroke,
        LinePattern? pattern = null
    )
    {
        var line = plot.Add.Line(x1, y1, x2, y2);
        line.LineColor = color;
        line.LineWidth = stroke;
        line.LinePattern = pattern ?? LinePattern.Solid;
        line.MarkerSize = 0;
    }

    /// <summary>Draws it, with what the axes are measured in.</summary>
    public void Draw(string? acrossTitle, string upTitle = "")
    {
        var whole = new PixelRect(0, page.Width, page.Height, 0);
        // The library draws a plot twice the first time, to place its axes. Once is for nobody to see.
        using (var nowhere = new SKNoDrawCanvas((int)page.Width, (int)page.Height))
        {
            plot.Render(nowhere, whole);
        }

        page.GoOn();
        plot.Render(page.Canvas, whole);
        page.GoOn();
        var look = page.Look;
        page.Text(
            look.Margin,
            Area.Top - 0.75f * look.Text,
            upTitle,
            Anchor.Start,
            Palette.Quiet,
            look.Text,
            room: page.Width - 2 * look.Margin
        );
        if (acrossTitle is not null)
        {
            // Where it is wider than all that is to the left of the end, it begins at the left.
            var isWide = Page.TextWidth(acrossTitle, look.Text) > Area.Right - look.Margin;
            page.Text(
                isWide ? look.Margin : Area.Right,
                Area.Bottom + 2.9f * look.Text,
                acrossTitle,
                isWide ? Anchor.Start : Anchor.End,
                Palette.Quiet,
                look.Text,
                room: page.Width - 2 * look.Margin
            );
        }
    }

    public void Dispose() => plot.Dispose();

    private static void Style(IAxis axis, Look look, Axis marks)
    {
        axis.TickGenerator = new NumericManual(
            [.. marks.Ticks.Select(t => t.At)],
            [.. marks.Ticks.Select(t => t.Label)]
        );
        axis.FrameLineStyle.Color = Palette.Ink;
        axis.FrameLineStyle.Width = 1.4f * look.Thin;
        axis.MajorTickStyle.Color = Palette.Ink;
        axis.MajorTickStyle.Width = look.Thin;
        axis.MajorTickStyle.Length = 0.35f * look.Text;
        axis.MinorTickStyle.Length = 0;
        axis.TickLabelStyle.FontName = OpenFont.Family;
        axis.TickLabelStyle.FontSize = look.Text;
        axis.TickLabelStyle.ForeColor = Palette.Quiet;
    }
}
