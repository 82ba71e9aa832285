using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using AirColumn.Documents;
using AirColumn.Studies;
using Json.Schema;

namespace AirColumn.Tests.Studies;

public class StudyDocumentTests
{
    private static readonly string Top = typeof(StudyDocumentTests)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(a => a.Key == "Top")
        .Value!;

    private static readonly Lazy<JsonSchema> Schema = new(() =>
    {
        var docs = Path.Combine(Top, "docs");
        var options = new BuildOptions { SchemaRegistry = new SchemaRegistry() };
        _ = JsonSchema.FromText(File.ReadAllText(Path.Combine(docs, "column-document.schema.json")), options);
        return JsonSchema.FromText(
            File.ReadAllText(Path.Combine(docs, "study-document.schema.json")),
            options
        );
    });

    // Where, what stands there, what is allowed or to be done.
    [Theory]
    [InlineData("study", "2", "study is 2; this reader knows version 1 of the format; write \"study\": 1.")]
    [InlineData("study", null, "study is missing; write \"study\": 1, the version of the format.")]
    [InlineData(
        "seed",
        "1",
        "'seed' is not a known key; did you mean 'study'? Known here: study, name, column, parameters, points, answers."
    )]
    [InlineData(
        "column.sections[0].length",
        "\"5\"",
        "column.sections[0].length: '5' is a number without a unit; write \"5 mm\"."
    )]
    [InlineData(
        "column.sections[0].length",
        "\"-5 mm\"",
        "column.sections[0].length is -5 mm; allowed is 0.001 mm to 1000000 mm."
    )]
    [InlineData("column.tolerance", "1", "column.tolerance is 1; allowed is 1E-13 to 0.001.")]
    [InlineData("parameters", "[]", "parameters is empty; a study changes at least 1 parameter, such as *")]
    [InlineData(
        "parameters[0].parameter",
        "\"length\"",
        "parameters[0].parameter: 'length' is not a parameter of a column; write one such as: *"
    )]
    [InlineData(
        "parameters[0].parameter",
        "\"length of section 9\"",
        "parameters[0].parameter: The column has no length of section 9*"
    )]
    [InlineData(
        "parameters[1].parameter",
        "\"length of section 1\"",
        "parameters[1].parameter: the length of section 1 is named twice; name it once."
    )]
    [InlineData(
        "parameters[1].values",
        null,
        "parameters[1] does not say which values the parameter takes; write one of values, steps, uniform, normal, lognormal, such as *"
    )]
    [InlineData(
        "parameters[1].uniform",
        "{}",
        "parameters[1] says in 2 ways which values the parameter takes (values, uniform); say it in one."
    )]
    [InlineData(
        "parameters[0].steps.count",
        "1",
        "parameters[0].steps.count is 1; it must be a whole number from 2 to 1000000."
    )]
    [InlineData(
        "parameters[0].steps.to",
        "\"400 mm\"",
        "parameters[0].steps.to is '400 mm'; it must be above parameters[0].steps.from."
    )]
    [InlineData(
        "parameters[2].uniform.from",
        "50",
        "parameters[2].uniform.from is 50, a number without a unit; write \"50 mm\"."
    )]
    [InlineData(
        "parameters[3].lognormal.factor",
        "1",
        "parameters[3].lognormal.factor is 1; it must be above 1, up to 100: the factor by which one standard deviation multiplies or divides."
    )]
    [InlineData(
        "parameters[4].normal.deviation",
        "\"2 °C\"",
        "parameters[4].normal.deviation is '2 °C'; it must be a difference in K, such as \"2 K\"."
    )]
    [InlineData(
        "points",
        null,
        "points is missing, and 3 of the parameters are drawn from a distribution; write \"points\": *"
    )]
    [InlineData("points.by", "\"dice\"", "points.by is 'dice'; allowed: sobol, random.")]
    [InlineData("points.count", "0.5", "points.count is 0.5; it must be a whole number from 1 to 1E+12.")]
    [InlineData(
        "points.seed",
        "-1",
        "points.seed is -1; it must be a whole number from 0 to 9.007199255E+15."
    )]
    [InlineData(
        "points.count",
        "1000000000000",
        "parameters make 6E+12 items; at most 1E+12 are allowed. Take fewer steps, or draw points."
    )]
    [InlineData(
        "answers",
        "{}",
        "answers asks for nothing; write the answers you want, such as { \"resonances\": 10 }."
    )]
    [InlineData(
        "answers.resonances",
        "101",
        "answers.resonances is 101; it must be a whole number from 1 to 100."
    )]
    [InlineData(
        "answers.resonances",
        null,
        "answers.intervals is about resonances, of which none are asked for; write \"resonances\": 10 beside it."
    )]
    [InlineData("answers.intervals", "1", "answers.intervals is 1; it must be true or false.")]
    [InlineData(
        "answers.impedance[1]",
        "\"90 Hz\"",
        "answers.impedance[1] is '90 Hz'; frequencies must be above 0 Hz, and each above the one before."
    )]
    public void A_bad_document_says_what_and_where_and_what_is_allowed(
        string path,
        string? value,
        string message
    )
    {
        var text = StudySample.With(json => Set(json, path, value));
        var thrown = Assert.Throws<ColumnDocumentException>(() => Study.Parse(text)).Message;
        if (message.EndsWith('*'))
        {
            Assert.StartsWith(message[..^1], thrown, StringComparison.Ordinal);
        }
        else
        {
            Assert.Equal(message, thrown);
        }
    }

    [Theory]
    [InlineData("", "The document is empty; it must be a JSON object that begins with \"study\": 1.")]
    [InlineData("[]", "The document is a list; it must be an object, such as { \"study\": 1, … }.")]
    public void What_is_no_document_is_said(string text, string message) =>
        Assert.Equal(message, Assert.Throws<ColumnDocumentException>(() => Study.Parse(text)).Message);

    [Fact]
    public void Points_are_refused_where_nothing_is_drawn_and_seeds_are_asked_for_where_they_matter()
    {
        var steps = StudySample.With(json =>
        {
            for (var i = 4; i > 1; i--)
            {
                json["parameters"]!.AsArray().RemoveAt(i);
            }
        });
        Assert.Equal(
            "points has no effect if every parameter has steps or values; leave it out.",
            Assert.Throws<ColumnDocumentException>(() => Study.Parse(steps)).Message
        );
        var random = StudySample.With(json =>
            json["points"] = JsonNode.Parse("""{ "by": "random", "count": 5 }""")
        );
        Assert.Equal(
            "points.seed is missing; write a whole number, such as \"seed\": 1: the same number draws the same points.",
            Assert.Throws<ColumnDocumentException>(() => Study.Parse(random)).Message
        );
    }

    [Fact]
    public void Fields_are_named_with_their_units()
    {
        var names = StudySample.Study.Fields.Select(field => field.Name).ToList();
        Assert.Equal(5 + 4 + 3 + 4 + 4 + 4 * 5 + 2 + 4, names.Count);
        Assert.Equal(names.Count, names.Distinct().Count());
        Assert.Equal(
            [
                "length_of_section_1_m",
                "length_of_section_2_m",
                "outlet_diameter_of_section_2_m",
                "wall_at_the_far_end_m",
                "temperature_of_the_air_k",
                "f1_hz",
            ],
            names[..6]
        );
        Assert.All(names, name => Assert.Matches("^[a-z][a-z0-9_]*$", name));
    }

    [Fact]
    public void Schema_and_reader_agree_on_the_samples()
    {
        string[] texts =
        [
            StudySample.Text,
            .. Directory
                .GetFiles(Path.Combine(Top, "samples", "Studies"), "*.json", SearchOption.AllDirectories)
                .Select(File.ReadAllText),
        ];
        Assert.All(
            texts,
            text =>
            {
                _ = Study.Parse(text);
                Assert.True(IsValid(text), text);
            }
        );
    }

    [Theory]
    [InlineData("study", "2")]
    [InlineData("seed", "1")]
    [InlineData("parameters", "[]")]
    [InlineData("parameters[1].values", null)]
    [InlineData("parameters[1].uniform", """{ "from": "1 mm", "to": "2 mm" }""")]
    [InlineData("parameters[0].steps.count", "1")]
    [InlineData("points.by", "\"dice\"")]
    [InlineData("answers", "{}")]
    [InlineData("answers.resonances", "101")]
    [InlineData("column.sections[0].diametre", "\"4 mm\"")]
    public void What_the_schema_sees_it_refuses_as_the_reader_does(string path, string? value) =>
        Assert.False(IsValid(StudySample.With(json => Set(json, path, value))));

    private static bool IsValid(string text)
    {
        using var json = JsonDocument.Parse(text);
        return Schema.Value.Evaluate(json.RootElement).IsValid;
    }

    private static void Set(JsonNode json, string path, string? value)
    {
        var keys = path.Replace("[", ".[", StringComparison.Ordinal).Split('.');
        foreach (var key in keys[..^1])
        {
            json = key[0] == '[' ? json[int.Parse(key[1..^1], null)]! : json[key]!;
        }

        if (keys[^1][0] == '[')
        {
            json[int.Parse(keys[^1][1..^1], null)] = JsonNode.Parse(value!);
        }
        else if (value is null)
        {
            json.AsObject().Remove(keys[^1]);
        }
        else
        {
            json[keys[^1]] = JsonNode.Parse(value);
        }
    }
}
