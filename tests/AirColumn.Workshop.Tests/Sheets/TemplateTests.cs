using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using AirColumn.Workshop.Instruments;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tubes;
using FsCheck.Xunit;
using UnitsNet;

namespace AirColumn.Workshop.Tests.Sheets;

/// <summary>Templates are as large on paper as what they are for, and fit on A4 and Letter.</summary>
public partial class TemplateTests
{
    // 10 mm are left on every side of 210 × 279 mm, which both have.
    private const double Widest = 190;
    private const double Highest = 259;

    [Theory]
    [InlineData(20)]
    [InlineData(48.26)]
    [InlineData(110)]
    [InlineData(250)]
    public void A_strip_goes_once_round_its_pipe(double outside)
    {
        var page = Templates.SquareCut(Length.FromMillimeters(outside), LengthUnits.Both);
        var lines = Line().Matches(page).Select(match => Number(match, 2) - Number(match, 1)).ToList();
        Assert.Equal(Math.PI * outside, lines.Sum(), 0.01);
        Fits(page);
    }

    [Fact]
    public void Holes_lie_where_the_flute_has_them()
    {
        var flute = FingeredFlute.Major(
            Pitch.Parse("D4"),
            Tuning.Concert,
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50)),
            Length.FromMillimeters(19),
            Length.FromMillimeters(23.4),
            Length.FromMillimeters(9),
            [.. new double[] { 8, 9, 9, 7, 9, 9 }.Select(mm => Length.FromMillimeters(mm))]
        );
        var page = Templates.Holes(flute, LengthUnits.Millimetres);
        var circles = Circle().Matches(page);
        Assert.Equal(6, circles.Count);
        // Of two holes on one piece the distance on paper is that on the flute.
        var last = circles.Skip(0).Select(match => Number(match, 1)).Take(2).Order().ToList();
        var there = flute
            .Holes.Where(hole => hole.FromEnd.Millimeters < 170)
            .Select(hole => 170 - hole.FromEnd.Millimeters)
            .Order()
            .Take(2);
        Assert.All(last.Zip(there), pair => Assert.Equal(pair.Second, pair.First, 0.001));
        Fits(page);
    }

    // Every hole is on its piece, at its distance from the edge; on a joint it is on both pieces. The tape along the edge counts from there.
    [Property(MaxTest = 20)]
    public void Holes_of_a_pipe_lie_where_they_are_measured(int seed)
    {
        var random = new Random(seed);
        var outside = random.Next(25, 60);
        double[] at = [.. Enumerable.Range(0, 6).Select(i => 40.0 + 90 * i + random.Next(0, 60))];
        double[] wide = [.. at.Select(_ => (double)random.Next(5, 18))];
        var pipe = new PipePart(
            "pipe",
            Length.FromMillimeters(outside - 5),
            Length.FromMillimeters(outside),
            null
        );
        var page = Templates.Of(
            new TubeAssembly([
                pipe,
                .. at.Select(
                    (mm, i) =>
                        new HolePart(
                            $"hole {i}",
                            Length.FromMillimeters(wide[i]),
                            Length.FromMillimeters(mm),
                            PipeEnd.Open
                        )
                ),
            ]),
            1,
            LengthUnits.Millimetres
        );
        // Each piece is a drawing, after that of the ruler.
        var pieces = XDocument
            .Parse(
                page[
                    page.IndexOf("<main>", StringComparison.Ordinal)..(
                        page.IndexOf("</main>", StringComparison.Ordinal) + 7
                    )
                ]
            )
            .Descendants("svg")
            .Where((_, i) => i % 2 == 1)
            .ToList();
        const double Long = 170;
        var around = Math.PI * outside;
        double Of(XElement shape, string name) =>
            double.Parse((string)shape.Attribute(name)!, CultureInfo.InvariantCulture);
        var seen = new List<(int Hole, double From, double Radius)>();
        foreach (var (number, piece) in pieces.Index())
        {
            foreach (var circle in piece.Elements("circle"))
            {
                var (x, y) = (Of(circle, "cx"), Of(circle, "cy"));
                Assert.Equal(around / 2, y, 0.001);
                // Its name above it, and moved only as far as the piece goes.
                var name = piece
                    .Elements("text")
                    .Where(text => text.Value.StartsWith("hole", StringComparison.Ordinal))
                    .MinBy(text => Math.Abs(Of(text, "x") - x))!;
                Assert.True(Of(name, "y") < y - Of(circle, "r") && Math.Abs(Of(name, "x") - x) <= 24);
                var hole = name.Value["hole ".Length] - '0';
                Assert.EndsWith(
                    FormattableString.Invariant($"⌀ {wide[hole]} mm"),
                    name.Value,
                    StringComparison.Ordinal
                );
                seen.Add((hole, number * Long + (Long - x), Of(circle, "r")));
                // A cross marks its middle.
                Assert.Contains(
                    piece.Elements("line"),
                    line =>
                        Of(line, "x1") == x && Of(line, "x2") == x && Of(line, "y1") < y && Of(line, "y2") > y
                );
            }

            var marks = piece
                .Elements("line")
                .Where(line => Of(line, "x1") == Of(line, "x2") && Of(line, "y2") == Math.Round(around, 3))
                .ToList();
            Assert.Equal(
                Enumerable.Range(0, 18).Select(i => Long - 10.0 * i),
                marks.Select(mark => Of(mark, "x1"))
            );
            var words = piece
                .Elements("text")
                .Where(text => Of(text, "y") < 6)
                .ToDictionary(text => (string)text.Attribute("class")!, text => text.Value);
            Assert.Equal(
                number == 0 ? "the pipe's end towards the open end" : $"join {(char)('A' + number - 1)}",
                words["end"]
            );
            Assert.Equal(
                number == pieces.Count - 1 ? "to the lips" : $"join {(char)('A' + number)}",
                words[""]
            );
        }

        Assert.All(
            seen,
            one => Assert.Equal((at[one.Hole], wide[one.Hole] / 2), (Math.Round(one.From, 3), one.Radius))
        );
        var joints = at.Zip(
            wide,
            (mm, d) => (int)Math.Floor((mm + d / 2) / Long) - (int)Math.Floor((mm - d / 2) / Long)
        );
        Assert.Equal(at.Length + joints.Sum(), seen.Count);
        Assert.Equal(at.Length, seen.Select(one => one.Hole).Distinct().Count());
    }

    [Theory]
    [InlineData(60, 90, 33)]
    [InlineData(140, 180, 48.3)]
    [InlineData(2000, 45, 60)]
    [InlineData(50, 3600, 20)]
    public void A_bend_is_laid_on_until_it_is_whole(double radius, double angle, double outside)
    {
        var page = Templates.Bend(
            Length.FromMillimeters(radius),
            Angle.FromDegrees(angle),
            Length.FromMillimeters(outside),
            LengthUnits.Both
        );
        Fits(page);
        var turned = Turned().Match(page);
        if (turned.Success)
        {
            Assert.Equal(angle, Number(turned, 1) * Number(turned, 2), 0.05 * Number(turned, 2));
        }
    }

    private static void Fits(string page)
    {
        var sizes = Svg().Matches(page);
        Assert.True(sizes.Count >= 2);
        // Above a piece are its title, the ruler and two paragraphs of two lines each, at most 45 mm.
        Assert.All(
            sizes,
            size =>
            {
                Assert.InRange(Number(size, 1), 1, Widest);
                Assert.InRange(Number(size, 2), 1, Highest - 45);
            }
        );
        Assert.Contains("100 mm long", page, StringComparison.Ordinal);
    }

    private static double Number(Match match, int group) =>
        double.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex("<line class=\"saw\" x1=\"25\" y1=\"([^\"]+)\" x2=\"25\" y2=\"([^\"]+)\"")]
    private static partial Regex Line();

    [GeneratedRegex("<circle class=\"hole\" cx=\"([^\"]+)\"")]
    private static partial Regex Circle();

    [GeneratedRegex("<svg [^>]*width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\"")]
    private static partial Regex Svg();

    [GeneratedRegex("shows ([0-9.]+)° of the bend: lay the page on ([0-9]+) times")]
    private static partial Regex Turned();
}
