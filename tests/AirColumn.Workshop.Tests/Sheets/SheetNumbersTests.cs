using System.Globalization;
using System.Xml.Linq;
using AirColumn.Workshop.Measurements;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tests.Tubes;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace AirColumn.Workshop.Tests.Sheets;

/// <summary>What the sheet draws and lists, read back and computed in another way.</summary>
public class SheetNumbersTests
{
    private static readonly TubeBuild Build = TubeBuilder.Plan(
        TubeBuilderTests.Stepped,
        Pitch.Parse("D2"),
        Tuning.Concert,
        TubeBuilderTests.Room
    );

    private static readonly XElement Page = Body(BuildSheet.Html(Build, "", LengthUnits.Millimetres));

    // The scales are those of the labels beside them: decibels from Z of single frequencies, hertz from the multiples of the note.
    [Fact]
    public void The_curve_is_where_its_scales_say()
    {
        var chart = Page.Descendants("svg")
            .Single(svg =>
                svg.Descendants("polyline").Any(line => (string?)line.Attribute("class") == "curve")
            );
        var ruler = Labels(chart, "end");
        var (y0, db0, y1, db1) = (
            Number(ruler[0], "y") - 4,
            double.Parse(ruler[0].Value, CultureInfo.InvariantCulture),
            Number(ruler[^1], "y") - 4,
            double.Parse(ruler[^1].Value, CultureInfo.InvariantCulture)
        );
        Assert.NotEqual(db0, db1);
        double[] multiples =
        [
            .. chart
                .Descendants()
                .Where(shape => (string?)shape.Attribute("class") == "harmonic")
                .Select(bar =>
                    bar.Attribute("x1") is null
                        ? Points((string)bar.Attribute("points")!)[0].X
                        : Number(bar, "x1")
                ),
        ];
        Assert.True(multiples.Length > 5, chart.ToString()[..3000]);
        var target = Tuning.Concert.FrequencyOf(Build.Note).Hertz;
        var outline = Points(
            (string)
                chart
                    .Descendants()
                    .Single(shape => (string?)shape.Attribute("class") == "curve")
                    .Attributes()
                    .Single(a => a.Name.LocalName is "points" or "d")
        );
        Assert.True(outline.Count > 500);
        var column = Build.Exact!.Column;
        // Positions are written to a hundredth, and across the flank of a peak that is more than up.
        foreach (var (x, y) in outline.Where((_, i) => i % 37 == 0))
        {
            var hertz = target * (1 + (x - multiples[0]) / (multiples[1] - multiples[0]));
            double Level(double f) =>
                20
                * Math.Log10(
                    column.ImpedanceAt(Frequency.FromHertz(f)).Magnitude / column.CharacteristicImpedance
                );
            var slope = Math.Abs(Level(1.001 * hertz) - Level(0.999 * hertz));
            Assert.Equal(Level(hertz), db0 + (y - y0) / (y1 - y0) * (db1 - db0), 0.2 + slope);
        }
    }

    // The narrow mouthpiece is at the lips, and the ruler's words at the ends they name.
    [Fact]
    public void The_lips_are_where_the_mouthpiece_is()
    {
        var drawing = Page.Descendants("svg").First();
        var words = drawing.Descendants("text").ToList();
        var lips = Number(words.Single(text => text.Value == "lips"), "x");
        var outline = Points(
            (string)
                drawing
                    .Descendants()
                    .First(shape => (string?)shape.Attribute("class") == "bore")
                    .Attributes()
                    .Single(a => a.Name.LocalName is "points" or "d")
        );
        var (left, right) = (outline.Min(p => p.X), outline.Max(p => p.X));
        double Wide(double x) =>
            outline.Where(p => Math.Abs(p.X - x) < 0.05).Max(p => p.Y)
            - outline.Where(p => Math.Abs(p.X - x) < 0.05).Min(p => p.Y);
        var (at, other) = Math.Abs(lips - left) < Math.Abs(lips - right) ? (left, right) : (right, left);
        Assert.Equal(at, lips, 0.05);
        // 30 mm inside there, 52.2 mm at the open end.
        Assert.Equal(30 / 52.2, Wide(at) / Wide(other), 0.01);
    }

    // What is cut off and what is left are the first cut together, the part in the sockets too.
    [Fact]
    public void Each_row_of_the_trim_table_adds_up_to_the_first_cut()
    {
        var rows = Page.Descendants("table")
            .Single(table =>
                table.Element("caption")?.Value.Contains("Each cut", StringComparison.Ordinal) == true
            )
            .Descendants("tr")
            .Select(row => row.Elements().Select(cell => cell.Value).ToList())
            .Where(cells => cells[0].Contains("mm", StringComparison.Ordinal))
            .ToList();
        Assert.True(rows.Count > 3);
        Assert.All(
            rows,
            cells =>
                Assert.Equal(
                    Build.FirstCut!.Cut.Millimeters,
                    Millimetres(cells[0]) + Millimetres(cells[1]),
                    0.11
                )
        );
    }

    // Before anything was heard the tube is as unsure as its parts and its player: variances add.
    [Theory]
    [InlineData("D2", 1120)]
    [InlineData("C2", 1260)]
    public void The_first_trim_counts_the_tolerances_of_the_tube(string note, double cut)
    {
        var advice = TrimAdvice.For(
            TubeBuilderTests.Stepped,
            Tuning.Concert.FrequencyOf(Pitch.Parse(note)),
            Length.FromMillimeters(cut),
            TubeBuilderTests.Room,
            []
        );
        var tolerances = TubeBuilder.Tolerances(advice.Tube, TubeBuilderTests.Room, new BuildOptions());
        // Each tolerance by itself; a 95 % range is 1.96 standard deviations to either side.
        var variance = tolerances.Sum(tolerance =>
        {
            var half = advice.Column.Budgets([advice.Resonance], [tolerance])[0].StandardDeviationCents;
            return half * half;
        });
        var player = advice.Correction.StandardDeviationCents;
        Assert.True(variance > 10, $"{variance} cents²");
        Assert.Equal(
            1.96 * Math.Sqrt(variance + player * player),
            advice.Table.Rows[0].PlusMinusCents,
            0.05 * advice.Table.Rows[0].PlusMinusCents
        );
    }

    private static List<XElement> Labels(XElement chart, string style) =>
        [.. chart.Descendants("text").Where(text => (string?)text.Attribute("class") == style)];

    private static double Number(XElement shape, string name) =>
        double.Parse((string)shape.Attribute(name)!, CultureInfo.InvariantCulture);

    private static double Millimetres(string text) =>
        double.Parse(
            text.Replace("mm", "", StringComparison.Ordinal).Trim(' ', '\u00a0'),
            CultureInfo.InvariantCulture
        );

    private static List<(double X, double Y)> Points(string list) =>
        [
            .. list.Split([' ', 'M', 'L', 'Z'], StringSplitOptions.RemoveEmptyEntries)
                .Select(point => point.Split(','))
                .Select(xy =>
                    (
                        double.Parse(xy[0], CultureInfo.InvariantCulture),
                        double.Parse(xy[1], CultureInfo.InvariantCulture)
                    )
                ),
        ];

    private static XElement Body(string page)
    {
        var start = page.IndexOf("<body>", StringComparison.Ordinal);
        return XDocument
            .Parse(
                page[start..page.IndexOf("</html>", StringComparison.Ordinal)]
                    .Replace("<wbr>", "", StringComparison.Ordinal)
            )
            .Root!;
    }
}
