using System.Reflection;
using System.Text.Json;
using AirColumn.Documents;
using Json.Schema;

namespace Fuzzing.Tests;

/// <summary>
/// Column documents whose parts are exchanged: each is read, or refused in one line; what is read makes a column and comes back from its
/// text; and what the schema refuses the reader refuses. Raise <c>AIRCOLUMN_FUZZ_TIMES</c> to go on for longer, from other seeds.
/// </summary>
public class ColumnDocumentTests
{
    private static readonly int Documents = ReaderTests.Share(20_000);
    private static readonly int ForTheSchema = Documents / 10; // it is slower than the reader
    private const double LongestSeconds = 5;

    private static readonly string Top = typeof(ColumnDocumentTests)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(a => a.Key == "Top")
        .Value!;

    private static readonly JsonSchema Schema = JsonSchema.FromText(
        File.ReadAllText(Path.Combine(Top, "docs", "column-document.schema.json"))
    );

    private static readonly string[] Values =
    [
        "null",
        "true",
        "0",
        "-1",
        "1",
        "2",
        "0.5",
        "1e-10",
        "1e300",
        "\"\"",
        "[]",
        "{}",
        "\"0 mm\"",
        "\"1e-3 mm\"",
        "\"-5 mm\"",
        "\"1 km\"",
        "\"1e199 km\"",
        "\"7 mm\"",
        "\"1/2 in\"",
        "\"20 °C\"",
        "\"720 °\"",
        "\"1e-9 rad\"",
        "\"open\"",
        "\"closed\"",
        "\"free\"",
        "\"ideal\"",
        "\"bend\"",
        "\"horn\"",
        "\"bessel\"",
        "\"norris1989\"",
        "\"multimodal\"",
        "\"gas-mixture\"",
        "\"all closed\"",
        "\"xox\"",
    ];

    private static IReadOnlyList<string> Examples =>
        [
            .. Directory
                .GetFiles(Path.Combine(Top, "samples", "Instruments"), "*.json", SearchOption.AllDirectories)
                .Concat(Directory.GetFiles(Path.Combine(Top, "docs", "concepts"), "*.json"))
                .Order(StringComparer.Ordinal)
                .Select(File.ReadAllText),
            .. ReaderTests.ColumnDocuments,
        ];

    [Fact]
    public void Exchanged_parts_are_read_or_refused()
    {
        var (read, refused) = (0, 0);
        for (var time = 0; time < ReaderTests.Times; time++)
        {
            var mutator = new TreeMutator(2026 + time, Examples, Values);
            for (var i = 0; i < Documents; i++)
            {
                var text = mutator.Next();
                var effort = new Effort();
                var isRead = IsRead(text);
                var seconds = effort.Seconds;
                Assert.True(seconds < LongestSeconds, $"{seconds} s: {text}");
                Assert.True(
                    !isRead || i >= ForTheSchema || IsValid(text),
                    $"Read against the schema: {text}"
                );
                (read, refused) = isRead ? (read + 1, refused) : (read, refused + 1);
            }
        }

        // Not all of one kind, or it tests but half.
        Assert.True(read > Documents / 50 && refused > Documents / 50, $"{read} read, {refused} refused");
    }

    private static bool IsRead(string text)
    {
        try
        {
            var document = ColumnDocument.Parse(text);
            _ = document.ToColumn();
            Assert.Equal(document, ColumnDocument.Parse(document.ToJson()));
            return true;
        }
        catch (ColumnDocumentException problem)
        {
            Assert.InRange(problem.Message.Length, 10, 500);
            Assert.DoesNotContain(problem.Message, char.IsControl);
            return false;
        }
        catch (Exception problem)
        {
            Assert.Fail($"{text}: {problem}");
            throw;
        }
    }

    private static bool IsValid(string text)
    {
        using var json = JsonDocument.Parse(text);
        return Schema.Evaluate(json.RootElement).IsValid;
    }
}
