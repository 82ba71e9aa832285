using System.Globalization;

namespace AirColumn.Documents;

/// <summary>Foreign text in a message: on one line and not long.</summary>
internal static class Quote
{
    private const int Longest = 40;

    /// <summary>The text in quotation marks.</summary>
    public static string Of(string text) => $"'{Cut(text)}'";

    /// <summary>The text, cut if it is long, with a box for what cannot be shown on a line.</summary>
    public static string Cut(string text) => Cut(text, Longest);

    /// <summary>The text, cut if it is longer than that, with a box for what cannot be shown on a line.</summary>
    public static string Cut(string text, int longest)
    {
        var cut = text.Length <= longest ? text : $"{text[..longest]}…";
        return string.Concat(cut.Select(c => CanBeShown(c) ? c : '\uFFFD'));
    }

    private static bool CanBeShown(char c) =>
        char.GetUnicodeCategory(c)
            is not (
                UnicodeCategory.Control
                or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator
                or UnicodeCategory.Surrogate
            );
}
