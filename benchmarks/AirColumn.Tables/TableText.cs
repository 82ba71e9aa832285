using System.Globalization;
using System.Text.RegularExpressions;

namespace AirColumn.Tables;

/// <summary>Reads and writes lists of numbers in C# source.</summary>
internal sealed class TableText(string repository, string file)
{
    private readonly string path = Path.Combine(repository, "src", "AirColumn", "Acoustics", file);

    /// <summary>The numbers of a list, or a constant as one.</summary>
    public double[] Read(string list) => [.. Numbers(Find(File.ReadAllText(path), list)).Select(Parse)];

    /// <summary>
    /// Replaces those that are farther than the error from the new ones; the others stay as they are. All, if there are more or fewer.
    /// </summary>
    public void Write(string list, double[] values, string format, double error)
    {
        var text = File.ReadAllText(path);
        var place = Find(text, list);
        var old = Numbers(place);
        var numbers = values.Select(
            (value, i) =>
                old.Length == values.Length && Math.Abs(Parse(old[i]) - value) <= error
                    ? old[i]
                    : value.ToString(format, CultureInfo.InvariantCulture)
        );
        File.WriteAllText(
            path,
            text[..place.Index] + string.Join(", ", numbers) + text[(place.Index + place.Length)..]
        );
    }

    private static string[] Numbers(Group place) =>
        place.Value.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static double Parse(string number) => double.Parse(number, CultureInfo.InvariantCulture);

    // list => [1, 2]; list = Made([1, 2]); list = 1;
    private Group Find(string text, string list)
    {
        const string Number = @"-?\d[-+.\deE]*";
        var match = Regex.Match(
            text,
            $@"\b{list}\s*=>?\s*(?:[\w.]+\()?\[?\s*(?<numbers>{Number}(?:\s*,\s*{Number})*)\s*,?\s*\]?\)?;"
        );
        return match.Success
            ? match.Groups["numbers"]
            : throw new InvalidOperationException($"{path} has no list of numbers that is called {list}.");
    }
}
