using System.Globalization;

namespace AirColumn.Tests;

/// <summary>
/// A table of independent values from the folder Reference. Each file states its source, model and precision in
/// the comment lines at its head.
/// </summary>
internal sealed class ReferenceTable
{
    private readonly Dictionary<string, int> columns;
    private readonly List<string[]> rows = [];

    private ReferenceTable(string[] lines)
    {
        var data = lines.Where(line => line.Length > 0 && line[0] != '#').ToArray();
        columns = data[0]
            .Split(',')
            .Select((name, index) => (name, index))
            .ToDictionary(c => c.name, c => c.index);
        rows.AddRange(data.Skip(1).Select(line => line.Split(',')));
    }

    public IEnumerable<Row> Rows => rows.Select(cells => new Row(this, cells));

    public static ReferenceTable Read(string name) =>
        new(File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Reference", name)));

    internal sealed class Row(ReferenceTable table, string[] cells)
    {
        public string Text(string column) => cells[table.columns[column]];

        public double this[string column] =>
            double.Parse(Text(column), NumberStyles.Float, CultureInfo.InvariantCulture);

        public override string ToString() => string.Join(',', cells);
    }
}
