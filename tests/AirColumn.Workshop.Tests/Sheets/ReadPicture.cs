using System.Globalization;
using System.Xml.Linq;
using AirColumn.Workshop.Sheets;

namespace AirColumn.Workshop.Tests.Sheets;

/// <summary>A picture of the workshop read back: where its shapes and words are, y downwards.</summary>
internal sealed class ReadPicture(XElement svg)
{
    public string Title => svg.Element("title")!.Value;

    /// <summary>Shapes of straight lines, in the order in which they were drawn.</summary>
    public IReadOnlyList<(string Kind, int? Part, List<(double X, double Y)> Corners)> Shapes { get; } =
    [
        .. svg.Elements()
            .Where(e => e.Name.LocalName is "path" or "polyline")
            .Select(e =>
                (
                    (string)e.Attribute("class")!,
                    (int?)e.Attribute("data-part"),
                    Corners((string)(e.Attribute("points") ?? e.Attribute("d"))!)
                )
            ),
    ];

    public IReadOnlyList<(string Kind, int? Part, double X, double Y, double Radius)> Circles { get; } =
    [
        .. svg.Elements("circle")
            .Select(e =>
                (
                    (string)e.Attribute("class")!,
                    (int?)e.Attribute("data-part"),
                    Number(e, "cx"),
                    Number(e, "cy"),
                    Number(e, "r")
                )
            ),
    ];

    public IReadOnlyList<(string Kind, int? Part, double X, double Y, string Text)> Texts { get; } =
    [
        .. svg.Elements("text")
            .Select(e =>
                (
                    (string)e.Attribute("class")!,
                    (int?)e.Attribute("data-part"),
                    Number(e, "x"),
                    Number(e, "y"),
                    e.Value.Replace('\u00a0', ' ')
                )
            ),
    ];

    public IEnumerable<List<(double X, double Y)>> Of(string kind) =>
        Shapes.Where(shape => shape.Kind == kind).Select(shape => shape.Corners);

    /// <summary>How far left and right the shapes of a kind reach.</summary>
    public (double Left, double Right) Reach(string kind) => Reach([.. Of(kind).SelectMany(c => c)]);

    public static (double Left, double Right) Reach(IReadOnlyCollection<(double X, double Y)> corners) =>
        (corners.Min(p => p.X), corners.Max(p => p.X));

    /// <summary>Its dimensions: from where to where, how high, and what is written at them.</summary>
    public List<(double From, double To, double Y, string Text)> Dimensions() =>
        [
            .. Of("size")
                .Where(line => line[0].Y == line[1].Y)
                .Select(line =>
                {
                    var ((from, to), y) = (Reach(line), line[0].Y);
                    // A tick through each end.
                    Assert.All(
                        [from, to],
                        end =>
                            Assert.Contains(
                                Of("size"),
                                tick => tick.All(p => p.X == end) && tick[0].Y < y && tick[1].Y > y
                            )
                    );
                    var text = Texts.Where(t => t.Kind == "middle").MinBy(t => Math.Abs(t.Y - y));
                    Assert.Equal((from + to) / 2, text.X, 0.02);
                    // Clear of the line, whether above or below.
                    Assert.NotInRange(text.Y - y, -2, 12);
                    return (from, to, y, text.Text);
                }),
        ];

    /// <summary>All pictures of a page.</summary>
    public static List<ReadPicture> AllOf(string page)
    {
        var start = page.IndexOf("<body>", StringComparison.Ordinal);
        return
        [
            .. XDocument
                .Parse(
                    page[start..page.IndexOf("</html>", StringComparison.Ordinal)]
                        .Replace("<wbr>", "", StringComparison.Ordinal)
                )
                .Descendants("svg")
                .Select(svg => new ReadPicture(svg)),
        ];
    }

    public static ReadPicture Side(Workshop.Tubes.AssembledTube tube, double width) =>
        new(XElement.Parse(TubePictures.Side(tube, width, LengthUnits.Millimetres)));

    /// <summary>The number at the beginning of a text, or behind its sign of a diameter.</summary>
    public static double Value(string text) =>
        double.Parse(text.TrimStart('⌀', ' ', '(').Split(' ', '°')[0], CultureInfo.InvariantCulture);

    private static double Number(XElement shape, string name) =>
        double.Parse((string)shape.Attribute(name)!, CultureInfo.InvariantCulture);

    private static List<(double X, double Y)> Corners(string list) =>
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
}
