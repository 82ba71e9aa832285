using System.Globalization;
using System.Xml.Linq;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tubes;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests.Sheets;

/// <summary>The impedance chart of a tube, read back by its own numbers: hertz across, decibels up.</summary>
public class ChartTests
{
    [Theory]
    [InlineData("C2", 38)]
    [InlineData("F#2", 50)]
    [InlineData("A2", 25)]
    [InlineData("C5", 20)]
    public void Peaks_and_multiples_are_where_the_numbers_say(string name, double inside)
    {
        var note = Pitch.Parse(name);
        var parts = new TubeAssembly([new PipePart("pipe", Mm(inside), Mm(inside + 6), null)]);
        var cut = TubeBuilder.Exact(parts, note, Tuning.Concert, Room);
        var chart = new ReadPicture(XElement.Parse(TubePictures.Impedance(cut, note, Tuning.Concert)));
        var target = Tuning.Concert.FrequencyOf(note).Hertz;

        // A line at each multiple of the note that is shown; the numbers below are at their lines, and with four digits every other one.
        var lines = chart.Of("harmonic").Select(line => line[0].X).ToList();
        double Hertz(double x) => target * (1 + (x - lines[0]) / (lines[1] - lines[0]));
        var curve = chart.Of("curve").Single();
        var (left, right) = ReadPicture.Reach(curve);
        Assert.Equal(lines, lines.Order());
        // Positions are written to a hundredth.
        var pixel = 0.03 * target / (lines[1] - lines[0]);
        Assert.All(
            lines.Index(),
            line => Assert.Equal((line.Index + 1) * target, Hertz(line.Item), (line.Index + 2) * pixel)
        );
        Assert.Equal(0.4 * target, Hertz(left), pixel);
        Assert.InRange(Hertz(right), lines.Count * target, (lines.Count + 1) * target);
        Assert.Equal(9, lines.Count);
        var bottom = chart.Of("harmonic").Max(line => line.Max(p => p.Y));
        var numbers = chart
            .Texts.Where(text => text.Kind == "middle" && text.Y > bottom && text.Text.All(char.IsDigit))
            .ToList();
        Assert.Equal(target > 106 ? 5 : 9, numbers.Count);
        Assert.All(
            numbers,
            number =>
            {
                var line = lines.IndexOf(number.X);
                Assert.Equal(((line + 1) * target).ToString("0", CultureInfo.InvariantCulture), number.Text);
            }
        );

        // Tens of decibels, at their lines, and the curve between the lowest and the highest.
        var levels = chart.Texts.Where(text => text.Kind == "end").ToList();
        var grid = chart.Of("grid").Select(line => line[0].Y).ToList();
        Assert.Equal(grid.Count, levels.Count);
        Assert.All(levels.Zip(grid), pair => Assert.Equal(pair.Second + 4, pair.First.Y, 0.02));
        double Level(double y) =>
            ReadPicture.Value(levels[0].Text)
            + (y - grid[0])
                / (grid[^1] - grid[0])
                * (ReadPicture.Value(levels[^1].Text) - ReadPicture.Value(levels[0].Text));
        Assert.All(
            levels.Zip(grid),
            pair => Assert.Equal(ReadPicture.Value(pair.First.Text), Level(pair.Second), 0.01)
        );
        Assert.All(
            levels.Zip(levels.Skip(1)),
            pair => Assert.Equal(10, ReadPicture.Value(pair.Second.Text) - ReadPicture.Value(pair.First.Text))
        );
        Assert.InRange(
            curve.Min(p => Level(p.Y)),
            ReadPicture.Value(levels[0].Text) - 0.05,
            ReadPicture.Value(levels[0].Text) + 10
        );
        Assert.InRange(
            curve.Max(p => Level(p.Y)),
            ReadPicture.Value(levels[^1].Text) - 10,
            ReadPicture.Value(levels[^1].Text) + 0.05
        );

        // A ring on each peak; above it the note, and between them the cents.
        var column = cut.Exact!.Column;
        var resonances = cut.Resonances!.Where(one => one.Frequency.Hertz < Hertz(right)).ToList();
        Assert.Equal(resonances.Count, chart.Circles.Count);
        foreach (var (resonance, peak) in resonances.Zip(chart.Circles))
        {
            Assert.Equal(resonance.Frequency.Hertz, Hertz(peak.X), 10 * pixel);
            Assert.Equal(
                20
                    * Math.Log10(
                        column.ImpedanceAt(resonance.Frequency).Magnitude / column.CharacteristicImpedance
                    ),
                Level(peak.Y),
                0.05
            );
            var reading = resonance.Nearest(Tuning.Concert);
            var near = chart
                .Texts.Where(text => Math.Abs(text.X - peak.X) < 0.02 && text.Y < peak.Y)
                .ToList();
            var (pitch, cents) = (near.Single(t => t.Kind == "strong"), near.Single(t => t.Kind == "middle"));
            Assert.Equal(reading.Pitch.ToString(), pitch.Text);
            Assert.Equal(reading.Cents, ReadPicture.Value(cents.Text), 0.5);
            Assert.True(pitch.Y < cents.Y - 11 && cents.Y < peak.Y - peak.Radius);
        }
    }
}
