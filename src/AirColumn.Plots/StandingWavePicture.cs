using AirColumn.Plots.Drawing;
using UnitsNet;
using LinePattern = ScottPlot.LinePattern;

namespace AirColumn.Plots;

/// <summary>Pictures of the sound inside a column: amplitudes of pressure and flow, above a side view of the bore.</summary>
public static class StandingWavePicture
{
    private const int Points = 801;

    /// <summary>Amplitudes of pressure and volume flow along a column at one frequency, each relative to its largest value.</summary>
    /// <param name="column">The column.</param>
    /// <param name="frequency">0.001 Hz to <see cref="Column.HighestFrequency"/>.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    public static Picture Of(
        Column column,
        Frequency frequency,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        var wave = column.StandingWaveAt(frequency, Points, cancellationToken);
        var places = wave.Metres.ToArray().Select(m => 1000 * m).ToArray();
        var (pressure, mostPressure) = Parts(wave.Pressure);
        var (flow, mostFlow) = Parts(wave.Flow);
        var source = column.Options.BlownEnd.IsOpen
            ? $"Largest: {Numbers.WithUnit(mostPressure, "Pa")} and {Numbers.Plain(mostFlow, 3)} m³/s for 1 Pa outside the blown end"
            : $"Largest: {Numbers.WithUnit(mostPressure, "Pa")} and {Numbers.Plain(mostFlow, 3)} m³/s for a flow of 1 m³/s into the blown end";
        var heading = $"Standing wave at {Numbers.Fixed(frequency.Hertz, 2)} Hz";
        var shape = new BoreShape(column.Bore);
        return new Picture(
            new Scene(
                $"{heading}. {source}.",
                look => look.Top + 25 * look.Text,
                page =>
                {
                    page.Begin(heading, source);
                    Draw(page, shape, places, pressure, flow);
                }
            )
        );
    }

    private static (double[] Parts, double Most) Parts(ReadOnlySpan<System.Numerics.Complex> values)
    {
        var sizes = values.ToArray().Select(v => v.Magnitude).ToArray();
        var most = sizes.Where(double.IsFinite).DefaultIfEmpty().Max();
        return ([.. sizes.Select(s => most > 0 && double.IsFinite(s) ? s / most : 0)], most);
    }

    private static void Draw(Page page, BoreShape shape, double[] places, double[] pressure, double[] flow)
    {
        var look = page.Look;
        var across = Axis.Linear(0, shape.Length, (int)Math.Clamp(page.Width / (6 * look.Text), 2, 10));
        var up = new Axis(0, 1.04, [(0, "0"), (0.5, "0.5"), (1, "1")]);
        var left = Chart.LabelRoom(look, up);
        var whole = new Bounds(
            left,
            look.Top + 1.9f * look.Text,
            page.Width - Chart.EndRoom(look, across),
            page.Height - 4f * look.Text
        );
        var upper = (whole with { Bottom = whole.Top + 0.68f * whole.Height }).AtLeast(look.Text);
        using (var chart = new Chart(page, upper, across, up, false))
        {
            chart.Curve(places, pressure, Palette.Blue, isFilled: true);
            chart.Curve(places, flow, Palette.Vermilion, LinePattern.Dashed);
            chart.Draw(null, "Amplitude, part of the largest");
        }

        Key(page, upper);
        var lower = new Bounds(left, upper.Bottom + look.Text, whole.Right, whole.Bottom).AtLeast(look.Text);
        using var below = new Chart(
            page,
            lower,
            across,
            new Axis(-1.15 * shape.Below, 1.15 * shape.Above, [])
        );
        below.Draw("Distance from the blown end, mm");
        shape.Draw(page, below.X, below.Y);
    }

    // Which curve is which, at the right above them.
    private static void Key(Page page, Bounds area)
    {
        var look = page.Look;
        var baseline = area.Top - 0.75f * look.Text;
        var middle = baseline - 0.33f * look.Text;
        var x = area.Right;
        page.Text(x, baseline, "flow", Anchor.End, Palette.VermilionText, look.Text, true);
        x -= Page.TextWidth("flow", look.Text, true) + 0.5f * look.Text;
        page.Line(x - 2.4f * look.Text, middle, x, middle, Palette.Vermilion, look.Stroke, true);
        x -= 3.4f * look.Text;
        page.Text(x, baseline, "pressure", Anchor.End, Palette.Blue, look.Text, true);
        x -= Page.TextWidth("pressure", look.Text, true) + 0.5f * look.Text;
        page.Line(x - 2.4f * look.Text, middle, x, middle, Palette.Blue, look.Stroke);
    }
}
