using System.Globalization;
using AirColumn.Acoustics;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Sheets;

/// <summary>
/// |Z| at the lips against frequency: each resonance with the note nearest to it, and the multiples of the note aimed at.
/// </summary>
internal static class ImpedanceChart
{
    private const double Width = 720;
    private const double Height = 250;
    private const double Left = 46;
    private const double Right = 14;
    private const double Top = 40;
    private const double Bottom = 36;
    private const int Points = 1400;

    public static Drawing Of(TubeBuild build, BuiltTube built)
    {
        var target = build.Tuning.FrequencyOf(build.Note).Hertz;
        var highest = Math.Min(9.5 * target, 0.99 * built.Column.HighestFrequency.Hertz);
        var lowest = 0.4 * target;
        var curve = built.Column.Impedance(FrequencyGrid.Linear(lowest, highest, Points));
        var level = new double[Points];
        for (var i = 0; i < Points; i++)
        {
            level[i] = 20 * Math.Log10(curve[i].Magnitude / built.Column.CharacteristicImpedance);
        }

        var (floor, ceiling) = (10 * Math.Floor(level.Min() / 10), 10 * Math.Ceiling(level.Max() / 10));
        var drawing = new Drawing(Width, Height, SheetWords.ResonanceChart);
        for (var db = floor; db <= ceiling; db += 10)
        {
            drawing.Line("grid", Left, Y(db), Width - Right, Y(db));
            drawing.Text("end", Left - 6, Y(db) + 4, db.ToString("0", CultureInfo.InvariantCulture));
        }

        for (var multiple = 1; multiple * target <= highest; multiple++)
        {
            var x = X(multiple * target);
            drawing.Line("harmonic", x, Top, x, Height - Bottom);
            drawing.Text(
                "middle",
                x,
                Height - Bottom + 14,
                (multiple * target).ToString("0", CultureInfo.InvariantCulture)
            );
        }

        drawing.Outline("curve", [.. level.Select((db, i) => (X(curve.Grid.Hertz[i]), Y(db)))], false);
        foreach (var resonance in build.Resonances!.Where(r => r.Frequency.Hertz < highest))
        {
            var reading = resonance.Nearest(build.Tuning);
            var (x, y) = (
                X(resonance.Frequency.Hertz),
                Y(20 * Math.Log10(resonance.Magnitude / built.Column.CharacteristicImpedance))
            );
            drawing.Circle("peak", x, y, 3.5);
            drawing.Text("strong", x, y - 18, reading.Pitch.ToString());
            drawing.Text("small", x, y - 7, FormattableString.Invariant($"{reading.Cents:+0;-0;0}"));
        }

        drawing.Text("middle", (Left + Width - Right) / 2, Height - 6, SheetWords.FrequencyAxis);
        drawing.Text("start", 4, 14, SheetWords.LevelAxis);
        return drawing;

        double X(double hertz) => Left + (Width - Left - Right) * (hertz - lowest) / (highest - lowest);
        double Y(double db) => Top + (Height - Top - Bottom) * (ceiling - db) / (ceiling - floor);
    }
}
