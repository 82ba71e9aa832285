using System.Text.Json;
using System.Text.Unicode;
using AirColumn.Acoustics;
using AirColumn.Bores;

namespace AirColumn.Documents;

/// <summary>Reads a column document of version 1 from UTF-8 text.</summary>
internal static class DocumentReader
{
    /// <summary>The largest document that is read, in bytes.</summary>
    public const int LargestSize = 16 * 1024 * 1024;

    private const int Deepest = 16;

    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = Deepest };

    private static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    /// <summary>Reads a document.</summary>
    public static ColumnDocument Read(ReadOnlyMemory<byte> utf8)
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
            throw new ColumnDocumentException(
                "",
                "The document is empty; it must be a JSON object that begins with \"column\": 1."
            );
        }

        using var json = Parse(utf8);
        return Document(new DocumentValue("", json.RootElement));
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

    private static ColumnDocument Document(DocumentValue value)
    {
        var document = DocumentObject.Of(value, "{ \"column\": 1, … }");
        RequireVersion(document.Required("column", "1, the version of the format"));
        document.AllowOnly(
            "column",
            "name",
            "air",
            "losses",
            "wavefronts",
            "modes",
            "blownEnd",
            "correction",
            "sections",
            "farEnd"
        );
        var name = document.Optional("name")?.Text();
        var sections = SectionReader.Read(document.Required("sections", "[ … ]"));
        var farEnd = EndReader.Far(document.Required("farEnd", "{ \"kind\": \"open\" }"));
        var air = AirReader.Read(document.Optional("air"));
        var options = new ColumnOptions
        {
            Losses = Losses(document.Optional("losses")),
            Wavefronts = Fronts(document.Optional("wavefronts")),
            Modes = Modes(document.Optional("modes")),
            BlownEnd = EndReader.Blown(document),
        };
        return Checked.Make(
            document,
            () => new ColumnDocument(new Bore(sections, farEnd), air, options, name)
        );
    }

    private static void RequireVersion(DocumentValue version)
    {
        if (version.Json.ValueKind != JsonValueKind.Number || version.Number() != 1)
        {
            throw version.Wrong("this reader knows version 1 of the format only; write \"column\": 1.");
        }
    }

    private static Wavefronts Fronts(DocumentValue? wavefronts) =>
        wavefronts?.Text() is "spherical"
            ? throw wavefronts.Wrong(
                "such wave fronts cannot be computed; allowed: automatic, multimodal, curved, sloped, plane."
            )
            : wavefronts?.Word("automatic", "multimodal", "curved", "sloped", "plane") switch
            {
                "plane" => Wavefronts.Plane,
                "sloped" => Wavefronts.Sloped,
                "curved" => Wavefronts.Curved,
                "multimodal" => Wavefronts.Multimodal,
                _ => Wavefronts.Automatic,
            };

    private static int? Modes(DocumentValue? modes)
    {
        if (modes is null)
        {
            return null;
        }

        var count = modes.Number();
        return count is >= 1 and <= ColumnOptions.MostModes && count == Math.Floor(count)
            ? (int)count
            : throw modes.Wrong(
                $"it must be a whole number from 1 to {ColumnOptions.MostModes}; leave it out, and as many are taken as the bore needs."
            );
    }

    private static WallLosses Losses(DocumentValue? losses) =>
        losses?.Word("none", "full", "large-tube") switch
        {
            "none" => WallLosses.None,
            "large-tube" => WallLosses.LargeTube,
            _ => WallLosses.Full,
        };
}
