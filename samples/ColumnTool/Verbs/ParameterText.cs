using System.Globalization;
using System.Text.RegularExpressions;
using AirColumn.Acoustics;
using AirColumn.Documents;
using Shared;

namespace ColumnTool.Verbs;

/// <summary>Dimensions and the air of a column by name, as answers name them: "length of section 2".</summary>
internal static partial class ParameterText
{
    private const string Known =
        "length of section 1, diameter of section 1, inlet diameter of section 1, outlet diameter of section 1, diameter of point 2 of section 1, place of point 2 of section 1, place of hole 1, diameter of hole 1, height of hole 1, wall at the far end, correction of the blown end, temperature of the air, humidity of the air, pressure of the air, carbon dioxide in the air";

    /// <summary>Reads a name.</summary>
    public static ColumnParameter Read(string text)
    {
        var name = text.Trim();
        if (Simple(name) is { } simple)
        {
            return simple;
        }

        var match = Numbered().Match(name);
        if (!match.Success)
        {
            throw new FormatException($"'{name}' is nothing of a column; write one such as: {Known}.");
        }

        var what = match.Groups["what"].Value;
        var n = Index(match.Groups["n"], name);
        return (what, match.Groups["of"].Value, match.Groups["s"].Success) switch
        {
            ("length", "section", false) => ColumnParameter.SectionLength(n),
            ("diameter", "section", false) => ColumnParameter.Diameter(n),
            ("inlet diameter", "section", false) => ColumnParameter.InletDiameter(n),
            ("outlet diameter", "section", false) => ColumnParameter.OutletDiameter(n),
            ("place", "hole", false) => ColumnParameter.HolePosition(n),
            ("diameter", "hole", false) => ColumnParameter.HoleDiameter(n),
            ("height", "hole", false) => ColumnParameter.HoleHeight(n),
            ("diameter", "point", true) => ColumnParameter.PointDiameter(Index(match.Groups["s"], name), n),
            ("place", "point", true) => ColumnParameter.PointPosition(Index(match.Groups["s"], name), n),
            _ => throw new FormatException($"'{name}' is nothing of a column; write one such as: {Known}."),
        };
    }

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

    private static ColumnParameter? Simple(string name) =>
        name switch
        {
            "wall at the far end" => ColumnParameter.Wall,
            "correction of the blown end" => ColumnParameter.BlownCorrection,
            "temperature of the air" => ColumnParameter.Temperature,
            "humidity of the air" => ColumnParameter.Humidity,
            "pressure of the air" => ColumnParameter.Pressure,
            "carbon dioxide in the air" => ColumnParameter.CarbonDioxide,
            _ => null,
        };

    private static int Index(Group group, string name) =>
        int.TryParse(group.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && number is >= 1 and <= 100_000
            ? number - 1
            : throw new FormatException($"'{name}' counts wrongly; the first is 1.");

    [GeneratedRegex(
        "^(?<what>length|diameter|inlet diameter|outlet diameter|place|height) of (?<of>section|hole|point) (?<n>[0-9]{1,9})( of section (?<s>[0-9]{1,9}))?$",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Numbered();

    [GeneratedRegex(@"^(-?[0-9]{1,9}(?:\.[0-9]{1,9})?) ?K$", RegexOptions.CultureInvariant)]
    private static partial Regex Kelvins();
}
