using System.Globalization;
using System.Text.RegularExpressions;
using UnitsNet;

namespace AirColumn.Documents;

/// <summary>Lengths in feet and inches, as tape measures are read: 4' 2 1/2", 4 ft 2.5 in.</summary>
internal static partial class FeetAndInches
{
    private const double InchesPerFoot = 12;

    /// <summary>The length, or null if the text is not of feet and inches.</summary>
    /// <exception cref="FormatException">There are 12 inches or more beside the feet.</exception>
    public static Length? Read(string text)
    {
        if (Form().Match(NumberText.Plain(text.Trim())) is not { Success: true } match)
        {
            return null;
        }

        var feet = double.Parse(match.Groups["feet"].Value, NumberStyles.None, CultureInfo.InvariantCulture);
        _ = NumberText.TryRead(match.Groups["inches"].Value, fractions: true, out var inches);
        if (!(inches.Value < InchesPerFoot))
        {
            throw new FormatException(
                $"{Quote.Of(text.Trim())} is not a length: write fewer than 12 inches after the feet, such as 4' 2 1/2\"."
            );
        }

        var sign = match.Groups["minus"].Success ? -1 : 1;
        return Length.FromInches(sign * (InchesPerFoot * feet + inches.Value));
    }

    [GeneratedRegex(
        """
            ^(\+|(?<minus>[\-\u2212]))?(?<feet>[0-9]{1,6})\s*('|\u2032|\u2019|ft|feet|foot)\s*\-?\s*(?<inches>([0-9]{1,6}[ \-])?[0-9]{1,6}/[0-9]{1,6}|[0-9]{1,6}(\.[0-9]{0,9})?)\s*("|\u2033|\u201D|''|in|inch|inches)$
            """,
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Form();
}
