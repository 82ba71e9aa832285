using System.Globalization;
using System.Text;
using AirColumn.Studies;

namespace Shared.Studies;

/// <summary>Rows as comma-separated values (RFC 4180, but for '\n'): numbers to the last digit, empty where there is none.</summary>
internal sealed class CsvRows : IRowWriter
{
    private const int LongestNumber = 32;

    private readonly Stream stream;
    private byte[] bytes = new byte[1 << 14];
    private int length;

    public CsvRows(Stream stream, Study study)
    {
        this.stream = stream;
        Put(Header(study));
        Put((byte)'\n');
    }

    public static string Header(Study study) =>
        $"item,{string.Join(',', study.Fields.Select(field => field.Name))},wavefronts,warnings,error";

    public void Add(StudyRow row)
    {
        Room(LongestNumber);
        row.Item.TryFormat(bytes.AsSpan(length), out var written, default, CultureInfo.InvariantCulture);
        length += written;
        foreach (var number in row.Numbers)
        {
            Put((byte)',');
            if (!double.IsNaN(number))
            {
                Room(LongestNumber);
                number.TryFormat(bytes.AsSpan(length), out written, "R", CultureInfo.InvariantCulture);
                length += written;
            }
        }

        PutCell(row.Wavefronts);
        PutCell(row.Warnings);
        PutCell(row.Error);
        Put((byte)'\n');
        if (length > bytes.Length / 2)
        {
            Complete();
        }
    }

    public void Complete()
    {
        stream.Write(bytes.AsSpan(0, length));
        length = 0;
    }

    public void Dispose() { }

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
                    throw new DamagedException($"'{OneLine.Of(cells[i + 1])}' in it is not a number");
                }
            }

            return new StudyRow(item, numbers, cells[^3], cells[^2], cells[^1]);
        }

        throw new DamagedException($"a line of it has {cells.Count} cells of {fields + 4}");
    }

    private void PutCell(string cell)
    {
        Put((byte)',');
        Put(Quoted(cell));
    }

    private void Put(string text)
    {
        Room(Encoding.UTF8.GetMaxByteCount(text.Length));
        length += Encoding.UTF8.GetBytes(text, bytes.AsSpan(length));
    }

    private void Put(byte one)
    {
        Room(1);
        bytes[length++] = one;
    }

    private void Room(int count)
    {
        if (length + count > bytes.Length)
        {
            Array.Resize(ref bytes, Math.Max(2 * bytes.Length, length + count));
        }
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
