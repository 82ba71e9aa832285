using System.Text;

namespace ColumnTool.Answers;

/// <summary>An answer for people, line by line.</summary>
internal sealed class TextPage
{
    private const int LabelWidth = 24;
    private readonly StringBuilder text = new();
    private string before = "";

    /// <summary>A value by itself.</summary>
    public void Line(string label, string value, string unit) =>
        Write($"{label, -LabelWidth}  {value}{(unit is "" or "1" ? "" : $" {unit}")}");

    /// <summary>What stands above the next lines.</summary>
    public void Heading(string heading) => Write($"{heading}:");

    /// <summary>The row whose lists follow.</summary>
    public void Under(string row) => before = row;

    /// <summary>A table, its rows counted from 1.</summary>
    public void Table<T>(IReadOnlyList<Cell<T>> cells, IReadOnlyList<T> rows)
    {
        string[][] lines =
        [
            ["#", .. cells.Select(Head)],
            .. rows.Select(
                (row, i) =>
                    (string[])
                        [
                            $"{before}{(before.Length > 0 ? "." : "")}{i + 1}",
                            .. cells.Select(cell => cell.Text(row)),
                        ]
            ),
        ];
        var widths = Enumerable
            .Range(0, cells.Count + 1)
            .Select(i => lines.Max(line => line[i].Length))
            .ToArray();
        foreach (var line in lines)
        {
            Write(
                string.Join(
                    "  ",
                    line.Select(
                        (cell, i) =>
                            i == 0 || cells[i - 1].IsNumber
                                ? cell.PadLeft(widths[i])
                                : cell.PadRight(widths[i])
                    )
                )
            );
        }
    }

    public override string ToString() => text.ToString();

    private static string Head<T>(Cell<T> cell) =>
        cell.IsNumber && cell.Unit != "1" && !cell.Unit.Contains(' ') && cell.Name != "cents"
            ? $"{Words.Label(cell.Name)}/{(cell.Unit.Contains('·') || cell.Unit.Contains('/') ? $"({cell.Unit})" : cell.Unit)}"
            : Words.Label(cell.Name);

    private void Write(string line) => text.Append(line.TrimEnd()).Append('\n');
}
