using AirColumn;
using AirColumn.Documents;
using Shared;

namespace ColumnTool.Questions;

/// <summary>A column that is asked about, and the document that it comes from.</summary>
internal sealed class AskedColumn(ColumnDocument document, Column column)
{
    private Provenance? provenance;

    public ColumnDocument Document => document;

    public Column Column => column;

    /// <summary>What its answers rest on, found out once.</summary>
    public Provenance Provenance(CancellationToken token) =>
        provenance ??= AirColumn.Documents.Provenance.Of(column, document, token);
}

/// <summary>Reads the columns that questions are about, and keeps the last of them: many questions are about the same.</summary>
/// <remarks>A column is kept by the bytes of its document, so that a file that changes is read anew. Safe to share between threads.</remarks>
internal sealed class ColumnSource(int kept = 0)
{
    private const int LongestKept = 1 << 18;
    private const int MostBytes = 16 << 20;
    private readonly Lock gate = new();
    private readonly LinkedList<(
        int Hash,
        byte[] Document,
        ColumnChoices Choices,
        AskedColumn Column
    )> recent = new();

    /// <summary>The column in a file, or in the standard input for '-'.</summary>
    public AskedColumn OfFile(string path, Arguments arguments)
    {
        var bytes = File(path, Bytes);
        return Of(bytes, path == "-" ? "standard input" : path, arguments);
    }

    /// <summary>The column in the bytes of a document.</summary>
    /// <param name="document">UTF-8.</param>
    /// <param name="name">What it is called in messages; null where it has no name.</param>
    /// <param name="arguments">What else is asked.</param>
    public AskedColumn Of(ReadOnlySpan<byte> document, string? name, Arguments arguments)
    {
        var choices = ColumnChoices.Of(arguments);
        if (kept == 0 || document.Length > LongestKept)
        {
            return Read(document, name, choices, arguments);
        }

        var sum = new HashCode();
        sum.AddBytes(document);
        var hash = sum.ToHashCode();
        if (Find(hash, document, choices) is { } known)
        {
            return known;
        }

        var bytes = document.ToArray();
        var column = Read(bytes, name, choices, arguments);
        lock (gate)
        {
            recent.AddFirst((hash, bytes, choices, column));
            if (recent.Count > kept)
            {
                recent.RemoveLast();
            }
        }

        return column;
    }

    private AskedColumn? Find(int hash, ReadOnlySpan<byte> document, ColumnChoices choices)
    {
        lock (gate)
        {
            for (var node = recent.First; node is not null; node = node.Next)
            {
                if (
                    node.Value.Hash == hash
                    && node.Value.Choices == choices
                    && document.SequenceEqual(node.Value.Document)
                )
                {
                    recent.Remove(node);
                    recent.AddFirst(node);
                    return node.Value.Column;
                }
            }

            return null;
        }
    }

    private static AskedColumn Read(
        ReadOnlySpan<byte> document,
        string? name,
        ColumnChoices choices,
        Arguments arguments
    )
    {
        try
        {
            var read = ColumnDocument.Parse(document);
            return new AskedColumn(read, choices.Of(read, arguments));
        }
        catch (ColumnDocumentException problem)
        {
            throw Problem.Of(problem, name);
        }
        catch (ArgumentException problem)
        {
            throw new Problem(ProblemKind.Document, OneLine.Of(problem), name);
        }
    }

    /// <summary>Reads a file, or the standard input for '-'.</summary>
    /// <exception cref="Problem">It cannot be read.</exception>
    public static T File<T>(string path, Func<Stream, T> read)
    {
        try
        {
            return InputFile.Read(path, read);
        }
        catch (BadInputException problem)
        {
            throw new Problem(ProblemKind.File, problem.Message, path);
        }
    }

    // As much as a document may have and a byte more, so that a longer one is refused as too long.
    private static byte[] Bytes(Stream stream)
    {
        using var bytes = new MemoryStream();
        var block = new byte[1 << 16];
        while (bytes.Length <= MostBytes && stream.Read(block) is > 0 and var count)
        {
            bytes.Write(block, 0, count);
        }

        return bytes.ToArray();
    }
}
