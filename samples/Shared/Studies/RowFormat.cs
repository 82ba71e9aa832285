using AirColumn.Studies;

namespace Shared.Studies;

/// <summary>Writes rows one after the other into a stream that it leaves open.</summary>
internal interface IRowWriter : IDisposable
{
    /// <summary>Writes a row.</summary>
    void Add(StudyRow row);

    /// <summary>Writes what belongs behind the last one.</summary>
    void Complete();
}

/// <summary>A format of files with the rows of a study: the same rows make the same bytes.</summary>
internal sealed record RowFormat(string Extension, Func<Stream, Study, IRowWriter> Begin)
{
    /// <summary>Comma-separated values: what parts are read back from.</summary>
    public static RowFormat Csv { get; } = new(".csv", (stream, study) => new CsvRows(stream, study));

    /// <summary>Apache Parquet.</summary>
    public static RowFormat Parquet { get; } =
        new(".parquet", (stream, study) => new ParquetRows(stream, study));

    /// <summary>All of them.</summary>
    public static IReadOnlyList<RowFormat> All { get; } = [Csv, Parquet];

    /// <summary>Writes rows.</summary>
    public void Write(Stream stream, Study study, IEnumerable<StudyRow> rows)
    {
        using var writer = Begin(stream, study);
        foreach (var row in rows)
        {
            writer.Add(row);
        }

        writer.Complete();
    }
}

/// <summary>A file that does not hold what it should.</summary>
internal sealed class DamagedException(string message) : Exception(message);
