using ScottPlot;
using SkiaSharp;

namespace AirColumn.Plots.Drawing;

/// <summary>The font that comes with the package, known to the plotting library by its name.</summary>
internal sealed class OpenFont : IFontResolver
{
    public const string Family = "Atkinson Hyperlegible";

    // Loaded once, never disposed of: they live as long as the program.
    private static readonly SKTypeface Regular = Load("Regular");
    private static readonly SKTypeface Bold = Load("Bold");

    static OpenFont() => ScottPlot.Fonts.FontResolvers.Insert(0, new OpenFont());

    private OpenFont() { }

    /// <summary>The typeface; asking for it makes it known.</summary>
    public static SKTypeface Typeface(bool bold) => bold ? Bold : Regular;

    public SKTypeface? CreateTypeface(
        string fontName,
        FontWeight weight,
        FontSlant slant,
        FontSpacing spacing
    ) => CreateTypeface(fontName, weight >= FontWeight.SemiBold, false);

    public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) =>
        fontName == Family ? Typeface(bold) : null;

    private static SKTypeface Load(string style)
    {
        var name = $"AirColumn.Plots.Fonts.AtkinsonHyperlegible-{style}.ttf";
        using var stream = typeof(OpenFont).Assembly.GetManifestResourceStream(name)!;
        return SKTypeface.FromStream(stream);
    }
}
