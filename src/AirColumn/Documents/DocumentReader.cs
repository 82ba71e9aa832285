using System.Text.Json;
using System.Text.Unicode;

namespace AirColumn.Documents;

/// <summary>Reads a column document of any version from UTF-8 text.</summary>
internal static class DocumentReader
{
    /// <summary>The largest document that is read, in bytes.</summary>
    public const int LargestSize = 16 * 1024 * 1024;

    private const int Deepest = 64;
    private const int Newest = 2;
    private const string NewestText = "2";

    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = Deepest };

    private static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    /// <summary>Reads a document.</summary>
    public static ColumnDocument Read(ReadOnlyMemory<byte> utf8)
    {
        using var json = Json(utf8, "a JSON object that begins with \"column\": 2");
        return Read(json.RootElement);
    }

    /// <summary>Reads text of any document as JSON.</summary>
    /// <param name="utf8">The text.</param>
    /// <param name="what">What it must be, for the message.</param>
    public static JsonDocument Json(ReadOnlyMemory<byte> utf8, string what)
    {
        RequireSize(utf8.Length);
        if (utf8.Span.StartsWith(ByteOrderMark))
        {
            utf8 = utf8[ByteOrderMark.Length..];
        }

        if (!Utf8.IsValid(utf8.Span))
        {
            throw new ColumnDocumentException("", "The document is not UTF-8 text; save it as UTF-8.");
        }

        if (utf8.Span.Trim(" \t\r\n"u8).IsEmpty)
        {
            throw new ColumnDocumentException("", $"The document is empty; it must be {what}.");
        }

        return Parse(utf8);
    }

    /// <summary>Refuses a document that is too large.</summary>
    public static void RequireSize(long bytes)
    {
        if (bytes > LargestSize)
        {
            throw new ColumnDocumentException(
                "",
                $"The document is larger than {LargestSize / (1024 * 1024)} MiB, which is the limit."
            );
        }
    }

    private static JsonDocument Parse(ReadOnlyMemory<byte> utf8)
    {
        try
        {
            return JsonDocument.Parse(utf8, Strict);
        }
        catch (JsonException problem)
        {
            throw new ColumnDocumentException("", JsonErrorText.Of(utf8.Span, Deepest), problem);
        }
    }

    /// <summary>Reads a document that a JSON reader has read.</summary>
    public static ColumnDocument Read(JsonElement json) => Read(new DocumentValue("", json, Newest));

    /// <summary>Reads a document that stands in another.</summary>
    public static ColumnDocument Read(DocumentValue value)
    {
        var document = Document(value);
        document.AllowOnly(
            [
                "column",
                "name",
                "air",
                "losses",
                "wavefronts",
                "modes",
                "blownEnd",
                "correction",
                "sections",
                "farEnd",
            ],
            "blownWall",
            "holes",
            "branches",
            "fingering",
            "fingerings",
            "radiation",
            "tolerance",
            "lossFactor",
            "mutualRadiation"
        );
        var name = document.Optional("name")?.Text();
        var bore = BoreReader.Read(document);
        var air = AirReader.Read(document.Optional("air"));
        var options = OptionsReader.Read(document, bore.Holes.Count);
        var fingerings = FingeringReader.List(document.Optional("fingerings"), bore.Holes.Count);
        return Checked.Make(
            document,
            () => new ColumnDocument(bore, air, options, name, fingerings),
            ("end", document.PathOf("radiation"))
        );
    }

    // The version decides how keys are read, so that it has to be read first.
    private static DocumentObject Document(DocumentValue value)
    {
        const string Example = $"{{ \"column\": {NewestText}, … }}";
        var document = DocumentObject.Of(value, Example);
        var version = document.Required("column", $"{NewestText}, the version of the format");
        return (version.Json.ValueKind == JsonValueKind.Number ? version.Number() : 0) switch
        {
            Newest => document,
            1 => DocumentObject.Of(value with { Version = 1 }, Example),
            _ => throw version.Wrong(
                $"this reader knows versions 1 and 2 of the format; write \"column\": {NewestText}."
            ),
        };
    }
}
