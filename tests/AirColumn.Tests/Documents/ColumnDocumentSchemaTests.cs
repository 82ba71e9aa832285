using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using AirColumn.Documents;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Json.Schema;

namespace AirColumn.Tests.Documents;

/// <summary>The published schema and the reader agree, but for what the schema says it cannot see.</summary>
[Properties(Arbitrary = [typeof(DocumentArbitraries)])]
public class ColumnDocumentSchemaTests
{
    private static readonly string Docs = Path.Combine(
        typeof(ColumnDocumentSchemaTests)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(a => a.Key == "Top")
            .Value!,
        "docs"
    );

    private static readonly JsonSchema Schema = JsonSchema.FromText(
        File.ReadAllText(Path.Combine(Docs, "column-document.schema.json"))
    );

    // Every key, in several documents, since some exclude each other.
    private static readonly string[] Everything =
    [
        Sample.Full,
        Sample.With(
            "\"sections\":[",
            $$"""
            "name": "horns", "air": {{Sample.Constants}}, "losses": "none", "wavefronts": "multimodal", "blownEnd": "closed",
            "sections": [
              { "shape": "horn", "law": "exponential", "from": "30 mm", "to": "60 mm", "length": "100 mm" },
              { "shape": "horn", "law": "bessel", "from": "60 mm", "to": "90 mm", "length": "1 1/2 in", "exponent": 0.7 },
              { "shape": "profile", "points": [["0 mm", "90 mm"], ["40 mm", "94 mm"]], "join": "smooth" },
            """,
            Sample.Least
        ),
        // Which number of holes a fingering is for, the schema cannot see.
        Sample.With("\"ox\"", "\"all open\"", Sample.With("\"x | x\"", "\"all closed\"", Sample.New)),
        With("""{ "points": [["10 mm", { "state": "breath" }], ["90 mm", { "temperature": "20 °C" }]] }"""),
        With("""{ "from": { "state": "breath" }, "to": { "temperature": "20 °C" }, "over": "1 m" }"""),
        With("""{ "temperature": "20 °C", "model": "gas-mixture" }"""),
    ];

    private static string With(string air) =>
        Sample.With("\"sections\"", $"\"air\": {air}, \"sections\"", Sample.Version2(Sample.Least));

    [Fact]
    public void Documents_of_the_tests_and_of_the_pages_are_valid()
    {
        var page = File.ReadAllText(Path.Combine(Docs, "column-document.md"));
        var shown = page.ReplaceLineEndings("\n").Split("```json\n")[1].Split("```")[0];
        string[] files =
        [
            .. Directory.GetFiles(Path.Combine(Docs, "concepts"), "*.json"),
            .. Directory.GetFiles(
                Path.Combine(Docs, "..", "samples", "Instruments"),
                "*.json",
                SearchOption.AllDirectories
            ),
        ];
        Assert.NotEmpty(files);
        string[] documents =
        [
            Sample.Full,
            Sample.New,
            Sample.Least,
            .. Everything,
            shown,
            .. files.Select(File.ReadAllText),
        ];
        Assert.All(documents, text => Assert.True(IsRead(text) && IsValid(text), text));
    }

    [Property(MaxTest = 100)]
    public void What_is_written_is_valid(ColumnDocument document) =>
        Assert.True(IsValid(document.ToJson()), document.ToJson());

    // A way of writing that the reader takes and the schema does not would be a fault of the schema.
    [Theory]
    [MemberData(nameof(Lengths))]
    public void Every_way_of_writing_a_length_that_is_read_is_valid(string text)
    {
        var document = Sample.With("\"8 mm\"", JsonSerializer.Serialize(text));
        Assert.True(!IsRead(document) || IsValid(document), text);
    }

    public static TheoryData<string> Lengths =>
        [
            .. InlineData(typeof(QuantityTextTests), nameof(QuantityTextTests.Reads_a_length))
                .Concat(
                    InlineData(
                        typeof(QuantityTextTests),
                        nameof(QuantityTextTests.Says_what_is_wrong_with_a_length)
                    )
                )
                .Select(row => (string)row[0]),
            "25.mm",
            "25 .mm",
            "1/2 .in",
            "0.5\u2003m",
            "10'",
        ];

    [Property(MaxTest = 1000)]
    public Property Whatever_text_is_read_as_a_length_is_valid() =>
        Prop.ForAll(
            Gen.Elements(
                    "1",
                    "7",
                    "0",
                    ".",
                    " ",
                    "/",
                    "-",
                    "+",
                    "e",
                    ",",
                    "'",
                    "\"",
                    "mm",
                    "in",
                    "°",
                    "\n",
                    "("
                )
                .NonEmptyListOf()
                .Select(string.Concat)
                .ToArbitrary(),
            Every_way_of_writing_a_length_that_is_read_is_valid
        );

    // The reader's own cases: all are refused by the schema too, but for those that it says it cannot see.
    [Fact]
    public void What_the_reader_refuses_the_schema_refuses_but_for_what_it_cannot_see()
    {
        var cases = InlineData(
                typeof(ColumnDocumentErrorTests),
                nameof(ColumnDocumentErrorTests.Says_where_and_what_is_wrong)
            )
            .Select(row => (Old: (string)row[0], New: (string)row[1], Path: (string)row[2]))
            // No JSON reader hands half a character on.
            .Where(row => !row.New.Contains("\\ud800", StringComparison.Ordinal))
            .ToList();
        Assert.True(cases.Count > 40);
        var unseen = cases
            .Where(row => IsValid(Sample.With(row.Old, row.New)))
            .Select(row => (row.Path, row.New));
        Assert.Equal(Unseen, unseen);
    }

    private static readonly (string, string)[] Unseen =
    [
        // Given twice.
        ("column", "\"column\": 1, \"column\": 1,"),
        ("sections[0].diameter", "\"diameter\": \"30 mm\", \"diameter\": \"30 mm\","),
        // Another unit.
        ("sections[0].length", "\"25 kg\""),
        // Out of range.
        ("sections[0].length", "\"1e999 mm\""),
        ("sections[0].length", "\"0 mm\""),
        ("sections[0].diameter", "\"-30 mm\""),
        ("sections[1].from", "\"0 mm\""),
        ("farEnd.wall", "\"wall\": \"-3 mm\""),
        ("correction", "\"2 m\""),
        ("air.humidity", "\"130 %\""),
        ("air.co2", "\"40 %\""),
        ("air.temperature", "\"200 °C\""),
        ("air.pressure", "\"101.325 Pa\""),
        ("sections[2].points[1][1]", "[\"40 mm\", \"0 mm\"]"),
        ("sections[2].points[0][1]", "\"0 mm\"], [\"40 mm\""),
        // Places that do not begin at 0 or do not increase.
        ("sections[2].points[2][0]", "[\"95 mm\", \"74 mm\"]"),
        ("sections[2].points[1][0]", "[\"0.0005 mm\", \"74 mm\"]"),
        ("sections[0].length", "\"-1/2 in\""),
        ("sections[2].points", "[\"1 mm\", \"70 mm\"]"),
    ];

    // Keys left out, added or misspelt, words that are not known, numbers without a unit: the verdicts are the same.
    [Fact]
    public void Reader_and_schema_agree_on_keys_words_and_kinds_of_values()
    {
        var (read, refused) = (0, 0);
        foreach (var document in Everything)
        {
            foreach (var changed in Changed(document))
            {
                var isRead = IsRead(changed);
                Assert.True(isRead == IsValid(changed), $"{(isRead ? "read" : "refused")}: {changed}");
                (read, refused) = isRead ? (read + 1, refused) : (read, refused + 1);
            }
        }

        // Members that may be left out or are left alone; all else.
        Assert.InRange(read, 40, 80);
        Assert.True(refused > 600, $"{refused}");
    }

    // Nothing else is said of a document with one key misspelt, whatever that key decides.
    [Fact]
    public void A_misspelt_key_is_one_error()
    {
        var changed = 0;
        foreach (var document in Everything)
        {
            foreach (var (text, key) in Misspelt(document))
            {
                using var json = JsonDocument.Parse(text);
                var results = Schema.Evaluate(
                    json.RootElement,
                    new EvaluationOptions { OutputFormat = OutputFormat.Hierarchical }
                );
                var errors = Errors(results).ToList();
                Assert.True(errors.Count == 1, $"{key}: {string.Join(" ", errors)} {text}");
                changed++;
            }
        }

        Assert.True(changed > 100, $"{changed}");
    }

    // What is asked only to decide what to ask is no error.
    private static IEnumerable<string> Errors(EvaluationResults results) =>
        results.IsValid || results.EvaluationPath.ToString().EndsWith("/if", StringComparison.Ordinal)
            ? []
            : (results.Errors?.Values ?? Enumerable.Empty<string>()).Concat(
                (results.Details ?? []).SelectMany(Errors)
            );

    private static IEnumerable<(string Text, string Key)> Misspelt(string text)
    {
        var count = Nodes(JsonNode.Parse(text)!).Count();
        for (var i = 0; i < count; i++)
        {
            if (Nodes(JsonNode.Parse(text)!).ElementAt(i) is not JsonObject found || IsOfAnother(found))
            {
                continue;
            }

            foreach (
                var key in found
                    .Select(member => member.Key)
                    .Where(key => !key.StartsWith("x-", StringComparison.Ordinal))
                    .ToList()
            )
            {
                yield return (With(text, i, node => Rename((JsonObject)node, key, $"{key}q")), key);
            }
        }
    }

    private static bool IsOfAnother(JsonObject found) =>
        found.GetPath().Contains("x-", StringComparison.Ordinal);

    private static void Rename(JsonObject members, string key, string other)
    {
        var value = members[key]!.DeepClone();
        members.Remove(key);
        members.Add(other, value);
    }

    private static IEnumerable<string> Changed(string text)
    {
        var count = Nodes(JsonNode.Parse(text)!).Count();
        for (var i = 0; i < count; i++)
        {
            if (Nodes(JsonNode.Parse(text)!).ElementAt(i) is JsonObject found)
            {
                foreach (var key in found.Select(member => member.Key).ToList())
                {
                    yield return With(text, i, node => ((JsonObject)node).Remove(key));
                    yield return With(text, i, node => Rename((JsonObject)node, key, key.ToUpperInvariant()));
                }

                yield return With(text, i, node => ((JsonObject)node).Add("colour", "red"));
            }
            else if (i > 0)
            {
                yield return With(text, i, node => node.ReplaceWith(25));
                yield return With(text, i, node => node.ReplaceWith("25"));
                yield return With(text, i, node => node.ReplaceWith(true));
                yield return With(text, i, node => node.ReplaceWith(new JsonArray()));
            }
        }
    }

    private static string With(string text, int index, Action<JsonNode> change)
    {
        var root = JsonNode.Parse(text)!;
        change(Nodes(root).ElementAt(index));
        return root.ToJsonString();
    }

    private static IEnumerable<JsonNode> Nodes(JsonNode node) =>
        node switch
        {
            JsonObject members => members.SelectMany(member => Nodes(member.Value!)).Prepend(node),
            JsonArray items => items.SelectMany(item => Nodes(item!)).Prepend(node),
            _ => [node],
        };

    private static IEnumerable<object[]> InlineData(Type tests, string method) =>
        tests
            .GetMethod(method)!
            .GetCustomAttributes<InlineDataAttribute>()
            .SelectMany(data => data.GetData(tests.GetMethod(method)!));

    private static bool IsValid(string text)
    {
        using var json = JsonDocument.Parse(text);
        return Schema.Evaluate(json.RootElement).IsValid;
    }

    private static bool IsRead(string text)
    {
        try
        {
            ColumnDocument.Parse(text);
            return true;
        }
        catch (ColumnDocumentException)
        {
            return false;
        }
    }
}
