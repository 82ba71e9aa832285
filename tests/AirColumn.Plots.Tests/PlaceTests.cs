using SkiaSharp;
using UnitsNet;
using static AirColumn.Plots.Tests.Columns;

namespace AirColumn.Plots.Tests;

/// <summary>Words and numbers of a picture stand at what they are about.</summary>
public class PlaceTests
{
    private const string Blue = "#0072B2";
    private const string Vermilion = "#D55E00";
    private const string Green = "#009E73";

    // In a row: the note, the frequency, the mark, and at the right the cents; the rows in order downwards.
    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(ReadBackTests.Tubes)])]
    internal void Each_row_of_a_tuning_stands_at_its_mark(ReadBackTests.Tube tube)
    {
        var budgets = tube.Budgets();
        (Picture, IReadOnlyList<Resonance>)[] pictures =
        [
            (TuningPicture.Of(tube.Column.FirstResonances(4)), tube.Column.FirstResonances(4)),
            (TuningPicture.WithUncertainty(budgets), budgets.Select(budget => budget.Resonance).ToList()),
        ];
        foreach (var (picture, resonances) in pictures)
        {
            var read = new ReadBack(picture);
            var boxes = new Drawn(picture).TextBoxes;
            var marks = read.Marks(Vermilion);
            Assert.Equal(marks.Select(mark => mark.Y).Order(), marks.Select(mark => mark.Y));
            foreach (var (resonance, mark) in resonances.Zip(marks))
            {
                var row = boxes
                    .Where(box => box.Box.Top < mark.Y && box.Box.Bottom > mark.Y)
                    .OrderBy(box => box.Box.Left)
                    .ToList();
                var reading = resonance.Nearest(Tuning.Concert);
                Assert.Equal(3, row.Count);
                Assert.Equal(reading.Pitch.ToString(), row[0].Text);
                Assert.Equal($"{Drawing.Numbers.Fixed(resonance.Frequency.Hertz, 2)} Hz", row[1].Text);
                Assert.StartsWith(
                    Drawing.Numbers.Cents(reading.Cents),
                    row[2].Text,
                    StringComparison.Ordinal
                );
                Assert.All(row, box => Assert.Equal(mark.Y, Middle(box.Box).Y, 2.5));
                Assert.True(row[1].Box.Right < mark.X && mark.X < row[2].Box.Left);
            }

            // All cents end at the right, and the line of the notes is at nought, under its word.
            var zero = new ReadBack(picture).Areas(Green).SelectMany(dash => dash).Average(p => p.X);
            Assert.Equal(0, read.Across().At(zero), 0.2);
            Assert.Equal(zero, Middle(boxes.Single(box => box.Text == "note").Box).X, 0.6);
        }
    }

    // A bar is under its name, and its value at its height to its right.
    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(ReadBackTests.Tubes)])]
    internal void Each_bar_is_under_its_name_and_before_its_value(ReadBackTests.Tube tube)
    {
        var budget = tube.Budgets()[0];
        var picture = BudgetPicture.Of(budget);
        var boxes = new Drawn(picture).TextBoxes;
        var above = 0.0;
        foreach (var (part, bar) in budget.Contributions.Zip(new ReadBack(picture).Areas(Blue)))
        {
            var (top, bottom, right) = (bar.Min(p => p.Y), bar.Max(p => p.Y), bar.Max(p => p.X));
            var name = boxes.Single(box => box.Text == part.Tolerance.ToString()).Box;
            var value = boxes.Single(box =>
                box.Text.EndsWith($"{Drawing.Numbers.Fixed(100 * part.Share, 1)} %", StringComparison.Ordinal)
                && box.Box.Bottom > top
                && box.Box.Top < bottom
            );
            Assert.StartsWith(
                Drawing.Numbers.Fixed(part.StandardDeviationCents, 2),
                value.Text,
                StringComparison.Ordinal
            );
            Assert.InRange(name.Bottom, name.Top, top);
            Assert.True(name.Top > above);
            Assert.Equal(bar.Min(p => p.X), name.Left, 0.1);
            Assert.True(value.Box.Left > right);
            above = bottom;
        }
    }

    // In a low picture only as many as there is room for, from the first: none on another, and not so few that one more would fit.
    [Theory]
    [InlineData(170)]
    [InlineData(260)]
    [InlineData(420)]
    [InlineData(900)]
    public void As_many_bars_as_there_is_room_for(int height)
    {
        const int All = 14;
        var random = new Random(1);
        var names = Enumerable.Range(0, All).Select(i => $"parameter {(char)('a' + i)}").ToList();
        var values = names.ConvertAll(_ =>
            Enumerable.Range(0, 400).Select(_ => random.NextDouble()).ToList()
        );
        // The first moves the answer most.
        var answer = Enumerable
            .Range(0, 400)
            .Select(item => values.Select((each, i) => each[item] * Math.Pow(0.7, i)).Sum());
        var picture = StudyPicture
            .Shares(
                new StudyQuantity("answer", answer),
                [.. names.Zip(values, (name, each) => new StudyQuantity(name, each))]
            )
            .At(PictureSize.OnScreen(600, height));
        var boxes = new Drawn(picture).TextBoxes;
        var bars = new ReadBack(picture).Areas(Blue);
        Assert.All(
            boxes,
            one => Assert.DoesNotContain(boxes, other => other != one && other.Box.IntersectsWith(one.Box))
        );
        var named = boxes
            .Where(box => box.Text.StartsWith("parameter", StringComparison.Ordinal))
            .OrderBy(box => box.Box.Top)
            .ToList();
        Assert.Equal(bars.Count, named.Count);
        Assert.StartsWith("parameter a", named[0].Text, StringComparison.Ordinal);
        Assert.Equal(height == 900, bars.Count == All);
        var axis = boxes.Where(box => box.Text == "0").Max(box => box.Box.Top);
        Assert.All(bars, bar => Assert.True(bar.Max(p => p.Y) < axis));
        if (bars.Count is > 1 and < All)
        {
            // A bar with its name is 2.2 lines of text high.
            var each = (bars[^1][0].Y - bars[0][0].Y) / (bars.Count - 1);
            var text = new Drawn(picture)
                .Named("text")
                .Min(e =>
                    float.Parse(
                        (string)e.Attribute("font-size")!,
                        System.Globalization.CultureInfo.InvariantCulture
                    )
                );
            Assert.InRange(each, 2.2 * text, 2.2 * text * (bars.Count + 1) / bars.Count + 1);
        }
    }

    // The name of a note over its line, the cents at their mark: above a peak, below a dip; where two would touch, the later is left out.
    [Theory]
    [InlineData("impedance")]
    [InlineData("flute")]
    public void Notes_and_cents_stand_at_their_resonances(string kind)
    {
        var column = kind == "flute" ? Flute : Horn;
        var (read, boxes) = (new ReadBack(Pictures[kind]), new Drawn(Pictures[kind]).TextBoxes);
        var across = read.Across();
        var lines = read.Areas(Green).Select(line => line.Average(p => p.X)).ToList();
        var (named, said) = (0, 0);
        foreach (var (resonance, mark) in column.FirstResonances(8).Zip(read.Marks(Vermilion)))
        {
            var reading = resonance.Nearest(Tuning.Concert);
            var note = boxes.Where(box => box.Text == reading.Pitch.ToString()).ToList();
            var hertz = Tuning.Concert.FrequencyOf(reading.Pitch).Hertz;
            foreach (var (_, box) in note)
            {
                named++;
                Assert.Contains(lines, x => Math.Abs(x - Middle(box).X) < 1);
                Assert.Equal(hertz, across.At(Middle(box).X), 10 * across.Tenth(0));
            }

            foreach (
                var (_, box) in boxes.Where(box =>
                    box.Text == Drawing.Numbers.Cents(reading.Cents)
                    && Math.Abs(Middle(box.Box).X - mark.X) < 1
                )
            )
            {
                said++;
                Assert.Equal(kind == "flute", Middle(box).Y > mark.Y);
                Assert.InRange(Math.Abs(Middle(box).Y - mark.Y), 4, 20);
            }
        }

        Assert.True(named >= 6 && said >= 6, $"{named} names, {said} cents");
    }

    // Also where a picture is narrow: a text that is too wide is set smaller, then cut short.
    [Theory]
    [InlineData(240, 400)]
    [InlineData(320, 300)]
    [InlineData(600, 300)]
    public void No_text_runs_off_the_page(int width, int height)
    {
        foreach (var (kind, picture) in Pictures)
        {
            Assert.All(
                new Drawn(picture.At(PictureSize.OnScreen(width, height))).TextBoxes,
                box =>
                    Assert.True(
                        box.Box.Left >= 0 && box.Box.Right <= width + 0.5,
                        $"{kind}: {box.Text} {box.Box}"
                    )
            );
        }
    }

    private static (double X, double Y) Middle(SKRect box) => (box.MidX, box.MidY);
}
