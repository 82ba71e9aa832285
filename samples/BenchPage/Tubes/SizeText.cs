using System.Globalization;
using AirColumn.Documents;

namespace BenchPage.Tubes;

/// <summary>Sizes as texts with their unit, as the parts file has them.</summary>
internal static class SizeText
{
    /// <summary>The text as it is kept: a bare number gets the unit of the page.</summary>
    public static string Completed(string text, string units) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _)
            ? $"{text.Trim()} {(units == "in" ? "in" : "mm")}"
            : text.Trim();

    /// <summary>In millimetres; null if it is no size.</summary>
    public static double? Millimetres(string? text)
    {
        try
        {
            return text is null ? null : QuantityText.ParseLength(text).Millimeters;
        }
        catch (FormatException)
        {
            return null;
        }
    }

    /// <summary>A size that a slider was moved to.</summary>
    public static string Of(double millimetres, string units) =>
        units == "in"
            ? string.Create(CultureInfo.InvariantCulture, $"{millimetres / 25.4:0.###} in")
            : string.Create(CultureInfo.InvariantCulture, $"{millimetres:0.#} mm");
}
