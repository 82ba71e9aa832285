using System.Text.Json;
using System.Text.RegularExpressions;

namespace Samples.Tests;

/// <summary>docs/embedding.md promises other programs what ColumnTool takes and prints: neither more nor less.</summary>
public partial class ColumnToolContractTests
{
    private static readonly string Page = File.ReadAllText(
            Path.Combine(ShownPage.Top, "docs", "embedding.md")
        )
        .ReplaceLineEndings("\n");

    // The verbs as the program lists them.
    [Fact]
    public void The_page_has_every_verb()
    {
        var commands = Sample.ColumnTool("", "--help").Succeeded().Split("Commands:\n")[1];
        Assert.Equal(
            FirstWord().Matches(commands).Select(match => match.Groups[1].Value).Order(),
            VerbHeading().Matches(Page).Select(match => match.Groups[1].Value).Order()
        );
    }

    [Theory]
    [InlineData("impedance")]
    [InlineData("resonances")]
    [InlineData("length")]
    [InlineData("sweep")]
    [InlineData("air")]
    public void Options_are_those_of_the_page(string verb)
    {
        var help = Sample.ColumnTool("", verb, "--help").Succeeded();
        var taken = Option()
            .Matches(help)
            .Select(match => (match.Groups[1].Value, match.Groups[2].Success))
            .Where(option => option.Item1 != "--help");
        var shown = Rows(verb, "option").Select(row => (Code(row[0]), row[2] == "required"));
        Assert.Equal(shown, taken);
    }

    [Theory]
    [InlineData("resonances", "resonances|-|--count|2|--json")]
    [InlineData("length", "length|-|--section|2|--pitch|A1|--json")]
    [InlineData("air", "air|--temperature|12 °C|--humidity|95 %|--json")]
    public void Fields_are_those_of_the_page(string verb, string arguments)
    {
        // Steep enough to be warned of, so that no list is empty.
        var steep = IdealTube.Open.Replace(
            "\"shape\": \"cylinder\", \"diameter\": \"40 mm\", \"length\": \"25 cm\"",
            "\"shape\": \"cone\", \"from\": \"40 mm\", \"to\": \"700 mm\", \"length\": \"25 cm\"",
            StringComparison.Ordinal
        );
        steep = steep.Replace(
            "\"losses\"",
            "\"wavefronts\": \"curved\", \"losses\"",
            StringComparison.Ordinal
        );
        var outcome = Sample.ColumnTool(steep, arguments.Split('|'));
        Assert.Equal(0, outcome.ExitCode);
        using var json = JsonDocument.Parse(outcome.Output);
        var printed = Fields("", json.RootElement).Distinct().ToList();
        var rows = Rows(verb, "JSON field").ToList();
        Assert.Equal(rows.Select(row => Code(row[0])), printed.Select(field => field.Path));
        // Where a unit is printed it is the one of the page.
        Assert.All(
            rows.Zip(printed).Where(pair => pair.Second.Unit is not null),
            pair => Assert.Equal(pair.First[1], pair.Second.Unit)
        );
    }

    [Theory]
    [InlineData("impedance", "impedance|-|--at|30")]
    [InlineData("sweep", "sweep|-|--count|1")]
    public void Columns_are_those_of_the_page(string verb, string arguments)
    {
        var header = Sample.ColumnTool(IdealTube.Open, arguments.Split('|')).Succeeded().Split('\n')[0];
        Assert.Equal(header.Split(','), Rows(verb, "CSV column").Select(row => Code(row[0])));
    }

    [Fact]
    public void Exit_codes_are_those_of_the_page()
    {
        int[] codes =
        [
            Sample.ColumnTool("", "air", "--temperature", "20 °C").ExitCode,
            // Shorter than the other section allows.
            Sample.ColumnTool(IdealTube.Open, "length", "-", "--section", "1", "--pitch", "A4").ExitCode,
            Sample.ColumnTool("", "air").ExitCode,
        ];
        Assert.Equal(codes.Select(code => $"`{code}`"), Table(Page, "exit code").Select(row => row[0]));
    }

    // Without losses a peak has no height; and notes have no names there.
    [Fact]
    public void What_has_no_value_is_null_in_JSON_and_infinite_or_empty_in_CSV()
    {
        var low = IdealTube.Open.Replace("\"0.75 m\"", "\"900 m\"", StringComparison.Ordinal);
        var first = Sample
            .ColumnTool(low, "resonances", "-", "--count", "1", "--json")
            .Json()
            .GetProperty("resonances")[0];
        Assert.InRange(first.GetProperty("frequencyHz").GetDouble(), 0, 1);
        Assert.All(
            ["magnitude", "q", "pitch", "cents"],
            name => Assert.Equal(JsonValueKind.Null, first.GetProperty(name).ValueKind)
        );
        var row = Sample.ColumnTool(low, "sweep", "-", "--count", "1").Succeeded().Split('\n')[1];
        Assert.Equal(["Infinity", "Infinity", "", ""], row.Split(',')[3..]);
    }

    private static IEnumerable<(string Path, string? Unit)> Fields(string path, JsonElement json)
    {
        switch (json.ValueKind)
        {
            case JsonValueKind.Object when json.TryGetProperty("unit", out var unit):
                Assert.Equal(["value", "unit"], json.EnumerateObject().Select(member => member.Name));
                return [(path, unit.GetString())];
            case JsonValueKind.Object:
                return json.EnumerateObject()
                    .SelectMany(member =>
                        Fields(path.Length == 0 ? member.Name : $"{path}.{member.Name}", member.Value)
                    );
            case JsonValueKind.Array:
                Assert.NotEqual(0, json.GetArrayLength());
                return json.EnumerateArray().SelectMany(item => Fields($"{path}[]", item));
            default:
                return [(path, null)];
        }
    }

    private static IEnumerable<string[]> Rows(string verb, string firstCell)
    {
        var section = Page.Split("\n### ")
            .Single(part => VerbHeading().Match($"\n### {part}").Groups[1].Value == verb);
        return Table(section, firstCell);
    }

    // The cells of the rows below a heading; a bar within a cell is written \|.
    private static IEnumerable<string[]> Table(string text, string firstCell) =>
        text.Split($"\n| {firstCell} |")[1]
            .Split('\n')
            .Skip(2)
            .TakeWhile(line => line.StartsWith('|'))
            .Select(line => Bar().Split(line)[1..^1].Select(cell => cell.Trim()).ToArray());

    private static string Code(string cell)
    {
        Assert.Matches("^`[^`]+`$", cell);
        return cell.Trim('`');
    }

    [GeneratedRegex(@"\n### `([a-z]+)")]
    private static partial Regex VerbHeading();

    [GeneratedRegex(@"^  ([a-z]+)", RegexOptions.Multiline)]
    private static partial Regex FirstWord();

    [GeneratedRegex(@"^  (?:-\S+, )*(--[a-z0-9-]+)[^\n]*?(?:(\(REQUIRED\))[^\n]*)?$", RegexOptions.Multiline)]
    private static partial Regex Option();

    [GeneratedRegex(@"(?<!\\)\|")]
    private static partial Regex Bar();
}
