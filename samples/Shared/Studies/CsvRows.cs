using System.Globalization;
using System.Text;
using AirColumn.Studies;

namespace Shared.Studies;

/// <summary>Rows as comma-separated values (RFC 4180, but for '\n'): numbers to the last digit, empty where there is none.</summary>
internal sealed class CsvRows : IRowWriter
{
    private readonly StreamWriter text;

    public CsvRows(Stream stream, Study study)
    {
        text = new StreamWriter(stream, new UTF8Encoding(false), 1 << 16, leaveOpen: true) { NewLine = "\n" };
        text.WriteLine(Header(study));
    }

    public static string Header(Study study) =>
        $"item,{string.Join(',', study.Fields.Select(field => field.Name))},wavefronts,warnings,error";

    public void Add(StudyRow row)
    {
        text.Write(row.Item.ToString(CultureInfo.InvariantCulture));
        Span<char> digits = stackalloc char[32];
        foreach (var number in row.Numbers)
        {
            text.Write(',');
            if (!double.IsNaN(number))
            {
                number.TryFormat(digits, out var length, "R", CultureInfo.InvariantCulture);
                text.Write(digits[..length]);
            }
        }

        text.WriteLine($",{row.Wavefronts},{Quoted(row.Warnings)},{Quoted(row.Error)}");
    }

    public void Complete() => text.Flush();

    public void Dispose() => text.Dispose();

    /// <summary>Reads rows back.</summary>
    /// <exception cref="DamagedException">It is no such file.</exception>
    public static IEnumerable<StudyRow> Read(Stream stream, Study study)
    {
        using var text = new StreamReader(stream, new UTF8Encoding(false), false, 1 << 16, leaveOpen: true);
        if (text.ReadLine() != Header(study))
        {
            throw new DamagedException("its first line does not name the fields of the study");
        }

        var cells = new List<string>();
        while (text.ReadLine() is { } line)
        {
            Split(line, cells);
            yield return Row(cells, study.Fields.Count);
        }
    }

    private static StudyRow Row(List<string> cells, int fields)
    {
        var numbers = new double[fields];
        if (
            cells.Count == fields + 4
            && long.TryParse(cells[0], NumberStyles.None, CultureInfo.InvariantCulture, out var item)
        )
        {
            for (var i = 0; i < fields; i++)
            {
                if (cells[i + 1].Length == 0)
                {
                    numbers[i] = double.NaN;
                }
                else if (
                    !double.TryParse(
                        cells[i + 1],
                        NumberStyles.Float,
                        CultureInfo.InvariantCulture,
                        out numbers[i]
                    )
                )
                {
                    throw new DamagedException($"'{OneLine.Of(cells[i + 1])}' in it is no number");
                }
            }

            return new StudyRow(item, numbers, cells[^3], cells[^2], cells[^1]);
        }

        throw new DamagedException($"a line of it has {cells.Count} cells of {fields + 4}");
    }

    private static string Quoted(string cell) =>
        cell.AsSpan().ContainsAny(',', '"')
            ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : cell;

    private static void Split(string line, List<string> cells)
    {
        cells.Clear();
        var cell = new StringBuilder();
        var isQuoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            var c = line[i];
            if (c == '"' && isQuoted && i + 1 < line.Length && line[i + 1] == '"')
            {
                cell.Append(c);
                i++;
            }
            else if (c == '"')
            {
                isQuoted = !isQuoted;
            }
            else if (c == ',' && !isQuoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(cell.ToString());
    }
}
