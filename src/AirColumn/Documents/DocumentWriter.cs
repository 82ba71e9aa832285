using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace AirColumn.Documents;

/// <summary>Writes a column document of version 2.</summary>
internal static class DocumentWriter
{
    // Units stay readable; the text is data, never part of a web page.
    private static readonly JavaScriptEncoder Plain = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;

    /// <summary>The document as text for people too.</summary>
    public static string Text(ColumnDocument document)
    {
        using var bytes = Utf8(
            document,
            new JsonWriterOptions
            {
                Indented = true,
                NewLine = "\n",
                Encoder = Plain,
            }
        );
        return bytes.Length <= DocumentReader.LargestSize
            ? Encoding.UTF8.GetString(bytes.GetBuffer().AsSpan(0, (int)bytes.Length))
            : throw new NotSupportedException(
                "The document would be larger than 16 MiB, the largest that can be read back; describe the bore with fewer sections or points."
            );
    }

    /// <summary>The canonical form of the document, UTF-8.</summary>
    public static ReadOnlyMemory<byte> Canonical(ColumnDocument document)
    {
        using var bytes = Utf8(document, new JsonWriterOptions { Encoder = Plain });
        using var json = JsonDocument.Parse(bytes.GetBuffer().AsMemory(0, (int)bytes.Length));
        return CanonicalJson.Of(json.RootElement);
    }

    /// <summary>The document as a JSON value.</summary>
    public static void Write(Utf8JsonWriter json, ColumnDocument document)
    {
        json.WriteStartObject();
        json.WriteNumber("column", 2);
        BoreWriter.WriteName(json, document.Name);
        AirWriter.Write(json, document.Air);
        WriteOptions(json, document.Options);
        BoreWriter.Write(json, document.Bore);
        if (document.Bore.Holes.Count > 0 || document.Options.Fingering != Fingering.AllOpen)
        {
            json.WriteString("fingering", document.Options.Fingering.ToString());
        }

        WriteFingerings(json, document.Fingerings);
        json.WriteEndObject();
    }

    private static MemoryStream Utf8(ColumnDocument document, JsonWriterOptions layout)
    {
        var bytes = new MemoryStream();
        using var json = new Utf8JsonWriter(bytes, layout);
        Write(json, document);
        return bytes;
    }

    private static void WriteOptions(Utf8JsonWriter json, ColumnOptions options)
    {
        json.WriteString("losses", Vocabulary.Losses.For(options.Losses));
        if (options.LossFactor != 1)
        {
            json.WriteNumber("lossFactor", options.LossFactor);
        }

        json.WriteString("wavefronts", Vocabulary.Fronts.For(options.Wavefronts));
        if (options.Modes is { } modes)
        {
            json.WriteNumber("modes", modes);
        }

        json.WriteString("radiation", Vocabulary.Radiation.For(options.Radiation));
        if (!options.MutualRadiation)
        {
            json.WriteBoolean("mutualRadiation", false);
        }

        json.WriteNumber("tolerance", options.RelativeTolerance);
        var end = options.BlownEnd;
        json.WriteString(
            "blownEnd",
            end.IsFree ? "free"
                : end.IsOpen ? "open"
                : "closed"
        );
        if (end.Free is { } free)
        {
            json.WriteString("blownWall", ExactText.Metres(free.WallMetres));
        }
        else if (end.IsOpen)
        {
            json.WriteString("correction", ExactText.Metres(end.CorrectionMetres));
        }
    }

    private static void WriteFingerings(Utf8JsonWriter json, IReadOnlyList<NamedFingering> fingerings)
    {
        if (fingerings.Count == 0)
        {
            return;
        }

        json.WriteStartArray("fingerings");
        foreach (var fingering in fingerings)
        {
            json.WriteStartObject();
            json.WriteString("name", fingering.Name);
            json.WriteString("holes", fingering.Holes.ToString());
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
