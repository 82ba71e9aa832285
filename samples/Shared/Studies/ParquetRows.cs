using System.Buffers.Binary;
using System.Text;
using AirColumn.Studies;

namespace Shared.Studies;

/// <summary>
/// Rows as Apache Parquet, version 1 of the format (parquet-format 2.10): the item as a 64-bit number, others as doubles that may be null, and
/// texts, each column of a row group in one page, plain and not compressed.
/// </summary>
/// <remarks>Packages that write it bring native code, or more than a compiler ahead of time can see through. The tests read it with one of them.</remarks>
internal sealed class ParquetRows : IRowWriter
{
    private const int Together = 10_000; // rows of a group, whatever the parts are: so the same rows make the same bytes

    private static ReadOnlySpan<byte> Magic => "PAR1"u8;

    private readonly Stream stream;
    private readonly ParquetColumn[] columns;
    private readonly List<StudyRow> rows = [];
    private readonly List<(int Rows, List<(long At, int Size)> Pages)> groups = [];
    private long position;
    private long count;

    public ParquetRows(Stream stream, Study study)
    {
        this.stream = stream;
        columns =
        [
            new("item", ParquetType.Int64, Items),
            .. study.Fields.Select(
                (field, i) =>
                    new ParquetColumn(field.Name, ParquetType.Double, (some, page) => Numbers(some, i, page))
            ),
            new("wavefronts", ParquetType.Text, (some, page) => Texts(some, row => row.Wavefronts, page)),
            new("warnings", ParquetType.Text, (some, page) => Texts(some, row => row.Warnings, page)),
            new("error", ParquetType.Text, (some, page) => Texts(some, row => row.Error, page)),
        ];
        Put(Magic);
    }

    public void Add(StudyRow row)
    {
        rows.Add(row);
        count++;
        if (rows.Count == Together)
        {
            WriteGroup();
        }
    }

    public void Complete()
    {
        if (rows.Count > 0)
        {
            WriteGroup();
        }

        var footer = ParquetFooter.Of(columns, groups, count);
        Put(footer);
        Span<byte> length = stackalloc byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(length, footer.Length);
        Put(length);
        Put(Magic);
        stream.Flush();
    }

    public void Dispose() => rows.Clear();

    private void WriteGroup()
    {
        var pages = new List<(long, int)>();
        foreach (var column in columns)
        {
            using var page = new MemoryStream();
            column.Write(rows, page);
            var header = ParquetFooter.PageHeader((int)page.Length, rows.Count);
            pages.Add((position, header.Length + (int)page.Length));
            Put(header);
            Put(page.GetBuffer().AsSpan(0, (int)page.Length));
        }

        groups.Add((rows.Count, pages));
        rows.Clear();
    }

    private void Put(ReadOnlySpan<byte> bytes)
    {
        stream.Write(bytes);
        position += bytes.Length;
    }

    private static void Items(List<StudyRow> rows, MemoryStream page)
    {
        Span<byte> bytes = stackalloc byte[8];
        foreach (var row in rows)
        {
            BinaryPrimitives.WriteInt64LittleEndian(bytes, row.Item);
            page.Write(bytes);
        }
    }

    // First which of them there are: runs of equal ones, each its length times two and then 1 or 0; before them how many bytes that takes.
    private static void Numbers(List<StudyRow> rows, int field, MemoryStream page)
    {
        Span<byte> bytes = stackalloc byte[8];
        page.Write(bytes[..4]);
        for (var i = 0; i < rows.Count; )
        {
            var isThere = !double.IsNaN(rows[i].Numbers[field]);
            var begin = i;
            while (i < rows.Count && !double.IsNaN(rows[i].Numbers[field]) == isThere)
            {
                i++;
            }

            ThriftWriter.Varint(page, (ulong)(i - begin) << 1);
            page.WriteByte(isThere ? (byte)1 : (byte)0);
        }

        BinaryPrimitives.WriteInt32LittleEndian(page.GetBuffer(), (int)page.Length - 4);
        foreach (var row in rows)
        {
            if (row.Numbers[field] is var number && !double.IsNaN(number))
            {
                BinaryPrimitives.WriteDoubleLittleEndian(bytes, number);
                page.Write(bytes);
            }
        }
    }

    private static void Texts(List<StudyRow> rows, Func<StudyRow, string> text, MemoryStream page)
    {
        Span<byte> length = stackalloc byte[4];
        foreach (var row in rows)
        {
            var bytes = Encoding.UTF8.GetBytes(text(row));
            BinaryPrimitives.WriteInt32LittleEndian(length, bytes.Length);
            page.Write(length);
            page.Write(bytes);
        }
    }
}

/// <summary>The types of Parquet that are used here, by the numbers of the format.</summary>
internal enum ParquetType
{
    /// <summary>A whole number.</summary>
    Int64 = 2,

    /// <summary>A number that there may not be.</summary>
    Double = 5,

    /// <summary>UTF-8.</summary>
    Text = 6,
}

/// <summary>A column, and how its values of some rows are written into a page.</summary>
internal sealed record ParquetColumn(
    string Name,
    ParquetType Type,
    Action<List<StudyRow>, MemoryStream> Write
);
