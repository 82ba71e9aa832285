using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using ColumnTool.Questions;

namespace ColumnTool.Lines;

/// <summary>Makes lines of answers; for one thread.</summary>
internal sealed class AnswerLine : IDisposable
{
    private const int Kept = 1 << 20;
    private static readonly JsonWriterOptions Layout = new()
    {
        // The text is data for programs, never part of a web page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        SkipValidation = true,
    };

    private ArrayBufferWriter<byte> bytes = new(4096);
    private readonly Utf8JsonWriter json;

    public AnswerLine()
    {
        json = new Utf8JsonWriter(bytes, Layout);
    }

    public void Dispose() => json.Dispose();

    /// <summary>The line of an answer, valid until the next.</summary>
    /// <param name="id">The id as JSON wrote it.</param>
    /// <param name="verb">What was asked.</param>
    /// <param name="answer">Writes the members of the answer.</param>
    public ReadOnlyMemory<byte> Of(string id, string verb, Action<Utf8JsonWriter> answer)
    {
        Begin(id);
        json.WriteString("verb", verb);
        json.WriteStartObject("answer");
        answer(json);
        json.WriteEndObject();
        return End();
    }

    /// <summary>The line of a question without an answer, valid until the next.</summary>
    public ReadOnlyMemory<byte> Of(string? id, Problem problem)
    {
        Begin(id);
        json.WriteStartObject("error");
        json.WriteString("code", problem.Code);
        json.WriteString("message", problem.Message);
        json.WriteString("document", problem.Document);
        json.WriteString("place", problem.Place);
        json.WriteEndObject();
        return End();
    }

    private void Begin(string? id)
    {
        if (bytes.Capacity > Kept)
        {
            bytes = new ArrayBufferWriter<byte>(4096);
        }

        bytes.ResetWrittenCount();
        json.Reset(bytes);
        json.WriteStartObject();
        json.WritePropertyName("id");
        json.WriteRawValue(id ?? "null", skipInputValidation: true);
    }

    private ReadOnlyMemory<byte> End()
    {
        json.WriteEndObject();
        json.Flush();
        bytes.Write("\n"u8);
        return bytes.WrittenMemory;
    }
}
