using System.Text;
using System.Text.Json;
using ColumnTool.Answers;
using Shared;

namespace ColumnTool.Questions;

/// <summary>A text that a command line has in a file and JSON as it is.</summary>
internal sealed class FileKind<T>(Func<TextReader, T> read) : Kind<T>
{
    public override T Read(IReadOnlyList<string> texts) =>
        InputFile.Read(
            texts[0],
            stream =>
            {
                using var text = new StreamReader(stream, Encoding.UTF8);
                return read(text);
            }
        );

    public override T Read(JsonElement json) =>
        json.ValueKind == JsonValueKind.String
            ? read(new StringReader(json.GetString()!))
            : throw new FormatException(
                $"{JsonRead.Shown(json)} is not allowed; write the text of the file."
            );

    public override void WriteSchema(Utf8JsonWriter schema, string description) =>
        Schema.Type(schema, ["string"], description);
}
