using System.Globalization;
using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;

namespace AirColumn.Workshop.Sheets;

/// <summary>
/// |Z| at the lips against frequency: each resonance with the note nearest to it, and the multiples of the note aimed at.
/// </summary>
internal static class ImpedanceChart
{
    private const double Width = 340;
    private const double Height = 240;
    private const double Left = 30;
    private const double Right = 10;
    private const double Top = 52;
    private const double Bottom = 38;
    private const int Points = 900;

    public static Drawing Of(
        Pitch note,
        Tuning tuning,
        BuiltTube built,
        ResonanceList resonances,
        CancellationToken cancellationToken
    )
    {
        var target = tuning.FrequencyOf(note).Hertz;
        var highest = Math.Min(9.5 * target, 0.99 * built.Column.HighestFrequency.Hertz);
        var lowest = 0.4 * target;
        var curve = built.Column.Impedance(FrequencyGrid.Linear(lowest, highest, Points), cancellationToken);
        var level = new double[Points];
        for (var i = 0; i < Points; i++)
        {
            level[i] = 20 * Math.Log10(curve[i].Magnitude / built.Column.CharacteristicImpedance);
        }

        var (floor, ceiling) = (10 * Math.Floor(level.Min() / 10), 10 * Math.Ceiling(level.Max() / 10));
        var drawing = new Drawing(
            Width,
            Height,
            SheetWords.ResonanceChart,
            string.Join("; ", Peaks(tuning, built, resonances).Select(SheetWords.Peak)) + "."
        );
        for (var db = floor; db <= ceiling; db += 10)
        {
            drawing.Line("grid", Left, Y(db), Width - Right, Y(db));
            drawing.Text("end", Left - 4, Y(db) + 4, db.ToString("0", CultureInfo.InvariantCulture));
        }

        // A number takes four digits at most before they would touch.
        var every = highest >= 1000 ? 2 : 1;
        for (var multiple = 1; multiple * target <= highest; multiple++)
        {
            var x = X(multiple * target);
            drawing.Line("harmonic", x, Top, x, Height - Bottom);
            if (multiple % every == 0 || multiple == 1)
            {
                drawing.Text(
                    "middle",
                    x,
                    Height - Bottom + 15,
                    (multiple * target).ToString("0", CultureInfo.InvariantCulture)
                );
            }
        }

        drawing.Outline("curve", [.. level.Select((db, i) => (X(curve.Grid.Hertz[i]), Y(db)))], false);
        foreach (var peak in Peaks(tuning, built, resonances).Where(peak => peak.Hertz < highest))
        {
            var (x, y) = (X(peak.Hertz), Y(peak.Decibels));
            drawing.Circle("peak", x, y, 3.5);
            drawing.Text("strong", Math.Max(x, Left + 12), y - 19, peak.Note);
            drawing.Text(
                "middle",
                Math.Max(x, Left + 12),
                y - 7,
                FormattableString.Invariant($"{peak.Cents:+0;-0;0}")
            );
        }

        drawing.Text("middle", (Left + Width - Right) / 2, Height - 6, SheetWords.FrequencyAxis);
        drawing.Text("start", 2, 13, SheetWords.LevelAxis);
        return drawing;

        double X(double hertz) => Left + (Width - Left - Right) * (hertz - lowest) / (highest - lowest);
        double Y(double db) => Top + (Height - Top - Bottom) * (ceiling - db) / (ceiling - floor);
    }

    /// <summary>The data of the picture.</summary>
    public static IReadOnlyList<ImpedancePeak> Peaks(
        Tuning tuning,
        BuiltTube built,
        ResonanceList resonances
    ) =>
        [
            .. resonances.Select(
                (resonance, i) =>
                {
                    var reading = resonance.Nearest(tuning);
                    return new ImpedancePeak(
                        i + 1,
                        resonance.Frequency.Hertz,
                        reading.Pitch.ToString(),
                        reading.Cents,
                        20 * Math.Log10(resonance.Magnitude / built.Column.CharacteristicImpedance),
                        resonance.QualityFactor
                    );
                }
            ),
        ];
}

/// <summary>A peak of the chart.</summary>
internal readonly record struct ImpedancePeak(
    int Number,
    double Hertz,
    string Note,
    double Cents,
    double Decibels,
    double QualityFactor
);
