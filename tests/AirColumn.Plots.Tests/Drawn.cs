using System.Globalization;
using System.Xml.Linq;
using SkiaSharp;

namespace AirColumn.Plots.Tests;

/// <summary>What an SVG holds, read as a viewer would.</summary>
internal sealed class Drawn
{
    private readonly XDocument document;

    public Drawn(Picture picture) => document = XDocument.Parse(picture.Svg());

    /// <summary>All texts, in the order they were drawn.</summary>
    public IReadOnlyList<string> Texts => [.. Named("text").Select(text => text.Value.Trim())];

    /// <summary>All colours of lines, areas and texts.</summary>
    public IEnumerable<string> Colours =>
        document
            .Descendants()
            .SelectMany(e => new[] { (string?)e.Attribute("fill"), (string?)e.Attribute("stroke") })
            .OfType<string>()
            .Where(color => color != "none");

    public string Title => Named("title").Single().Value;

    public IEnumerable<XElement> Named(string name) =>
        document.Descendants().Where(e => e.Name.LocalName == name);

    /// <summary>Where each text stands, measured with the bundled font, a little less high than its line.</summary>
    public IReadOnlyList<(string Text, SKRect Box)> TextBoxes =>
        [
            .. Named("text")
                .Where(text => text.Value.Trim().Length > 0)
                .Select(text =>
                {
                    var shown = text.Value.Trim();
                    var (x, y, size) = (First(text, "x"), First(text, "y"), First(text, "font-size"));
                    using var font = new SKFont(
                        Drawing.OpenFont.Typeface(text.Attribute("font-weight") is not null),
                        size
                    )
                    {
                        Hinting = SKFontHinting.None,
                        Subpixel = true,
                    };
                    var (dx, dy) = Shift(text);
                    return (
                        shown,
                        SKRect.Create(x + dx, y + dy - 0.7f * size, font.MeasureText(shown), 0.75f * size)
                    );
                }),
        ];

    public XElement Root => document.Root!;

    private static float First(XElement element, string name) =>
        float.Parse(((string)element.Attribute(name)!).Split(',')[0], CultureInfo.InvariantCulture);

    // Of a text and all groups around it.
    private static (float X, float Y) Shift(XElement text)
    {
        var (x, y) = (0f, 0f);
        foreach (
            var transform in text.AncestorsAndSelf()
                .Select(e => (string?)e.Attribute("transform"))
                .OfType<string>()
        )
        {
            var numbers = transform
                .Replace("translate(", "", StringComparison.Ordinal)
                .TrimEnd(')')
                .Split([',', ' '], StringSplitOptions.RemoveEmptyEntries);
            x += float.Parse(numbers[0], CultureInfo.InvariantCulture);
            y += numbers.Length > 1 ? float.Parse(numbers[1], CultureInfo.InvariantCulture) : 0;
        }

        return (x, y);
    }
}
