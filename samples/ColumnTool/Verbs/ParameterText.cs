using System.Globalization;
using System.Text.RegularExpressions;
using AirColumn;
using AirColumn.Documents;
using Shared;

namespace ColumnTool.Verbs;

/// <summary>Values of dimensions and of the air.</summary>
internal static partial class ParameterText
{
    /// <summary>A value of it in its unit: a length with its own, others as numbers or with a unit.</summary>
    public static double Value(ColumnParameter parameter, string text)
    {
        var value = text.Trim();
        return (parameter.Unit, Options.Number(value)) switch
        {
            ("m", _) => QuantityText.ParseLength(value).Meters,
            ("K", null) when Kelvins().Match(value) is { Success: true } match => double.Parse(
                match.Groups[1].Value,
                CultureInfo.InvariantCulture
            ),
            ("K", _) => throw new FormatException(
                $"'{value}' is not a difference of temperature; write one such as \"2 K\"."
            ),
            ("Pa", _) => QuantityText.ParsePressure(value).Pascals,
            (_, { } number) => number,
            _ => QuantityText.ParseRatio(value).DecimalFractions,
        };
    }

    [GeneratedRegex(@"^(-?[0-9]{1,9}(?:\.[0-9]{1,9})?) ?K$", RegexOptions.CultureInvariant)]
    private static partial Regex Kelvins();
}
