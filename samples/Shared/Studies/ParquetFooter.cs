namespace Shared.Studies;

/// <summary>What a Parquet file says of itself; the numbers of fields are those of parquet.thrift.</summary>
internal static class ParquetFooter
{
    private const int Plain = 0; // encodings
    private const int Rle = 3;
    private const int Utf8 = 0; // a converted type

    /// <summary>What stands before a page: struct PageHeader with a DataPageHeader.</summary>
    public static byte[] PageHeader(int size, int rows)
    {
        using var thrift = new ThriftWriter();
        thrift.Int(1, 0); // a data page
        thrift.Int(2, size);
        thrift.Int(3, size); // as compressed: not at all
        thrift.Begin(5);
        thrift.Int(1, rows);
        thrift.Int(2, Plain);
        thrift.Int(3, Rle); // of definition levels
        thrift.Int(4, Rle); // of repetition levels, of which there are none
        thrift.End();
        return thrift.Complete();
    }

    /// <summary>What stands at the end: struct FileMetaData.</summary>
    public static byte[] Of(
        ParquetColumn[] columns,
        List<(int Rows, List<(long At, int Size)> Pages)> groups,
        long rows
    )
    {
        using var thrift = new ThriftWriter();
        thrift.Int(1, 1); // version
        thrift.List(2, columns.Length + 1);
        thrift.BeginItem();
        thrift.Text(4, "study");
        thrift.Int(5, columns.Length);
        thrift.End();
        foreach (var column in columns)
        {
            thrift.BeginItem();
            thrift.Int(1, (int)column.Type);
            thrift.Int(3, column.Type == ParquetType.Double ? 1 : 0); // optional or required
            thrift.Text(4, column.Name);
            if (column.Type == ParquetType.Text)
            {
                thrift.Int(6, Utf8);
            }

            thrift.End();
        }

        thrift.Long(3, rows);
        thrift.List(4, groups.Count);
        foreach (var (count, pages) in groups)
        {
            Group(thrift, columns, count, pages);
        }

        thrift.Text(6, "AirColumn");
        return thrift.Complete();
    }

    private static void Group(
        ThriftWriter thrift,
        ParquetColumn[] columns,
        int rows,
        List<(long At, int Size)> pages
    )
    {
        thrift.BeginItem();
        thrift.List(1, columns.Length);
        for (var i = 0; i < columns.Length; i++)
        {
            var (at, size) = pages[i];
            thrift.BeginItem();
            thrift.Long(2, at);
            thrift.Begin(3);
            thrift.Int(1, (int)columns[i].Type);
            thrift.Ints(2, Plain, Rle);
            thrift.Texts(3, columns[i].Name);
            thrift.Int(4, 0); // not compressed
            thrift.Long(5, rows);
            thrift.Long(6, size);
            thrift.Long(7, size);
            thrift.Long(9, at);
            thrift.End();
            thrift.End();
        }

        thrift.Long(2, pages.Sum(page => (long)page.Size));
        thrift.Long(3, rows);
        thrift.End();
    }
}
