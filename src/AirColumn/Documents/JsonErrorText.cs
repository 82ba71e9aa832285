using System.Globalization;
using System.Text;
using System.Text.Json;

namespace AirColumn.Documents;

/// <summary>What is wrong with text that is not JSON, and in which line.</summary>
internal static class JsonErrorText
{
    private const int LongestDetail = 150;

    /// <summary>One line that begins with the place.</summary>
    public static string Of(JsonException problem, ReadOnlySpan<byte> utf8)
    {
        if (EndsTooEarly(utf8))
        {
            var end = utf8.TrimEnd(" \t\r\n"u8).Length;
            return Text(
                utf8,
                end,
                "it ends too early; a quotation mark, a brace or a bracket is not closed."
            );
        }

        var offset = StartOf((int)(problem.LineNumber ?? 0), utf8) + (int)(problem.BytePositionInLine ?? 0);
        return Text(utf8, Math.Min(offset, utf8.Length), Detail(problem));
    }

    private static string Text(ReadOnlySpan<byte> utf8, int offset, string detail)
    {
        var before = utf8[..offset];
        // In characters, as an editor counts them.
        var position = Encoding.UTF8.GetCharCount(before[(before.LastIndexOf((byte)'\n') + 1)..]) + 1;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"The document is not complete JSON; line {before.Count((byte)'\n') + 1}, position {position}: {detail}"
        );
    }

    // Whether more text could make it whole.
    private static bool EndsTooEarly(ReadOnlySpan<byte> utf8)
    {
        var reader = new Utf8JsonReader(utf8, isFinalBlock: false, new JsonReaderState());
        try
        {
            while (reader.Read()) { }
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static int StartOf(int line, ReadOnlySpan<byte> utf8)
    {
        var start = 0;
        for (var i = 0; i < line; i++)
        {
            start += utf8[start..].IndexOf((byte)'\n') + 1;
        }

        return start;
    }

    // The reader appends the place in its own way, and quotes all that follows a misspelt word.
    private static string Detail(JsonException problem)
    {
        var appended = problem.Message.IndexOf(" LineNumber:", StringComparison.Ordinal);
        var detail = appended < 0 ? problem.Message : problem.Message[..appended];
        return detail.Length <= LongestDetail
            ? Quote.Cut(detail, LongestDetail)
            : "this is not a JSON value.";
    }
}
