using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace AirColumn.Documents;

/// <summary>
/// A column as a JSON document, version 2 or 1, to be exchanged between programs. Every quantity in it is a text with its unit, the same in every
/// culture.
/// </summary>
/// <remarks>
/// Immutable; two documents are equal if their names, bores, airs, options and fingerings are equal. Reading is strict: unknown keys, numbers
/// without a unit and everything that the version does not know are errors, which name the place and the allowed values. Defaults: room air
/// (20 °C, 50 % relative humidity, 101.325 kPa, 400 ppm carbon dioxide), full losses and a closed blown end.
/// </remarks>
[JsonConverter(typeof(Converter))]
public sealed record ColumnDocument
{
    private const int BlockSize = 65536;

    private readonly EquatableArray<NamedFingering> fingerings;

    /// <summary>Puts a document together.</summary>
    /// <param name="bore">Its shape.</param>
    /// <param name="air">The air in it: one air, or a profile along the bore.</param>
    /// <param name="options">
    /// All other choices. Default: those of a new <see cref="ColumnOptions"/>. A far end whose radiation is a function is refused, since a
    /// document cannot hold code.
    /// </param>
    /// <param name="name">Its name for people, up to 1000 characters; null if it has none.</param>
    /// <param name="fingerings">Fingerings, each with a name of its own. Default: none.</param>
    /// <exception cref="ArgumentNullException">The bore, the air or a fingering is null.</exception>
    /// <exception cref="ArgumentException">
    /// A name is not allowed or given twice. A fingering is for another number of holes. The radiation is a function or has no formula for
    /// the far end. There are more than 100 000 sections, points of profiles, or holes and branches.
    /// </exception>
    public ColumnDocument(
        Bore bore,
        AirProfile air,
        ColumnOptions? options = null,
        string? name = null,
        IEnumerable<NamedFingering>? fingerings = null
    )
    {
        ArgumentNullException.ThrowIfNull(bore);
        ArgumentNullException.ThrowIfNull(air);
        Bore = bore;
        Air = air;
        Options = options ?? new ColumnOptions();
        Name = name;
        this.fingerings = new EquatableArray<NamedFingering>(fingerings ?? []);
        DocumentLimits.RequireHeld(bore, Options, name, this.fingerings);
    }

    /// <summary>Makes the document of a column, without a name and without named fingerings.</summary>
    /// <param name="column">The column.</param>
    /// <exception cref="ArgumentNullException">The column is null.</exception>
    /// <exception cref="ArgumentException">The radiation is a function or has no formula for the far end, or the bore has too many parts.</exception>
    public ColumnDocument(Column column)
        : this(
            (column ?? throw new ArgumentNullException(nameof(column))).Bore,
            column.AirProfile,
            column.Options
        ) { }

    /// <summary>Its name for people; null if it has none.</summary>
    public string? Name { get; }

    /// <summary>Its shape.</summary>
    public Bore Bore { get; }

    /// <summary>The air in it.</summary>
    public AirProfile Air { get; }

    /// <summary>Losses, wave fronts, blown end and all else that is neither shape nor air.</summary>
    public ColumnOptions Options { get; }

    /// <summary>Its fingerings by name, in the order of the document.</summary>
    public IReadOnlyList<NamedFingering> Fingerings => fingerings;

    /// <summary>Reads a document.</summary>
    /// <param name="json">The text: at most 16 MiB as UTF-8.</param>
    /// <returns>The document.</returns>
    /// <exception cref="ArgumentNullException">The text is null.</exception>
    /// <exception cref="ColumnDocumentException">The text is not a document of version 1 or 2.</exception>
    public static ColumnDocument Parse(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        DocumentReader.RequireSize(json.Length);
        try
        {
            var strict = new UTF8Encoding(false, throwOnInvalidBytes: true);
            return DocumentReader.Read(strict.GetBytes(json));
        }
        catch (EncoderFallbackException problem)
        {
            throw new ColumnDocumentException(
                "",
                "The document holds only half of a surrogate pair; write both halves.",
                problem
            );
        }
    }

    /// <summary>Reads a document from UTF-8 text.</summary>
    /// <param name="utf8">The text: at most 16 MiB.</param>
    /// <returns>The document.</returns>
    /// <exception cref="ColumnDocumentException">The text is not a document of version 1 or 2.</exception>
    public static ColumnDocument Parse(ReadOnlySpan<byte> utf8)
    {
        DocumentReader.RequireSize(utf8.Length);
        return DocumentReader.Read(utf8.ToArray());
    }

    /// <summary>Reads a document from a stream of UTF-8 text.</summary>
    /// <param name="stream">The stream, read to its end and left open: at most 16 MiB.</param>
    /// <returns>The document.</returns>
    /// <exception cref="ArgumentNullException">The stream is null.</exception>
    /// <exception cref="ColumnDocumentException">The text is not a document of version 1 or 2.</exception>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static ColumnDocument Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var bytes = new MemoryStream();
        var block = new byte[BlockSize];
        while (stream.Read(block) is > 0 and var count)
        {
            bytes.Write(block, 0, count);
            DocumentReader.RequireSize(bytes.Length);
        }

        return DocumentReader.Read(bytes.GetBuffer().AsMemory(0, (int)bytes.Length));
    }

    /// <summary>Reads a document from a stream of UTF-8 text without blocking, as from the body of a request.</summary>
    /// <param name="stream">The stream, read to its end and left open: at most 16 MiB.</param>
    /// <param name="cancellationToken">Ends the reading early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The document.</returns>
    /// <exception cref="ArgumentNullException">The stream is null.</exception>
    /// <exception cref="ColumnDocumentException">The text is not a document of version 1 or 2.</exception>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static async Task<ColumnDocument> ReadAsync(
        Stream stream,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var bytes = new MemoryStream();
        var block = new byte[BlockSize];
        while (await stream.ReadAsync(block, cancellationToken).ConfigureAwait(false) is > 0 and var count)
        {
            bytes.Write(block, 0, count);
            DocumentReader.RequireSize(bytes.Length);
        }

        return DocumentReader.Read(bytes.GetBuffer().AsMemory(0, (int)bytes.Length));
    }

    /// <summary>The column of the document, with its tone holes as set in the options.</summary>
    /// <returns>The column.</returns>
    public Column ToColumn() => new(Bore, Air, Options);

    /// <summary>The column of the document with one of the document's named fingerings.</summary>
    /// <param name="fingering">Its name.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentNullException">The name is null.</exception>
    /// <exception cref="ArgumentException">The document has no fingering of that name.</exception>
    public Column ToColumn(string fingering)
    {
        ArgumentNullException.ThrowIfNull(fingering);
        var holes = Fingerings.FirstOrDefault(named => named.Name == fingering)?.Holes;
        return holes is not null
            ? new Column(Bore, Air, Options with { Fingering = holes })
            : throw new ArgumentException(
                $"The document has no fingering {Quote.Of(fingering)}; it has "
                    + (
                        Fingerings.Count == 0
                            ? "none."
                            : $"{Quote.Cut(string.Join(", ", Fingerings.Select(named => named.Name)), 200)}."
                    ),
                nameof(fingering)
            );
    }

    /// <summary>
    /// A column for each fingering of the document, in the order of the fingerings. Parts that the columns share are compiled once. Empty if
    /// the document has no fingerings.
    /// </summary>
    /// <returns>The names of the fingerings with their columns.</returns>
    public IReadOnlyList<(string Fingering, Column Column)> ToColumns()
    {
        if (Fingerings.Count == 0)
        {
            return [];
        }

        var column = ToColumn();
        return [.. Fingerings.Select(named => (named.Name, column.WithFingering(named.Holes)))];
    }

    /// <summary>The document as text of version 2 that reads back to an equal document. Dimensions are in millimetres.</summary>
    /// <returns>The JSON text.</returns>
    /// <exception cref="NotSupportedException">The text would be larger than 16 MiB, the largest that can be read back.</exception>
    public string ToJson() => DocumentWriter.Text(this);

    /// <summary>
    /// A hash that identifies the document: the SHA-256 of the output of <see cref="ToJson"/>, in the canonical form of RFC 8785, as 64
    /// hexadecimal digits. Equal documents have equal hashes, however they were written.
    /// </summary>
    /// <returns>64 hexadecimal digits.</returns>
    public string Sha256() => Convert.ToHexStringLower(SHA256.HashData(DocumentWriter.Canonical(this).Span));

    /// <summary>Lets System.Text.Json read and write documents.</summary>
    public sealed class Converter : JsonConverter<ColumnDocument>
    {
        /// <summary>Reads a document where a serializer expects one.</summary>
        /// <param name="reader">The reader.</param>
        /// <param name="typeToConvert">The type.</param>
        /// <param name="options">The options; what a document may hold does not depend on them.</param>
        /// <returns>The document.</returns>
        /// <exception cref="JsonException">
        /// The text is not a version 1 or 2 document; the message comes from the inner <see cref="ColumnDocumentException"/>. A web service
        /// answers this exception as a bad request.
        /// </exception>
        public override ColumnDocument Read(
            ref Utf8JsonReader reader,
            Type typeToConvert,
            JsonSerializerOptions options
        )
        {
            using var json = JsonDocument.ParseValue(ref reader);
            try
            {
                return DocumentReader.Read(json.RootElement);
            }
            catch (ColumnDocumentException problem)
            {
                throw new JsonException(problem.Message, problem.Path, null, null, problem);
            }
        }

        /// <summary>Writes a document.</summary>
        /// <param name="writer">The writer.</param>
        /// <param name="value">The document.</param>
        /// <param name="options">The options; the text does not depend on them.</param>
        public override void Write(Utf8JsonWriter writer, ColumnDocument value, JsonSerializerOptions options)
        {
            ArgumentNullException.ThrowIfNull(writer);
            ArgumentNullException.ThrowIfNull(value);
            DocumentWriter.Write(writer, value);
        }
    }
}
