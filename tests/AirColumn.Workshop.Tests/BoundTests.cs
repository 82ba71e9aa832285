using AirColumn.Workshop.Measurements;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;

namespace AirColumn.Workshop.Tests;

/// <summary>Deep or huge files are refused in a line, before they cost anything.</summary>
public class BoundTests
{
    public static TheoryData<string> Readers => ["parts", "history", "pipes", "sockets"];

    [Theory]
    [MemberData(nameof(Readers))]
    public void More_than_a_million_characters_are_refused(string reader)
    {
        var problem = Assert.Throws<FormatException>(() => Read(reader, new string(' ', 1_000_001)));
        Assert.EndsWith(
            "has 1000001 characters; at most 1000000 are allowed.",
            problem.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("parts", "The parts file is nested more than ")]
    [InlineData("history", "The history is nested more than ")]
    public void Nesting_is_refused_however_deep(string reader, string message)
    {
        var deep = string.Concat(Enumerable.Repeat("{\"a\":[", 100_000));
        var problem = Assert.Throws<FormatException>(() => Read(reader, deep));
        Assert.StartsWith(message, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void As_many_parts_as_a_file_holds_are_read()
    {
        const string One = """{"part":"fitting","adds":"1 mm","inside":"9 mm"},""";
        var many = string.Concat(Enumerable.Repeat(One, 900_000 / One.Length));
        var file = PartsFile.Read(
            $$"""{"tube":1,"parts":[{{many}}{"part":"pipe","inside":"9 mm","outside":"11 mm","length":"open"}]}""",
            Catalogue.Standard
        );
        Assert.Equal(900_000 / One.Length + 1, file.Assembly.Parts.Count);
    }

    private static object Read(string reader, string text) =>
        reader switch
        {
            "parts" => PartsFile.Read(text, Catalogue.Standard),
            "history" => MeasurementHistory.Read(text),
            "pipes" => Catalogue.Standard.WithPipes(text),
            _ => Catalogue.Standard.WithSockets(text),
        };
}
