using System.Globalization;
using System.Xml.Linq;

namespace AirColumn.Plots.Tests;

/// <summary>A chart of an SVG, read back as a reader does: by the numbers at its axes.</summary>
internal sealed class ReadBack
{
    private readonly List<XElement> shapes;
    private readonly List<(string Text, double X, double Y, XElement Element)> texts;

    public ReadBack(Picture picture)
    {
        var drawn = new Drawn(picture);
        shapes = [.. drawn.Root.Descendants().Where(e => e.Name.LocalName is "path" or "ellipse")];
        texts =
        [
            .. drawn
                .Named("text")
                .Select(text =>
                {
                    var (dx, dy) = Shift(text);
                    return (
                        text.Value.Trim(),
                        dx + Numbers((string)text.Attribute("x")!)[0],
                        dy + Numbers((string)text.Attribute("y")!)[0],
                        text
                    );
                }),
        ];
    }

    /// <summary>The scale of the axis across whose numbers stand lowest.</summary>
    public Scale Across() =>
        new([
            .. Axis(text => Shift(text).Y)
                .MaxBy(numbers => numbers.Key)!
                .Select(one => (Shift(one.Element).X, Value(one.Text))),
        ]);

    /// <summary>The scale of an axis up, by which numbers it has.</summary>
    /// <param name="isOfIt">Whether a number is one of that axis.</param>
    public Scale Up(Func<double, bool> isOfIt) =>
        new([
            .. Axis(text => Shift(text).X)
                .First()
                .Where(one => isOfIt(Value(one.Text)))
                .Select(one => (Shift(one.Element).Y, Value(one.Text))),
        ]);

    /// <summary>The numbers beside the axis up, and how high they stand.</summary>
    public IReadOnlyList<(double Place, double Value)> Numbers() =>
        [.. Axis(text => Shift(text).X).First().Select(one => (Shift(one.Element).Y, Value(one.Text)))];

    /// <summary>The text, and where it begins.</summary>
    public (string Colour, double X, double Y) Text(string text)
    {
        var one = texts.Single(t => t.Text == text);
        return ((string)one.Element.Attribute("fill")!, one.X, one.Y);
    }

    public bool Has(string text) => texts.Any(one => one.Text == text);

    /// <summary>The corners of each line of a colour, in the order in which they were drawn.</summary>
    public List<List<(double X, double Y)>> Lines(string colour) => Paths("stroke", colour);

    /// <summary>The corners of each area of a colour.</summary>
    public List<List<(double X, double Y)>> Areas(string colour) => Paths("fill", colour);

    /// <summary>How much of what lies below each area of a colour hides, 0 to 1.</summary>
    public List<double> Opacities(string colour) =>
        [
            .. shapes
                .Where(e => (string?)e.Attribute("fill") == colour && e.Name.LocalName == "path")
                .Select(e => Numbers((string?)e.Attribute("fill-opacity") ?? "1")[0]),
        ];

    /// <summary>The middles of the marks of a colour.</summary>
    public List<(double X, double Y)> Marks(string colour) =>
        [
            .. shapes
                .Where(e => e.Name.LocalName == "ellipse" && (string?)e.Attribute("fill") == colour)
                .Select(e =>
                    (Numbers((string)e.Attribute("cx")!)[0], Numbers((string)e.Attribute("cy")!)[0])
                ),
        ];

    private List<List<(double X, double Y)>> Paths(string kind, string colour) =>
        [
            .. shapes
                .Where(e => (string?)e.Attribute(kind) == colour && e.Name.LocalName == "path")
                .Select(e =>
                {
                    var numbers = Numbers((string)e.Attribute("d")!);
                    return Enumerable
                        .Range(0, numbers.Count / 2)
                        .Select(i => (numbers[2 * i], numbers[2 * i + 1]))
                        .ToList();
                }),
        ];

    // Numbers beside an axis are moved to their mark as a whole, and stand in a row.
    private IEnumerable<IGrouping<double, (string Text, XElement Element)>> Axis(
        Func<XElement, double> place
    ) =>
        texts
            .Where(one => one.Element.Attribute("transform") is not null)
            .Select(one => (one.Text, one.Element))
            .GroupBy(one => Math.Round(place(one.Element), 1))
            .Where(row => row.Count() > 1);

    private static double Value(string text) =>
        double.Parse(text.Replace('−', '-'), CultureInfo.InvariantCulture);

    private static (double X, double Y) Shift(XElement text) =>
        (string?)text.Attribute("transform") is { } transform && Numbers(transform) is [var x, var y]
            ? (x, y)
            : (0, 0);

    private static List<double> Numbers(string text) =>
        [
            .. text.Split(
                    [' ', ',', '(', ')', 'M', 'L', 'Z', 't', 'r', 'a', 'n', 's', 'l', 'e'],
                    StringSplitOptions.RemoveEmptyEntries
                )
                .Select(number => double.Parse(number, CultureInfo.InvariantCulture)),
        ];

    /// <summary>From places to values, by the first and the last number of an axis.</summary>
    internal sealed class Scale
    {
        private readonly (double Place, double Value) first;
        private readonly (double Place, double Value) last;

        public Scale(IReadOnlyList<(double Place, double Value)> numbers)
        {
            Assert.True(numbers.Count > 1, "an axis with fewer than two numbers");
            (first, last) = (numbers[0], numbers[^1]);
            // Every other number stands where these two say.
            IsLogarithmic =
                numbers.Count > 2
                && numbers.All(one => one.Value > 0)
                && Misfit(numbers, Of) > Misfit(numbers, OfLogarithm);
            Assert.InRange(IsLogarithmic ? Misfit(numbers, OfLogarithm) : Misfit(numbers, Of), 0, 0.005);
        }

        public bool IsLogarithmic { get; }

        public double At(double place) => IsLogarithmic ? OfLogarithm(place) : Of(place);

        /// <summary>How much a tenth of a pixel is, there.</summary>
        public double Tenth(double place) => Math.Abs(At(place + 0.1) - At(place));

        private double Share(double place) => (place - first.Place) / (last.Place - first.Place);

        private double Of(double place) => first.Value + Share(place) * (last.Value - first.Value);

        private double OfLogarithm(double place) =>
            first.Value * Math.Pow(last.Value / first.Value, Share(place));

        private static double Misfit(
            IReadOnlyList<(double Place, double Value)> numbers,
            Func<double, double> scale
        ) =>
            numbers.Max(one => Math.Abs(scale(one.Place) - one.Value))
            / numbers.Max(one => Math.Abs(one.Value));
    }
}
