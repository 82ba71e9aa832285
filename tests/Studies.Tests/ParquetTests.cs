using AirColumn.Studies;
using Parquet;
using Shared.Studies;

namespace Studies.Tests;

/// <summary>A Parquet file, read back, has every value of the rows.</summary>
public class ParquetTests
{
    // More than one group of rows, some without numbers, some with errors.
    [Fact]
    public async Task Every_value_is_found_in_the_file()
    {
        const int Count = 10_500;
        const int Some = 137;
        var study = Study.Parse(Workplace.Text(Some));
        var some = Workplace.Rows(study).ToList();
        var rows = Enumerable
            .Range(0, Count)
            .Select(i => some[i % Some])
            .Select(
                (row, i) =>
                    new StudyRow(
                        i,
                        row.Numbers.ToArray(),
                        row.Wavefronts,
                        i % 7 == 0 ? "wärmer, „so“" : "",
                        row.Error
                    )
            )
            .ToList();
        using var file = new MemoryStream();
        RowFormat.Parquet.Write(file, study, rows);
        file.Position = 0;
        await using var reader = await ParquetReader.CreateAsync(file, leaveStreamOpen: true);
        var fields = reader.Schema.GetDataFields();
        Assert.Equal(
            ["item", .. study.Fields.Select(field => field.Name), "wavefronts", "warnings", "error"],
            fields.Select(field => field.Name)
        );
        Assert.Equal(2, reader.RowGroupCount);
        var begin = 0;
        for (var g = 0; g < reader.RowGroupCount; g++)
        {
            using var group = reader.OpenRowGroupReader(g);
            var expected = rows.Skip(begin).Take((int)group.RowCount).ToList();
            var items = new long[group.RowCount];
            await group.ReadAsync<long>(fields[0], items);
            Assert.Equal(expected.Select(row => row.Item), items);
            for (var i = 0; i < study.Fields.Count; i++)
            {
                var numbers = new double?[group.RowCount];
                await group.ReadAsync<double>(fields[i + 1], numbers);
                Assert.Equal(
                    expected.Select(row => row.Numbers[i] is var n && double.IsNaN(n) ? null : (double?)n),
                    numbers
                );
            }

            Assert.Equal(expected.Select(row => row.Wavefronts), await Texts(group, fields[^3]));
            Assert.Equal(expected.Select(row => row.Warnings), await Texts(group, fields[^2]));
            Assert.Equal(expected.Select(row => row.Error), await Texts(group, fields[^1]));
            begin += (int)group.RowCount;
        }

        Assert.Equal(Count, begin);
        Assert.Contains(rows, row => row.Error.Length > 0);
    }

    private static async Task<string[]> Texts(ParquetRowGroupReader group, Parquet.Schema.DataField field)
    {
        var texts = new string[group.RowCount];
        await group.ReadAsync(field, texts);
        return texts;
    }
}
