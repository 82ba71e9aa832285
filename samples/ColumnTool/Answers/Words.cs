using System.Text;

namespace ColumnTool.Answers;

/// <summary>Names in JSON as other notations write them.</summary>
internal static class Words
{
    // Units at the end of a name, which a table has in its heading.
    private static readonly string[] Units = ["Hz", "Metres", "Cents"];

    /// <summary>For people: standardDeviationCents is "standard deviation".</summary>
    public static string Label(string name)
    {
        var unit = Array.Find(
            Units,
            end => name.Length > end.Length && name.EndsWith(end, StringComparison.Ordinal)
        );
        return Parted(unit is null ? name : name[..^unit.Length], ' ');
    }

    /// <summary>For CSV: frequencyHz is frequency_hz.</summary>
    public static string Underscored(string name) => Parted(name, '_');

    /// <summary>As JSON has it: time-limit is timeLimit.</summary>
    public static string Camel(string option)
    {
        var parts = option.Split('-');
        return string.Concat(
            parts.Select((part, i) => i == 0 ? part : char.ToUpperInvariant(part[0]) + part[1..])
        );
    }

    private static string Parted(string name, char between)
    {
        var parted = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsAsciiLetterUpper(letter))
            {
                parted.Append(between);
            }

            parted.Append(char.ToLowerInvariant(letter));
        }

        return parted.ToString();
    }
}
