using ScottPlot;

namespace AirColumn.Plots.Drawing;

/// <summary>
/// Colours that people with any of the common kinds of colour blindness tell apart (source: wong2011, figure 2), and greys. What differs
/// in colour differs in shape or stroke too, so that a grey print can be read. Ink, greys, tints and the colours of text are those of the build
/// sheet by day
/// (SheetStyle in AirColumn.Workshop); a test holds them together. Text has a contrast of 4.5:1 or more on white, which two of the published
/// colours lack.
/// </summary>
internal static class Palette
{
    public static Color Blue { get; } = Color.FromHex("#0072B2");

    public static Color Vermilion { get; } = Color.FromHex("#D55E00");

    public static Color Green { get; } = Color.FromHex("#009E73");

    /// <summary>Text about what is drawn in vermilion.</summary>
    public static Color VermilionText { get; } = Color.FromHex("#A33B0A"); // --heat

    /// <summary>Text about what is drawn in green.</summary>
    public static Color GreenText { get; } = Color.FromHex("#0B5A5A"); // --sea

    public static Color Air { get; } = Color.FromHex("#D6E8E6"); // --bore

    public static Color Ink { get; } = Color.FromHex("#1C2523"); // --ink

    public static Color Quiet { get; } = Color.FromHex("#4D5A56"); // --soft

    public static Color Grid { get; } = Color.FromHex("#C3CAC3"); // --line
}
