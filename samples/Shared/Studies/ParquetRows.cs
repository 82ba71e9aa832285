using AirColumn.Studies;
using Parquet;
using Parquet.Schema;

namespace Shared.Studies;

/// <summary>
/// Rows as Apache Parquet: the item as a 64-bit number, the other numbers as doubles that may be null, and texts.
/// </summary>
/// <remarks>The package only writes asynchronously; what is waited for here goes into a file or into memory.</remarks>
internal sealed class ParquetRows : IRowWriter
{
    // Whatever the size of the parts: so the same rows make the same bytes.
    private const int RowsOfGroup = 10_000;

    private static readonly ParquetOptions Options = new() { CompressionMethod = CompressionMethod.Snappy };

    private readonly DataField item = new DataField<long>("item");
    private readonly DataField[] numbers;
    private readonly (DataField Field, Func<StudyRow, string> Of)[] texts =
    [
        (Text("wavefronts"), row => row.Wavefronts),
        (Text("warnings"), row => row.Warnings),
        (Text("error"), row => row.Error),
    ];

    private readonly ParquetWriter writer;
    private readonly List<StudyRow> rows = [];

    public ParquetRows(Stream stream, Study study)
    {
        numbers = [.. study.Fields.Select(field => new DataField<double?>(field.Name))];
        var schema = new ParquetSchema([item, .. numbers, .. texts.Select(text => text.Field)]);
        writer = Result(ParquetWriter.CreateAsync(schema, stream, Options));
    }

    public void Add(StudyRow row)
    {
        rows.Add(row);
        if (rows.Count == RowsOfGroup)
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

        writer.DisposeAsync().AsTask().GetAwaiter().GetResult();
    }

    public void Dispose() => rows.Clear();

    private void WriteGroup()
    {
        using var group = writer.CreateRowGroup();
        Write(group.WriteAsync<long>(item, rows.Select(row => row.Item).ToArray()));
        for (var i = 0; i < numbers.Length; i++)
        {
            Write(group.WriteAsync<double>(numbers[i], rows.Select(row => Number(row, i)).ToArray()));
        }

        foreach (var (field, of) in texts)
        {
            Write(group.WriteAsync(field, rows.ConvertAll(row => of(row))));
        }

        group.CompleteValidate();
        rows.Clear();
    }

    private static double? Number(StudyRow row, int field) =>
        row.Numbers[field] is var number && double.IsNaN(number) ? null : number;

    private static DataField<string> Text(string name) => new(name, nullable: false);

    private static void Write(Task task) => task.GetAwaiter().GetResult();

    private static T Result<T>(Task<T> task) => task.GetAwaiter().GetResult();
}
