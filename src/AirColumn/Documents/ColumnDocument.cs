using System.Text;
using AirColumn.Acoustics;
using AirColumn.Bores;
using AirColumn.Gases;

namespace AirColumn.Documents;

/// <summary>
/// A column as a JSON document, version 1: what programs exchange. Every quantity in it is a text with its unit, the
/// same in every culture.
/// </summary>
/// <remarks>
/// Immutable; equal when name, bore, air and options are. Reading is strict: unknown keys, numbers without a unit and
/// everything the version does not know are errors that say where and what is allowed. What a document leaves out is
/// room air (20 °C, 50 % relative humidity, 101.325 kPa, 400 ppm carbon dioxide), full losses and a closed blown end.
/// </remarks>
public sealed record ColumnDocument
{
    private const int LongestName = 1000;

    /// <summary>Puts a document together.</summary>
    /// <param name="bore">Its shape.</param>
    /// <param name="air">What fills it.</param>
    /// <param name="options">
    /// Losses, wave fronts, number of modes and blown end; the defaults if left out. The format has no place for a tolerance, so
    /// it must be the default one.
    /// </param>
    /// <param name="name">What people call it: at most 1000 characters; null if it has no name.</param>
    /// <exception cref="ArgumentNullException">The bore or the air is null.</exception>
    /// <exception cref="ArgumentException">The tolerance is not the default, or the name is not allowed.</exception>
    public ColumnDocument(Bore bore, Air air, ColumnOptions? options = null, string? name = null)
    {
        ArgumentNullException.ThrowIfNull(bore);
        ArgumentNullException.ThrowIfNull(air);
        Bore = bore;
        Air = air;
        Options = options ?? new ColumnOptions();
        Name = name;
        RequireDefaults(Options);
        RequireWritable(name);
    }

    /// <summary>What people call it; null if it has no name.</summary>
    public string? Name { get; }

    /// <summary>Its shape.</summary>
    public Bore Bore { get; }

    /// <summary>What fills it.</summary>
    public Air Air { get; }

    /// <summary>Losses and blown end.</summary>
    public ColumnOptions Options { get; }

    /// <summary>Reads a document.</summary>
    /// <param name="json">The text: at most 16 MiB as UTF-8.</param>
    /// <exception cref="ArgumentNullException">The text is null.</exception>
    /// <exception cref="ColumnDocumentException">The text is not a document of version 1.</exception>
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
                "The document holds half a character; write it whole.",
                problem
            );
        }
    }

    /// <summary>Reads a document from a stream of UTF-8 text.</summary>
    /// <param name="stream">The stream, read to its end and left open: at most 16 MiB.</param>
    /// <exception cref="ArgumentNullException">The stream is null.</exception>
    /// <exception cref="ColumnDocumentException">The text is not a document of version 1.</exception>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static ColumnDocument Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var bytes = new MemoryStream();
        var block = new byte[65536];
        while (stream.Read(block) is > 0 and var count)
        {
            bytes.Write(block, 0, count);
            DocumentReader.RequireSize(bytes.Length);
        }

        return DocumentReader.Read(bytes.GetBuffer().AsMemory(0, (int)bytes.Length));
    }

    /// <summary>The column, ready to answer.</summary>
    public Column ToColumn() => new(Bore, Air, Options);

    /// <summary>
    /// The document as text that reads back to an equal one. Dimensions are in millimetres. The points of a profile that
    /// was not itself read from text may move by a rounding error, less than 1 part in 10¹².
    /// </summary>
    /// <exception cref="NotSupportedException">The bore has a section or an end, or holes or branches, that version 1 has no name for.</exception>
    public string ToJson() => DocumentWriter.Write(this);

    private static void RequireDefaults(ColumnOptions options)
    {
        var standard = new ColumnOptions().Tolerance;
        if (options.Tolerance != standard)
        {
            throw new ArgumentException(
                $"The tolerance is {Require.Show(options.Tolerance, "")}; a document has no place for it, so it must be "
                    + $"the default, {Require.Show(standard, "")}. Set it on the options of the column instead.",
                nameof(options)
            );
        }

        if (options.BlownEnd.IsFree)
        {
            throw new ArgumentException(
                $"The blown end is a {options.BlownEnd}; a document knows a closed one and an open one with a given correction only. "
                    + "Set it on the options of the column instead.",
                nameof(options)
            );
        }

        if (options.Radiation != RadiationModel.Exact)
        {
            throw new ArgumentException(
                $"The radiation model is '{options.Radiation}'; a document has no place for it, so it must be the default, "
                    + "exact. Set it on the options of the column instead.",
                nameof(options)
            );
        }
    }

    private static void RequireWritable(string? name)
    {
        if (name is null)
        {
            return;
        }

        if (name.Length > LongestName)
        {
            throw new ArgumentException(
                $"The name has {Require.Show(name.Length, "")} characters; allowed are {LongestName}.",
                nameof(name)
            );
        }

        for (var i = 0; i < name.Length; i++)
        {
            if (char.IsSurrogatePair(name, i))
            {
                i++;
            }
            else if (char.IsSurrogate(name[i]))
            {
                throw new ArgumentException("The name holds half a character; write it whole.", nameof(name));
            }
        }
    }
}
