using System.Text;
using System.Text.Json;

namespace ColumnTool.Lines;

/// <summary>What a line says on the outside: whose it is and what it wants. The rest is read by who answers it.</summary>
/// <param name="Id">The id as JSON wrote it; null where there is none.</param>
/// <param name="Verb">What is asked; null where that is no text.</param>
/// <param name="Question">The id of the question that is taken back, as JSON wrote it.</param>
/// <param name="Wrong">Why it is no request; null if it is one.</param>
internal readonly record struct Envelope(string? Id, string? Verb, string? Question, string? Wrong)
{
    private const int LongestId = 200;

    /// <summary>Reads a line.</summary>
    public static Envelope Read(ReadOnlySpan<byte> line)
    {
        var (id, verb, question) = ((string?)null, (string?)null, (string?)null);
        try
        {
            var reader = new Utf8JsonReader(line);
            if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
            {
                return new(null, null, null, "The line is not a JSON object.");
            }

            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
            {
                if (reader.ValueTextEquals("id"u8))
                {
                    reader.Read();
                    id = Raw(ref reader);
                }
                else if (reader.ValueTextEquals("question"u8))
                {
                    reader.Read();
                    question = Raw(ref reader);
                }
                else if (reader.ValueTextEquals("verb"u8))
                {
                    reader.Read();
                    verb = reader.TokenType == JsonTokenType.String ? reader.GetString() : null;
                    reader.Skip();
                }
                else
                {
                    reader.Skip();
                }
            }

            // Anything behind the object is not JSON.
            reader.Read();
        }
        catch (Exception problem) when (problem is JsonException or InvalidOperationException)
        {
            return new(id, null, null, NotJson(problem));
        }

        return id is null
            ? new(
                null,
                null,
                null,
                "The request has no id; give it one, a number or a text of up to 200 bytes, such as \"id\": 1."
            )
            : new(id, verb, question, null);
    }

    private static string NotJson(Exception problem) =>
        problem is JsonException { BytePositionInLine: { } position }
            ? $"The line is not JSON, from byte {position + 1} on."
            : "The line is not JSON: a text in it holds only half of a surrogate pair.";

    // Null for what cannot be an id.
    private static string? Raw(ref Utf8JsonReader reader)
    {
        if (
            reader.TokenType is JsonTokenType.Number or JsonTokenType.String
            && reader.ValueSpan.Length <= LongestId
        )
        {
            if (reader.TokenType == JsonTokenType.Number)
            {
                return Encoding.UTF8.GetString(reader.ValueSpan);
            }

            // Half a character cannot be written back.
            reader.GetString();
            return $"\"{Encoding.UTF8.GetString(reader.ValueSpan)}\"";
        }

        reader.Skip();
        return null;
    }
}
