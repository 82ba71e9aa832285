using AirColumn;
using ColumnTool.Answers;
using ColumnTool.Questions;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>matrix: the bore between its ends.</summary>
internal static class MatrixVerb
{
    private readonly record struct Row(double Hertz, TransferMatrix Matrix);

    public static Verb Create() =>
        new Verb<Row[]>
        {
            Name = "matrix",
            Summary =
                "Transfer matrix of the whole bore, without the air outside its ends: p = A·p' + B·U' and U = C·p' + D·U', with primes at the far end. Radial modes have no such matrix: for a bore that needs these modes, choose other wave fronts.",
            IsCsv = true,
            Own = AtFrequencies.Parameters,
            Members =
            [
                Fields<Row[]>.Columns(
                    rows => rows,
                    [
                        Fields<Row>.Number(
                            "frequencyHz",
                            "Hz",
                            "the frequencies asked for",
                            row => row.Hertz
                        ),
                        .. Fields<Row>.Complex("a", "1", "A", row => row.Matrix.A),
                        .. Fields<Row>.Complex("b", "Pa·s/m³", "B", row => row.Matrix.B),
                        .. Fields<Row>.Complex("c", "m³/(Pa·s)", "C", row => row.Matrix.C),
                        .. Fields<Row>.Complex("d", "1", "D", row => row.Matrix.D),
                    ]
                ),
            ],
            Compute = arguments =>
            {
                var hertz = AtFrequencies.Of(arguments);
                var column = arguments.Column;
                Row[] rows = AtFrequencies.Compute(() =>
                    hertz
                        .Select(one =>
                        {
                            arguments.Token.ThrowIfCancellationRequested();
                            return new Row(one, column.TransferMatrixAt(Frequency.FromHertz(one)));
                        })
                        .ToArray()
                );
                return (rows, AtFrequencies.Warnings(column, hertz, arguments.Token));
            },
        };
}
