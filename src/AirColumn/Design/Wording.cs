using System.Globalization;

namespace AirColumn;

/// <summary>Words that explanations share, in the invariant culture.</summary>
internal static class Wording
{
    /// <summary>first, second, … 13th.</summary>
    public static string Ordinal(int number) =>
        number switch
        {
            1 => "first",
            2 => "second",
            3 => "third",
            4 => "fourth",
            5 => "fifth",
            _ => number.ToString(CultureInfo.InvariantCulture)
                + (
                    (number % 100) is 11 or 12 or 13
                        ? "th"
                        : (number % 10) switch
                        {
                            1 => "st",
                            2 => "nd",
                            3 => "rd",
                            _ => "th",
                        }
                ),
        };

    /// <summary>For a sentence about a note to come, in whole cents: "about 15 cents flat".</summary>
    public static string SharpOrFlat(double cents) =>
        Math.Round(Math.Abs(cents)) is var whole && whole == 0
            ? "the note itself"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"about {whole:0} {(whole == 1 ? "cent" : "cents")} {(cents < 0 ? "flat" : "sharp")}"
            );

    /// <summary>A number of cents with its sign and a decimal.</summary>
    public static string CentsOf(double cents) =>
        string.Create(CultureInfo.InvariantCulture, $"{cents:+0.0;-0.0;0.0} cents");
}
