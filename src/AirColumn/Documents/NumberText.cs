using System.Globalization;
using System.Text.RegularExpressions;

namespace AirColumn.Documents;

/// <summary>The number at the beginning of a text and what follows it, in the invariant culture.</summary>
/// <param name="Value">The number; infinite if it is too large for a double, not a number if a divisor is 0.</param>
/// <param name="Digits">The number as it was written.</param>
/// <param name="Rest">What follows, without the spaces around it.</param>
internal readonly partial record struct NumberText(double Value, string Digits, string Rest)
{
    /// <summary>Splits a text that begins with a number.</summary>
    /// <param name="text">Without spaces around it.</param>
    /// <param name="fractions">Whether "15/16" and "46 15/16", as on a rule divided in inches, are numbers.</param>
    /// <param name="number">The number and what follows.</param>
    public static bool TryRead(string text, bool fractions, out NumberText number)
    {
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
