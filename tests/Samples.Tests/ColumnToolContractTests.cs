using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace Samples.Tests;

/// <summary>What docs/column-tool.md and the schemas promise other programs is what ColumnTool takes and prints.</summary>
public class ColumnToolContractTests
{
    private const string Flute =
        """{"column":1,"blownEnd":"open","correction":"8 mm","sections":[{"shape":"cylinder","diameter":"19 mm","length":"500 mm"}],"farEnd":{"kind":"open","wall":"3 mm"}}""";

    // Steep enough to be warned of, so that no list of warnings is empty.
    private const string Steep =
        """{"column":1,"wavefronts":"curved","sections":[{"shape":"cylinder","diameter":"40 mm","length":"500 mm"},{"shape":"cone","from":"40 mm","to":"400 mm","length":"150 mm"}],"farEnd":{"kind":"open"}}""";

    // Each verb once with all that can be said to it: what a command line says, and what a request says.
    private static readonly (string Verb, string Document, string[] Options, string Members)[] Asked =
    [
        (
            "column",
            Steep,
            ["--wavefronts", "plane", "--fingering", "all open"],
            "\"wavefronts\":\"plane\",\"fingering\":\"all open\""
        ),
        ("impedance", Steep, ["--at", "30,33.17"], "\"at\":[30,33.17]"),
        (
            "reflection",
            Steep,
            ["--from", "20", "--to", "60", "--points", "5"],
            "\"from\":20,\"to\":60,\"points\":5"
        ),
        ("matrix", Steep, ["--at", "30"], "\"at\":[30]"),
        ("transfer", Steep, ["--at", "30"], "\"at\":[30]"),
        (
            "resonances",
            Steep,
            [
                "--count",
                "2",
                "--below",
                "0.5 kHz",
                "--reference",
                "442",
                "--gradients",
                "--temperament",
                "0,-24,-7,10,-14,-3,-21,-3,-27,-10,7,-17",
            ],
            "\"count\":2,\"below\":\"0.5 kHz\",\"reference\":442,\"gradients\":true,\"temperament\":[0,-24,-7,10,-14,-3,-21,-3,-27,-10,7,-17]"
        ),
        (
            "inside",
            Steep,
            ["--frequency", "70", "--places", "0 mm,25 cm"],
            "\"frequency\":70,\"places\":[\"0 mm\",\"25 cm\"]"
        ),
        ("power", Steep, ["--at", "70"], "\"at\":[70]"),
        (
            "quality",
            Steep,
            ["--count", "3", "--fundamental", "100 Hz", "--only-odd"],
            "\"count\":3,\"fundamental\":\"100 Hz\",\"onlyOdd\":true"
        ),
        ("length", Steep, ["--section", "1", "--pitch", "C3"], "\"section\":1,\"pitch\":\"C3\""),
        (
            "shape",
            Steep,
            [
                "--choose",
                "length of section 1, 300 mm to 700 mm",
                "--choose",
                "outlet diameter of section 2, 90 mm to 400 mm",
                "--reach",
                "resonance 1 on E3",
                "--reach",
                "total length of 640 mm; weight 0.5",
                "--starts",
                "2",
            ],
            "\"choose\":[\"length of section 1, 300 mm to 700 mm\",\"outlet diameter of section 2, 90 mm to 400 mm\"],\"reach\":[\"resonance 1 on E3\",\"total length of 640 mm; weight 0.5\"],\"starts\":2"
        ),
        (
            "holes",
            Flute,
            ["--pitch", "D4", "--diameters", "8 mm,8 mm", "--semitones", "2,4"],
            "\"pitch\":\"D4\",\"diameters\":[\"8 mm\",\"8 mm\"],\"semitones\":[2,4]"
        ),
        (
            "uncertainty",
            Steep,
            [
                "--tolerance",
                "length of section 1 ± 1 mm",
                "--tolerance",
                "temperature of the air ± 2 K (95 %)",
                "--count",
                "2",
            ],
            "\"tolerance\":[\"length of section 1 ± 1 mm\",\"temperature of the air ± 2 K (95 %)\"],\"count\":2"
        ),
        (
            "fit",
            Steep,
            [
                "--tolerance",
                "length of section 1 ± 5 mm",
                "--resonance",
                "1 at 163 Hz ± 10 cents",
                "--resonance",
                "2 at 488 Hz ± 5.5 cents",
                "--noise",
                "0.02",
            ],
            "\"tolerance\":[\"length of section 1 ± 5 mm\"],\"resonance\":[\"1 at 163 Hz ± 10 cents\",\"2 at 488 Hz ± 5.5 cents\"],\"noise\":0.02"
        ),
        (
            "trim",
            Steep,
            [
                "--section",
                "1",
                "--pitch",
                "F3",
                "--step",
                "5 mm",
                "--rows",
                "3",
                "--played-above",
                "20",
                "--played-within",
                "10",
            ],
            "\"section\":1,\"pitch\":\"F3\",\"step\":\"5 mm\",\"rows\":3,\"playedAbove\":20,\"playedWithin\":10"
        ),
        (
            "air",
            "",
            ["--temperature", "12 °C", "--humidity", "95 %"],
            "\"temperature\":\"12 °C\",\"humidity\":\"95 %\""
        ),
    ];

    public static TheoryData<string> Verbs => [.. Asked.Select(one => one.Verb)];

    private static readonly string Docs = Path.Combine(ShownPage.Top, "docs");
    private static readonly string RequestText = Page("json-lines", "requests.schema.json");
    private static readonly string AnswerText = Page("json-lines", "answers.schema.json");
    private static readonly JsonSchema Requests = JsonSchema.FromText(RequestText);
    private static readonly JsonSchema Answers = JsonSchema.FromText(AnswerText);

    [Theory]
    [InlineData("column-tool.md", "reference")]
    [InlineData("json-lines/requests.schema.json", "schema", "requests")]
    [InlineData("json-lines/answers.schema.json", "schema", "answers")]
    public void Pages_are_what_the_program_prints_of_itself(string page, params string[] arguments) =>
        Assert.Equal(Sample.ColumnTool("", arguments).Succeeded(), Page(page.Split('/')));

    // One definition serves both: the same numbers to the last digit, but that a search in a spectrum may have been prepared for another question.
    [Theory]
    [MemberData(nameof(Verbs))]
    public void A_command_line_and_a_line_of_JSON_get_one_answer_of_the_schema(string verb)
    {
        var (_, document, options, members) = Asked.Single(one => one.Verb == verb);
        string[] file = document.Length > 0 ? ["-"] : [];
        var typed = Sample.ColumnTool(document, [verb, .. file, .. options, "--json"]);
        Assert.Equal(0, typed.ExitCode);

        var inline = document.Length > 0 ? $"\"document\":{document}," : "";
        var request = $$"""{"id":"a \"b\"","verb":"{{verb}}",{{inline}}{{members}},"timeLimit":60}""";
        Assert.True(IsValid(Requests, request), request);
        var line = Sample.Lines(request + "\n");
        Assert.True(IsValid(Answers, line), line);
        var reply = JsonNode.Parse(line)!;
        Assert.Equal("a \"b\"", (string?)reply["id"]);
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(typed.Output), reply["answer"]), line);
        // What is warned of on the error stream is in the JSON too.
        Assert.Equal(
            reply["answer"]!["warnings"]!.AsArray().Count,
            typed.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length
        );
    }

    [Fact]
    public void Every_verb_is_asked_here() =>
        Assert.Equal(
            Asked.Select(one => one.Verb).Append("cancel"),
            JsonNode.Parse(RequestText)!["$defs"]!.AsObject().Select(member => member.Key)
        );

    // And what a schema of requests refuses, the program refuses.
    [Theory]
    [InlineData("""{"id":1,"verb":"resonances","document":{},"cuont":1}""")]
    [InlineData("""{"id":1,"verb":"resonances"}""")]
    [InlineData("""{"id":1,"verb":"resonances","document":{},"file":"a.json"}""")]
    [InlineData("""{"id":1,"verb":"air"}""")]
    [InlineData("""{"id":1,"verb":"air","temperature":20}""")]
    [InlineData("""{"id":1,"verb":"resonances","document":{},"count":1.5}""")]
    [InlineData("""{"id":1,"verb":"resonances","document":{},"wavefronts":"round"}""")]
    [InlineData("""{"id":true,"verb":"air","temperature":"20 °C"}""")]
    [InlineData("""{"id":1,"verb":"cancel"}""")]
    [InlineData("""{"id":1,"verb":"sing"}""")]
    public void What_the_schema_refuses_the_program_refuses(string request)
    {
        Assert.False(IsValid(Requests, request));
        var line = Sample.Lines(request + "\n");
        Assert.True(IsValid(Answers, line), line);
        Assert.NotNull(JsonNode.Parse(line)!["error"]);
    }

    // The table in embedding.md.
    [Fact]
    public void Exit_codes_are_those_of_the_page()
    {
        var page = Page("embedding.md");
        int[] codes =
        [
            Sample.ColumnTool("", "air", "--temperature", "20 °C").ExitCode,
            // Shorter than the other section allows.
            Sample.ColumnTool(IdealTube.Open, "length", "-", "--section", "1", "--pitch", "A4").ExitCode,
            Sample.ColumnTool("", "air").ExitCode,
            Sample.ColumnTool("", "column", "none.json").ExitCode,
            Sample.ColumnTool("{}", "column", "-").ExitCode,
        ];
        var rows = page.Split("\n| exit code |")[1].Split('\n').Skip(2).TakeWhile(row => row.StartsWith('|'));
        Assert.Equal(codes.Select(code => $"`{code}`"), rows.Select(row => row.Split('|')[1].Trim()));
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

    private static bool IsValid(JsonSchema schema, string json)
    {
        using var document = JsonDocument.Parse(Encoding.UTF8.GetBytes(json));
        return schema.Evaluate(document.RootElement).IsValid;
    }

    private static string Page(params string[] name) =>
        File.ReadAllText(Path.Combine([Docs, .. name])).ReplaceLineEndings("\n");
}
