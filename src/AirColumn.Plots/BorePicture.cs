using AirColumn.Plots.Drawing;

namespace AirColumn.Plots;

/// <summary>Pictures of a bore: its side view, with lengths and diameters on separate scales.</summary>
public static class BorePicture
{
    private const float Shortest = 8; // of the text, across

    /// <summary>A bore from the side, the blown end on the left; bends laid out straight.</summary>
    /// <param name="bore">The bore.</param>
    /// <returns>The picture.</returns>
    public static Picture Of(Bore bore)
    {
        ArgumentNullException.ThrowIfNull(bore);
        var shape = new BoreShape(bore);
        var words = Words(shape);
        return new Picture(
            new Scene($"Side view of a bore: {words}", Height, page => Draw(page, shape, words))
        );
    }

    private static double Height(Look look) => look.Top + 17.5 * look.Text;

    private static string Words(BoreShape shape)
    {
        var (narrow, wide) = (Numbers.Plain(shape.Narrowest, 4), Numbers.Plain(shape.Widest, 4));
        var wideness = narrow == wide ? $"{wide} mm wide" : $"{narrow} to {wide} mm wide";
        return $"{Numbers.Plain(shape.Length, 4)} mm long, {wideness} inside, {shape.FarEnd}"
            + Count(shape.Bore.Holes.Count, "hole")
            + Count(shape.Bore.Branches.Count, "branch", "es");
    }

    private static string Count(int count, string name, string plural = "s") =>
        count switch
        {
            0 => "",
            1 => $", 1 {name}",
            _ => $", {Numbers.Plain(count)} {name}{plural}",
        };

    private static void Draw(Page page, BoreShape shape, string words)
    {
        var look = page.Look;
        page.Begin("Bore", words);
        var up = UpAxis(shape);
        var most = Axis.Linear(0, shape.Length, 10);
        var area = new Bounds(
            Chart.LabelRoom(look, up),
            look.Top + 1.9f * look.Text,
            page.Width - Chart.EndRoom(look, most),
            page.Height - 4f * look.Text
        ).AtLeast(look.Text);
        // As much taller than long as fills the page, but not flatter than it is: a short wide bore does not go all across.
        var tall = area.Height / (up.To - up.From);
        var width = Math.Clamp(shape.Length * tall, Math.Min(Shortest * look.Text, area.Width), area.Width);
        area = area with { Right = area.Left + (float)width };
        var scale = tall * shape.Length / width;
        var times = scale is > 0.95 and < 1.05
            ? ""
            : $", drawn {Numbers.Plain(scale, 2)} times as large as lengths";
        var across = Axis.Linear(0, shape.Length, (int)Math.Clamp(area.Width / (5 * look.Text), 2, 10));
        using var chart = new Chart(page, area, across, up);
        chart.Draw("Distance from the blown end, mm", $"Inside radius, mm{times}");
        shape.Draw(page, chart.X, chart.Y);
    }

    // Radii, above the axis of the bore and below it.
    private static Axis UpAxis(BoreShape shape)
    {
        var whole = Axis.Linear(0, shape.Widest / 2, 2).Ticks;
        return new Axis(
            -1.25 * shape.Below,
            1.15 * shape.Above,
            [
                .. whole.Where(t => t.At > 0).Reverse().Select(t => (-t.At, t.Label)),
                .. whole.Select(t => (t.At, t.Label)),
            ]
        );
    }
}
