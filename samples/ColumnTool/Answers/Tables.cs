using System.Text.Json;

namespace ColumnTool.Answers;

/// <summary>A field that CSV can show.</summary>
internal interface ITable<in T>
{
    /// <summary>The names of the columns, with underscores.</summary>
    IEnumerable<string> Header { get; }

    /// <summary>The rows, a line break behind each.</summary>
    IEnumerable<string> Lines(T of);
}

/// <summary>A list of objects.</summary>
internal sealed class ListField<T, TRow>(
    string name,
    string meaning,
    Func<T, IReadOnlyList<TRow>?> rows,
    IReadOnlyList<Field<TRow>> fields,
    bool mayLack
) : Field<T>(name, meaning), ITable<T>
{
    private readonly Cell<TRow>[] cells = [.. fields.OfType<Cell<TRow>>()];

    public override bool IsOptional => mayLack;

    public IEnumerable<string> Header => Csv.Header(cells);

    public IEnumerable<string> Lines(T of) => Csv.Lines(cells, rows(of) ?? []);

    public override void WriteJson(Utf8JsonWriter json, T of)
    {
        if (rows(of) is not { } list)
        {
            return;
        }

        json.WriteStartArray(Encoded);
        foreach (var row in list)
        {
            json.WriteStartObject();
            foreach (var field in fields)
            {
                field.WriteJson(json, row);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public override void WriteSchema(Utf8JsonWriter schema) =>
        Schema.Type(
            schema,
            ["array"],
            Meaning,
            array =>
            {
                array.WritePropertyName("items");
                Schema.Type(
                    array,
                    ["object"],
                    null,
                    inside => Schema.Members(inside, Schema.Members(fields))
                );
            }
        );

    public override void Show(TextPage page, T of)
    {
        if (rows(of) is not { } list)
        {
            return;
        }

        page.Table(cells, list);
        var deeper = fields.Where(field => field is not Cell<TRow>).ToList();
        for (var i = 0; i < list.Count && deeper.Count > 0; i++)
        {
            page.Under($"{i + 1}");
            foreach (var field in deeper)
            {
                field.Show(page, list[i]);
            }
        }
    }

    public override IEnumerable<(string Path, string Unit, string Meaning)> Rows() =>
        fields
            .SelectMany(field => field.Rows())
            .Select(row => ($"{Name}[].{row.Path}", row.Unit, row.Meaning));
}

/// <summary>Lists of numbers side by side: members of the answer itself.</summary>
internal sealed class ColumnsField<T, TRow>(
    Func<T, IReadOnlyList<TRow>> rows,
    IReadOnlyList<Cell<TRow>> columns
) : Field<T>(columns[0].Name, columns[0].Meaning), ITable<T>, IColumns
{
    public IEnumerable<Field> Cells => columns;

    public IEnumerable<string> Header => Csv.Header(columns);

    public IEnumerable<string> Lines(T of) => Csv.Lines(columns, rows(of));

    public override void WriteJson(Utf8JsonWriter json, T of)
    {
        var list = rows(of);
        foreach (var column in columns)
        {
            json.WriteStartArray(column.Name);
            foreach (var row in list)
            {
                column.WriteValue(json, row);
            }

            json.WriteEndArray();
        }
    }

    public override void WriteSchema(Utf8JsonWriter schema) =>
        throw new InvalidOperationException("Each list has a schema of its own.");

    public override void Show(TextPage page, T of) => page.Table(columns, rows(of));

    public override IEnumerable<(string Path, string Unit, string Meaning)> Rows() =>
        columns.Select(column => ($"{column.Name}[]", column.Unit, column.Meaning));
}

/// <summary>Cells as comma-separated values.</summary>
internal static class Csv
{
    public static IEnumerable<string> Header<T>(IEnumerable<Cell<T>> cells) =>
        cells.Select(cell => Words.Underscored(cell.Name));

    public static string Quoted(string text) =>
        text.AsSpan().ContainsAny(",\"\r\n") ? $"\"{text.Replace("\"", "\"\"")}\"" : text;

    public static IEnumerable<string> Lines<T>(IReadOnlyList<Cell<T>> cells, IEnumerable<T> rows) =>
        rows.Select(row => string.Join(',', cells.Select(cell => cell.Csv(row))) + "\n");
}
