using FsCheck;
using FsCheck.Fluent;
using UnitsNet;
using static AirColumn.Plots.Tests.Columns;

namespace AirColumn.Plots.Tests;

/// <summary>What is drawn of columns at random, read back by the numbers at the axes, against what it is of.</summary>
public class ReadBackTests
{
    private const string Blue = "#0072B2";
    private const string Vermilion = "#D55E00";
    private const string VermilionText = "#A33B0A";
    private const string Green = "#009E73";
    private const string Ink = "#1C2523";

    // The mark is where the resonance is, its bar and the ends of the bar where 19 out of 20 are.
    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(Tubes)])]
    internal void Error_bars_are_as_wide_as_said(Tube tube)
    {
        var budgets = tube.Budgets();
        var picture = new ReadBack(TuningPicture.WithUncertainty(budgets));
        var scale = picture.Across();
        var lines = picture.Lines(Blue);
        var (bars, ends) = (
            lines.Where(line => line[0].Y == line[^1].Y).ToList(),
            lines.Where(line => line[0].X == line[^1].X).ToList()
        );
        Assert.Equal(budgets.Count, bars.Count);
        Assert.Equal(2 * budgets.Count, ends.Count);
        foreach (var (budget, (bar, mark)) in budgets.Zip(bars.Zip(picture.Marks(Vermilion))))
        {
            var cents = budget.Resonance.Nearest(Tuning.Concert).Cents;
            Assert.Equal(cents, scale.At(mark.X), 0.1);
            Assert.Equal(cents - budget.PlusMinusCents, scale.At(bar[0].X), 0.1);
            Assert.Equal(cents + budget.PlusMinusCents, scale.At(bar[^1].X), 0.1);
            Assert.Equal(bar[0].Y, mark.Y, 0.1);
            Assert.All(
                [bar[0], bar[^1]],
                end =>
                    Assert.Contains(
                        ends,
                        line => line[0].X == end.X && line.Min(p => p.Y) < end.Y && line.Max(p => p.Y) > end.Y
                    )
            );
        }
    }

    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(Tubes)])]
    internal void Stems_reach_from_the_note_to_the_resonance(Tube tube)
    {
        var resonances = tube.Column.FirstResonances(4);
        var picture = new ReadBack(TuningPicture.Of(resonances));
        var scale = picture.Across();
        var stems = picture.Lines(Vermilion);
        Assert.Equal(resonances.Count, stems.Count);
        foreach (var (resonance, (stem, mark)) in resonances.Zip(stems.Zip(picture.Marks(Vermilion))))
        {
            var cents = resonance.Nearest(Tuning.Concert).Cents;
            Assert.Equal(0, scale.At(stem[0].X), 0.1);
            Assert.Equal(cents, scale.At(stem[^1].X), 0.1);
            Assert.Equal(cents, scale.At(mark.X), 0.1);
        }
    }

    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(Tubes)])]
    internal void Bars_are_as_long_as_their_axis_says(Tube tube)
    {
        var budget = tube.Budgets()[0];
        var picture = new ReadBack(BudgetPicture.Of(budget));
        var (scale, bars) = (picture.Across(), picture.Areas(Blue));
        Assert.Equal(budget.Contributions.Count, bars.Count);
        Assert.True(picture.Has("Standard deviation from each alone, cents"));
        foreach (var (part, bar) in budget.Contributions.Zip(bars))
        {
            Assert.Equal(0, scale.At(bar.Min(p => p.X)), 0.02);
            Assert.Equal(
                part.StandardDeviationCents,
                scale.At(bar.Max(p => p.X)),
                // A thin line is left of what is nothing.
                0.02 + 0.015 * budget.Contributions[0].StandardDeviationCents
            );
        }
    }

    // Of two that vary evenly and an answer with each as a term, the squares of the factors are in proportion.
    [Draws(quick: 5, inLong: 50, Arbitrary = [typeof(Tubes)])]
    internal void Shares_are_as_long_as_their_axis_says(Tube tube)
    {
        // Never as much of either.
        var factor = tube.Length < 900 ? tube.Length / 1000 - 0.2 : tube.Length / 700;
        var one = Enumerable.Range(0, 900).Select(i => (double)(i % 30)).ToList();
        var other = Enumerable.Range(0, 900).Select(i => (double)(i / 30)).ToList();
        var answer = new StudyQuantity("answer", one.Zip(other, (a, b) => factor * a + b));
        var picture = new ReadBack(
            StudyPicture.Shares(answer, [new StudyQuantity("one", one), new StudyQuantity("other", other)])
        );
        var (scale, bars) = (picture.Across(), picture.Areas(Blue));
        var share = factor * factor / (factor * factor + 1);
        double[] expected = [Math.Max(share, 1 - share), Math.Min(share, 1 - share)];
        Assert.True(
            picture.Text(share > 0.5 ? "one" : "other").Y < picture.Text(share > 0.5 ? "other" : "one").Y
        );
        foreach (var (part, bar) in expected.Zip(bars))
        {
            Assert.Equal(100 * part, scale.At(bar.Max(p => p.X)), 0.3);
            Assert.True(picture.Has($"{Math.Round(scale.At(bar.Max(p => p.X)))} %"));
        }
    }

    // Impedance of single frequencies: its size on one scale, its phase on the other, a mark on each resonance, a line on each note.
    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(Tubes)])]
    internal void Impedance_is_where_its_scales_say(Tube tube)
    {
        var picture = new ReadBack(ImpedancePicture.Of(tube.Column));
        var across = picture.Across();
        var (size, turn) = (
            picture.Up(value => value > 0 && value != 90),
            picture.Up(value => value is 0 or 90 or -90)
        );
        Assert.True(size.IsLogarithmic);
        Assert.True(picture.Has("|Z|, MPa·s/m³"));
        var curves = picture.Lines(Blue).Where(line => line.Count > 500).ToList();
        Assert.Equal(2, curves.Count);
        for (var i = 0; i < curves[0].Count; i += 29)
        {
            var (x, y) = curves[0][i];
            var hertz = across.At(x);
            (double Size, double Degrees) Z(double f)
            {
                var z = tube.Column.ImpedanceAt(Frequency.FromHertz(f));
                return (z.Magnitude, z.Phase * 180 / Math.PI);
            }

            // A tenth of a pixel to either side, where the curve is steep.
            var by = across.Tenth(x);
            var (low, high) = (Z(hertz - by), Z(hertz + by));
            var here = Z(hertz);
            Assert.InRange(
                Math.Log10(1e6 * size.At(y)),
                Math.Log10(Math.Min(here.Size, Math.Min(low.Size, high.Size))) - 0.01,
                Math.Log10(Math.Max(here.Size, Math.Max(low.Size, high.Size))) + 0.01
            );
            Assert.InRange(
                turn.At(curves[1][i].Y),
                Math.Min(here.Degrees, Math.Min(low.Degrees, high.Degrees)) - 1,
                Math.Max(here.Degrees, Math.Max(low.Degrees, high.Degrees)) + 1
            );
        }

        var resonances = tube.Column.FirstResonances(8);
        var marks = picture.Marks(Vermilion);
        Assert.Equal(resonances.Count, marks.Count);
        foreach (var (resonance, mark) in resonances.Zip(marks))
        {
            Assert.Equal(resonance.Frequency.Hertz, across.At(mark.X), 3 * across.Tenth(mark.X));
            Assert.Equal(Math.Log10(resonance.Magnitude / 1e6), Math.Log10(size.At(mark.Y)), 0.02);
        }

        var notes = resonances
            .Select(resonance => resonance.Nearest(Tuning.Concert).Pitch)
            .Distinct()
            .Select(pitch => Tuning.Concert.FrequencyOf(pitch).Hertz)
            .ToList();
        var lines = picture.Areas(Green).Select(line => across.At(line.Average(p => p.X))).ToList();
        // Each once in either part.
        Assert.Equal(2 * notes.Count, lines.Count);
        Assert.All(
            notes,
            note => Assert.Equal(2, lines.Count(line => Math.Abs(line - note) < 10 * across.Tenth(0)))
        );
    }

    // Each curve is what the key says, in its colour and its stroke: the dashes of flow, the line of pressure.
    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(Tubes)])]
    internal void The_key_names_the_curves(Tube tube)
    {
        var hertz = tube.Column.FirstResonances(3)[2].Frequency;
        var picture = new ReadBack(StandingWavePicture.Of(tube.Column, hertz));
        var (across, up) = (picture.Across(), picture.Up(_ => true));
        var wave = tube.Column.StandingWaveAt(hertz, 2001);
        double[] pressure = [.. wave.Pressure.ToArray().Select(p => p.Magnitude)];
        double[] flow = [.. wave.Flow.ToArray().Select(u => u.Magnitude)];
        double Part(double[] sizes, double millimetres)
        {
            var metres = wave.Metres;
            var nearest = 0;
            for (var i = 0; i < metres.Length; i++)
            {
                nearest =
                    Math.Abs(1000 * metres[i] - millimetres) < Math.Abs(1000 * metres[nearest] - millimetres)
                        ? i
                        : nearest;
            }

            return sizes[nearest] / sizes.Max();
        }

        // The lines are two pixels wide.
        double Off(List<(double X, double Y)> points, double[] sizes) =>
            points
                .Where((_, i) => i % 17 == 0)
                .Select(p => Math.Abs(up.At(p.Y) - Part(sizes, across.At(p.X))))
                .Average();

        var line = picture.Lines(Blue).MaxBy(points => points.Count)!;
        var dashes = picture.Areas(Vermilion).MaxBy(points => points.Count)!;
        Assert.InRange(Off(line, pressure), 0, 0.01);
        Assert.InRange(Off(dashes, flow), 0, 0.02);
        Assert.True(Off(line, flow) > 0.1 && Off(dashes, pressure) > 0.1);
        foreach (
            var (name, colour, text) in new[] { ("pressure", Blue, Blue), ("flow", Vermilion, VermilionText) }
        )
        {
            var word = picture.Text(name);
            Assert.Equal(text, word.Colour);
            var samples = name == "pressure" ? picture.Lines(colour) : picture.Areas(colour);
            Assert.Contains(
                samples,
                sample =>
                    sample.All(p => p.X < word.X && p.X > word.X - 60 && p.Y < word.Y && p.Y > word.Y - 14)
            );
        }
    }

    // Each item is where its values are; the darker, the more.
    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(Tubes)])]
    internal void A_map_has_each_item_in_its_place(Tube tube)
    {
        var random = new Random((int)(1000 * tube.Length));
        var items = Enumerable
            .Range(0, 60)
            .Select(_ => (X: 100 * random.NextDouble(), Y: random.NextDouble() - 0.5, C: random.NextDouble()))
            .ToList();
        StudyQuantity Of(string name, Func<(double X, double Y, double C), double> value) =>
            new(name, items.Select(value));
        var picture = new ReadBack(
            StudyPicture.Map(Of("x", one => one.X), Of("y", one => one.Y), Of("c", one => one.C))
        );
        var (across, up) = (picture.Across(), picture.Up(_ => true));
        var dots = picture
            .Areas(Blue)
            .Select(dot => (X: dot.Average(p => p.X), Y: dot.Average(p => p.Y)))
            .ToList();
        Assert.Equal(items.Count, dots.Count);
        // Drawn from the lightest, in nine steps.
        var shades = picture.Opacities(Blue);
        Assert.Equal(shades.Order(), shades);
        Assert.True(shades[0] < 0.2 && shades[^1] == 1);
        foreach (var (item, dot) in items.OrderBy(item => item.C).Zip(dots))
        {
            Assert.Equal(item.X, across.At(dot.X), 0.5);
            Assert.Equal(item.Y, up.At(dot.Y), 0.006);
        }
    }

    // The wall goes on without a gap: along both tubes, and from one to the other where they meet.
    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(Tubes)])]
    internal void The_wall_of_a_step_is_whole(Tube tube)
    {
        var picture = new ReadBack(BorePicture.Of(tube.Column.Bore));
        var across = picture.Across();
        var lines = picture
            .Lines(Ink)
            .Where(line => line.Count == 2)
            .Select(line => line.OrderBy(p => p.X).ThenBy(p => p.Y).ToList())
            .ToList();
        var axis = Between(0, tube.Length, lines).Average();
        foreach (var side in (int[])[1, -1])
        {
            var first = Between(0, tube.Length, lines).Single(y => side * (y - axis) > 0);
            var second = Between(tube.Length, tube.Length + 150, lines).Single(y => side * (y - axis) > 0);
            Assert.Equal((tube.Diameter + tube.End) / tube.Diameter, (second - axis) / (first - axis), 0.01);
            Assert.Contains(
                lines,
                line =>
                    line.All(p => Math.Abs(across.At(p.X) - tube.Length) < 2)
                    && Math.Abs(line[0].Y - Math.Min(first, second)) < 0.1
                    && Math.Abs(line[1].Y - Math.Max(first, second)) < 0.1
            );
        }

        // How high the level lines are that reach from one place to another.
        List<double> Between(double from, double to, List<List<(double X, double Y)>> drawn) =>
            [
                .. drawn
                    .Where(line =>
                        line[0].Y == line[1].Y
                        && Math.Abs(across.At(line[0].X) - from) < 2
                        && Math.Abs(across.At(line[1].X) - to) < 2
                    )
                    .Select(line => line[0].Y),
            ];
    }

    /// <summary>A tube with a step, mm.</summary>
    internal sealed record Tube(double Length, double Diameter, double End)
    {
        public Column Column { get; } =
            new(
                Bore.Build()
                    .Cylinder(Mm(Diameter), Mm(Length))
                    .Cylinder(Mm(Diameter + End), Mm(150))
                    .OpenEnd(Mm(3)),
                Columns.Air
            );

        public IReadOnlyList<ResonanceBudget> Budgets() =>
            Column.Budgets(
                Column.FirstResonances(3),
                [
                    new Tolerance(ColumnParameter.SectionLength(0), Mm(Length / 300)),
                    new Tolerance(ColumnParameter.Diameter(1), Mm(End / 10)),
                    Tolerance.Temperature(TemperatureDelta.FromKelvins(Diameter / 15)),
                ]
            );
    }

    public static class Tubes
    {
        internal static Arbitrary<Tube> Drawn() =>
            (
                from length in Gen.Choose(4000, 14000)
                from diameter in Gen.Choose(250, 450)
                from end in Gen.Choose(30, 150)
                select new Tube(length / 10.0, diameter / 10.0, end / 10.0)
            ).ToArbitrary();
    }
}
