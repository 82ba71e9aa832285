using ScottPlot;

namespace AirColumn.Plots.Drawing;

/// <summary>
/// Colours that people with any of the common kinds of colour blindness tell apart (source: wong2011, figure 2), and greys. What differs
/// in colour differs in shape or stroke too, so that a grey print can be read.
/// </summary>
internal static class Palette
{
    public static Color Blue { get; } = Color.FromHex("#0072B2");

    public static Color Vermilion { get; } = Color.FromHex("#D55E00");

    public static Color Green { get; } = Color.FromHex("#009E73");

    public static Color Air { get; } = Color.FromHex("#DCEBF5"); // blue, thinned

    public static Color Ink { get; } = Color.FromHex("#1B2A33");

    public static Color Quiet { get; } = Color.FromHex("#52616B");

    public static Color Grid { get; } = Color.FromHex("#DDE3E6");
}
