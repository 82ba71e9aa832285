using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace AirColumn.Documents;

/// <summary>The number at the beginning of a text and what follows it, in the invariant culture.</summary>
/// <param name="Value">The number; infinite if it is too large for a double, not a number if a divisor is 0.</param>
/// <param name="Digits">The number as it was written.</param>
/// <param name="Rest">What follows, without the spaces around it.</param>
internal readonly partial record struct NumberText(double Value, string Digits, string Rest)
{
    private const char FractionSlash = '\u2044';

    /// <summary>Splits a text that begins with a number.</summary>
    /// <param name="text">Without spaces around it.</param>
    /// <param name="fractions">Whether "15/16", "46 15/16" and "46⅞", as on a rule divided in inches, are numbers.</param>
    /// <param name="number">The number and what follows.</param>
    public static bool TryRead(string text, bool fractions, out NumberText number)
    {
        text = fractions ? Plain(text) : text;
        if (fractions && Fraction().Match(text) is { Success: true } fraction)
        {
            number = new NumberText(ValueOf(fraction), fraction.Value, text[fraction.Length..].Trim());
            return true;
        }

        var match = Decimal().Match(text);
        if (!match.Success)
        {
            number = default;
            return false;
        }

        var value = double.Parse(
            match.Value.Replace('\u2212', '-'), // the minus sign of typographers
            NumberStyles.Float,
            CultureInfo.InvariantCulture
        );
        number = new NumberText(value, match.Value, text[match.Length..].Trim());
        return true;
    }

    /// <summary>The text with fractions of one character written out: "1 7/8" for "1⅞".</summary>
    public static string Plain(string text)
    {
        if (!text.Any(c => c == FractionSlash || Written(c) is not null))
        {
            return text;
        }

        var plain = new StringBuilder();
        foreach (var c in text)
        {
            var fraction = Written(c);
            if (fraction is not null && plain.Length > 0 && char.IsAsciiDigit(plain[^1]))
            {
                plain.Append(' ');
            }

            plain.Append(fraction ?? (c == FractionSlash ? "/" : c.ToString()));
        }

        return plain.ToString();
    }

    // Those of a rule and of a keyboard (Unicode 17.0, Number Forms and Latin-1). Not by normalisation, which browsers lack.
    private static string? Written(char c) =>
        c switch
        {
            '½' => "1/2",
            '⅓' => "1/3",
            '⅔' => "2/3",
            '¼' => "1/4",
            '¾' => "3/4",
            '⅕' => "1/5",
            '⅖' => "2/5",
            '⅗' => "3/5",
            '⅘' => "4/5",
            '⅙' => "1/6",
            '⅚' => "5/6",
            '⅐' => "1/7",
            '⅛' => "1/8",
            '⅜' => "3/8",
            '⅝' => "5/8",
            '⅞' => "7/8",
            '⅑' => "1/9",
            '⅒' => "1/10",
            _ => null,
        };

    // The sign is that of the whole number and of the fraction after it.
    private static double ValueOf(Match fraction)
    {
        var sign = fraction.Groups["minus"].Success ? -1 : 1;
        var whole = fraction.Groups["whole"] is { Success: true } group ? Whole(group.Value) : 0;
        var divisor = Whole(fraction.Groups["bottom"].Value);
        return divisor == 0 ? double.NaN : sign * (whole + Whole(fraction.Groups["top"].Value) / divisor);
    }

    private static double Whole(string digits) =>
        double.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^[+\-\u2212]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+\-\u2212]?[0-9]+)?",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Decimal();

    [GeneratedRegex(
        @"^(\+|(?<minus>[\-\u2212]))?((?<whole>[0-9]{1,6})[ \-])?(?<top>[0-9]{1,6})/(?<bottom>[0-9]{1,6})(?![0-9.])",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Fraction();
}
