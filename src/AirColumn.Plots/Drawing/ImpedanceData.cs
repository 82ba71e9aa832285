using ScottPlot;

namespace AirColumn.Plots.Drawing;

/// <summary>A curve of impedance with what is marked on it, ready to draw.</summary>
internal sealed class ImpedanceData
{
    // Beyond a thousand times above or below the middle is shown cut off: columns without losses have no end.
    private const double MostDecades = 3;

    private static readonly (double Factor, string Unit)[] Units =
    [
        (1, "Pa·s/m³"),
        (1e3, "kPa·s/m³"),
        (1e6, "MPa·s/m³"),
        (1e9, "GPa·s/m³"),
        (1e12, "TPa·s/m³"),
    ];

    private readonly double[] hertz;
    private readonly double[] magnitude;
    private readonly double[] phase;
    private readonly ImpedanceView view;
    private readonly List<Mark> marks;
    private readonly List<(double Hertz, string Name)> notes;
    private readonly string unit;
    private readonly double low;
    private readonly double high;

    public ImpedanceData(ImpedanceCurve curve, IReadOnlyList<Resonance> resonances, ImpedanceView view)
    {
        this.view = view;
        var from = view.From?.Hertz ?? 0;
        var to = view.To?.Hertz ?? double.PositiveInfinity;
        ImpedancePicture.RequireOrder(from, to, nameof(view));
        var kept = Enumerable
            .Range(0, curve.Count)
            .Where(i => curve.Grid.Hertz[i] >= from && curve.Grid.Hertz[i] <= to)
            .Where(i => curve[i].Magnitude is > 0 and < double.PositiveInfinity)
            .ToList();
        if (kept.Count < 2)
        {
            throw new ArgumentOutOfRangeException(
                nameof(view),
                kept.Count,
                $"The view has {kept.Count} frequencies at which the curve is finite and not zero; it needs 2 at least. Widen it."
            );
        }

        hertz = [.. kept.Select(i => curve.Grid.Hertz[i])];
        var sizes = kept.Select(i => curve[i].Magnitude).ToList();
        phase = [.. kept.Select(i => curve[i].Phase * 180 / Math.PI)];
        var middle = sizes.Order().ElementAt(sizes.Count / 2);
        (var factor, unit) = Units.Last(u =>
            u.Factor <= Math.Clamp(sizes.Max(), 1, 1e3 * middle) || u.Factor == 1
        );
        magnitude = [.. sizes.Select(m => Math.Log10(m / factor))];
        low = Math.Max(magnitude.Min(), Math.Log10(middle / factor) - MostDecades);
        high = Math.Min(magnitude.Max(), Math.Log10(middle / factor) + MostDecades);
        if (high - low < 0.3)
        {
            (low, high) = ((low + high) / 2 - 0.15, (low + high) / 2 + 0.15);
        }

        marks =
        [
            .. resonances
                .Where(r => r.Frequency.Hertz >= hertz[0] && r.Frequency.Hertz <= hertz[^1])
                .Select(r => Mark.Of(r, view.Tuning, Math.Log10(middle), LevelAt(r.Frequency.Hertz))),
        ];
        notes =
        [
            .. (view.Notes ?? [.. marks.Where(m => m.Note is not null).Select(m => m.Note!.Value.Pitch)])
                .Distinct()
                .Select(pitch => (view.Tuning.FrequencyOf(pitch).Hertz, pitch.ToString()))
                .Where(note => note.Hertz >= hertz[0] && note.Hertz <= hertz[^1])
                .OrderBy(note => note.Hertz),
        ];
    }

    public Scene Scene() =>
        new(
            $"Input impedance from {Numbers.Plain(hertz[0], 4)} to {Numbers.Plain(hertz[^1], 4)} Hz"
                + (
                    marks.Count == 0
                        ? "."
                        : $" with resonances at {string.Join(", ", marks.Select(m => m.Words))}."
                ),
            look => look.Top + (view.HasPhase ? 31 : 24) * look.Text,
            Draw
        );

    private double LevelAt(double at)
    {
        var i = Array.BinarySearch(hertz, at);
        if (i >= 0)
        {
            return magnitude[i];
        }

        i = Math.Clamp(~i, 1, hertz.Length - 1);
        var share = (at - hertz[i - 1]) / (hertz[i] - hertz[i - 1]);
        return magnitude[i - 1] + share * (magnitude[i] - magnitude[i - 1]);
    }

    private void Draw(Page page)
    {
        var look = page.Look;
        page.Begin(
            "Input impedance",
            marks.Count == 0 && notes.Count == 0
                ? "At the blown end"
                : $"At the blown end; resonances with their distance from a note in cents; {view.Tuning}"
        );
        var span = high - low;
        var (room0, room1) = (
            marks.Any(m => !m.IsPeak) ? 0.16 : 0.04,
            marks.Any(m => m.IsPeak) ? 0.16 : 0.04
        );
        var across = Axis.Linear(hertz[0], hertz[^1], (int)Math.Clamp(page.Width / (6 * look.Text), 2, 12));
        var left = new Bounds(
            0,
            look.Top + 3.1f * look.Text,
            page.Width - Chart.EndRoom(look, across),
            page.Height - 4f * look.Text
        );
        var upper = view.HasPhase
            ? left with
            {
                Bottom = left.Top + 0.66f * (left.Height - 2.2f * look.Text),
            }
            : left;
        var up = Axis.Logarithmic(
            Math.Pow(10, low - room0 * span),
            Math.Pow(10, high + room1 * span),
            (int)Math.Clamp(upper.Height / (1.9 * look.Text), 2, 12)
        );
        var turn = new Axis(-95, 95, [(-90, "−90"), (0, "0"), (90, "90")]);
        var start = Chart.LabelRoom(look, up, turn);
        upper = (upper with { Left = start }).AtLeast(2 * look.Text);
        using var chart = new Chart(page, upper, across, up, !view.HasPhase);
        NoteLines(chart, up);
        var clipped = magnitude.Select(m => Math.Clamp(m, low, high)).ToArray();
        chart.Curve(hertz, clipped, Palette.Blue, isFilled: true);
        var levels = marks.Select(m => Math.Clamp(m.Level, low, high)).ToArray();
        chart.Marks([.. marks.Select(m => m.Hertz)], levels, Palette.Vermilion);
        chart.Draw(view.HasPhase ? null : "Frequency, Hz");
        page.Text(
            look.Margin,
            upper.Top - 2.1f * look.Text,
            $"|Z|, {unit}",
            Anchor.Start,
            Palette.Quiet,
            look.Text
        );
        NoteNames(page, chart);
        Deviations(page, chart, levels);
        if (view.HasPhase)
        {
            var lower = new Bounds(start, upper.Bottom + 2.4f * look.Text, left.Right, left.Bottom).AtLeast(
                look.Text
            );
            using var below = new Chart(page, lower, across, turn);
            NoteLines(below, turn);
            below.Curve(hertz, phase, Palette.Blue);
            below.Draw("Frequency, Hz", "Phase of Z, degrees");
        }
    }

    private void NoteLines(Chart chart, Axis up)
    {
        foreach (var (at, _) in notes)
        {
            chart.Line(at, up.From, at, up.To, Palette.Green, chart.Thin, LinePattern.Dashed);
        }
    }

    // Side by side above the chart; where two would touch the later one is left out.
    private void NoteNames(Page page, Chart chart)
    {
        var taken = float.NegativeInfinity;
        foreach (var (at, name) in notes)
        {
            var half = Page.TextWidth(name, page.Look.Text, true) / 2;
            var x = Math.Clamp(chart.X(at), chart.Area.Left + half, page.Width - half - 2);
            if (x - half > taken)
            {
                page.Text(
                    x,
                    chart.Area.Top - 0.45f * page.Look.Text,
                    name,
                    Anchor.Middle,
                    Palette.GreenText,
                    page.Look.Text,
                    true
                );
                taken = x + half + 0.4f * page.Look.Text;
            }
        }
    }

    private void Deviations(Page page, Chart chart, double[] levels)
    {
        var look = page.Look;
        var taken = float.NegativeInfinity;
        for (var i = 0; i < marks.Count; i++)
        {
            if (marks[i].Note is not { } note)
            {
                continue;
            }

            var text = Numbers.Cents(note.Cents);
            var half = Page.TextWidth(text, look.Small) / 2;
            var x = Math.Clamp(chart.X(marks[i].Hertz), chart.Area.Left + half, page.Width - half - 2);
            if (x - half > taken)
            {
                var y = chart.Y(levels[i]);
                var baseline = marks[i].IsPeak ? y - 0.65f * look.Text : y + 1.35f * look.Text;
                page.Clear(x - half, baseline - 0.78f * look.Small, x + half, baseline + 0.08f * look.Small);
                page.Text(x, baseline, text, Anchor.Middle, Palette.VermilionText, look.Small, true);
                taken = x + half + 0.3f * look.Text;
            }
        }
    }

    /// <summary>A resonance as it is marked.</summary>
    private sealed record Mark(double Hertz, double Level, bool IsPeak, PitchReading? Note)
    {
        public string Words => $"{Numbers.Fixed(Hertz, 2)} Hz{(Note is { } note ? $" ({note})" : "")}";

        public static Mark Of(Resonance resonance, Tuning tuning, double middle, double level) =>
            new(
                resonance.Frequency.Hertz,
                level,
                Math.Log10(resonance.Magnitude) >= middle,
                // Notes have names from 1 Hz to 100 kHz.
                resonance.Frequency.Hertz
                    is >= 1
                        and <= 100_000
                    ? resonance.Nearest(tuning)
                    : null
            );
    }
}
