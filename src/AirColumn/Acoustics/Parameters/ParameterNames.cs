using System.Globalization;
using System.Text.RegularExpressions;

namespace AirColumn.Acoustics.Parameters;

/// <summary>Reads what parameters are called, as they name themselves: "length of section 2".</summary>
internal static partial class ParameterNames
{
    private const int Longest = 60; // of what is shown in a message
    private const string Between = " and ";

    private const string Known =
        "length of section 1, diameter of section 1, inlet diameter of section 1, outlet diameter of section 1, diameter of point 2 of section 1, place of point 2 of section 1, place of hole 1, diameter of hole 1, height of hole 1, wall at the far end, correction of the blown end, losses at the wall, temperature of the air, humidity of the air, pressure of the air, carbon dioxide in the air";

    /// <summary>Reads a name, or several that change together.</summary>
    /// <exception cref="FormatException">There is no such name.</exception>
    public static ColumnParameter Read(string text)
    {
        ColumnParameter[] all = [.. text.Split(Between).Select(name => One(name.Trim()))];
        try
        {
            return all.Length == 1 ? all[0] : ColumnParameter.Together(all);
        }
        catch (ArgumentException)
        {
            throw new FormatException(
                $"'{Shown(text)}' names quantities of different units, which cannot change by the same amount; name one of them, or lengths only."
            );
        }
    }

    private static ColumnParameter One(string name)
    {
        if (Simple(name) is { } simple)
        {
            return simple;
        }

        var match = Numbered().Match(name);
        if (!match.Success)
        {
            throw Unknown(name);
        }

        var n = Index(match.Groups["n"], name);
        return (match.Groups["what"].Value, match.Groups["of"].Value, match.Groups["s"].Success) switch
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
            _ => throw Unknown(name),
        };
    }

    private static ColumnParameter? Simple(string name) =>
        name switch
        {
            "wall at the far end" => ColumnParameter.Wall,
            "correction of the blown end" => ColumnParameter.BlownCorrection,
            "losses at the wall" => ColumnParameter.Losses,
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
            : throw new FormatException($"'{Shown(name)}' counts wrongly; the first is 1.");

    private static FormatException Unknown(string name) =>
        new($"'{Shown(name)}' is not a parameter of a column; write one such as: {Known}.");

    private static string Shown(string text) => text.Length <= Longest ? text : $"{text[..Longest]}…";

    [GeneratedRegex(
        "^(?<what>length|diameter|inlet diameter|outlet diameter|place|height) of (?<of>section|hole|point) (?<n>[0-9]{1,9})( of section (?<s>[0-9]{1,9}))?$",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Numbered();
}
