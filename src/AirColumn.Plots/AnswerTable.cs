using System.Buffers;
using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;

namespace AirColumn.Plots;

/// <summary>An answer as a small table of the members of its JSON, so that every answer has a view without one of its own.</summary>
internal static class AnswerTable
{
    // Longer lists are counted: a view is read, not computed with.
    private const int Longest = 12;

    /// <summary>The table, as HTML.</summary>
    public static string Of(IJsonAnswer answer)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer))
        {
            writer.WriteStartObject();
            answer.WriteMembers(writer);
            writer.WriteEndObject();
        }

        using var json = JsonDocument.Parse(buffer.WrittenMemory);
        return Cell(json.RootElement);
    }

    private static string Cell(JsonElement value) =>
        value.ValueKind switch
        {
            JsonValueKind.Object => Table(
                value.EnumerateObject().Select(member => (member.Name, member.Value))
            ),
            JsonValueKind.Array when value.GetArrayLength() > Longest => string.Create(
                CultureInfo.InvariantCulture,
                $"{value.GetArrayLength()} values"
            ),
            JsonValueKind.Array => string.Join("<br>", value.EnumerateArray().Select(Cell)),
            JsonValueKind.Null => "",
            _ => WebUtility.HtmlEncode(value.ToString()),
        };

    private static string Table(IEnumerable<(string Name, JsonElement Value)> members)
    {
        var text = new StringBuilder("<table><tbody>");
        foreach (var (name, value) in members)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"<tr><th>{WebUtility.HtmlEncode(name)}</th><td>{Cell(value)}</td></tr>"
            );
        }

        return text.Append("</tbody></table>").ToString();
    }
}
