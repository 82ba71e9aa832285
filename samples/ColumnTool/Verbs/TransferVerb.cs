using AirColumn;
using ColumnTool.Answers;
using ColumnTool.Questions;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>transfer: what arrives at the far end.</summary>
internal static class TransferVerb
{
    private readonly record struct Row(double Hertz, TransferFunction Transfer);

    public static Verb Create() =>
        new Verb<Row[]>
        {
            Name = "transfer",
            Summary =
                "Transfer of pressure and flow from the blown end to the far end, in the planes of the bore's ends, exp(+jωt).",
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
                        .. Fields<Row>.Complex(
                            "pressureRatio",
                            "1",
                            "pressure at the far end over pressure at the blown end",
                            row => row.Transfer.PressureRatio
                        ),
                        .. Fields<Row>.Complex(
                            "flowRatio",
                            "1",
                            "flow at the far end over flow at the blown end",
                            row => row.Transfer.FlowRatio
                        ),
                        .. Fields<Row>.Complex(
                            "impedance",
                            "Pa·s/m³",
                            "pressure at the far end over flow at the blown end",
                            row => row.Transfer.Impedance
                        ),
                        Fields<Row>.Number(
                            "efficiency",
                            "1",
                            "power radiated from the far end over power sent in",
                            row => row.Transfer.Efficiency
                        ),
                    ]
                ),
            ],
            Compute = arguments =>
            {
                var hertz = AtFrequencies.Of(arguments);
                var column = arguments.Column;
                Row[] rows = AtFrequencies.Compute(() =>
                    hertz
                        .Select(one => new Row(
                            one,
                            column.TransferAt(Frequency.FromHertz(one), arguments.Token)
                        ))
                        .ToArray()
                );
                return (rows, AtFrequencies.Warnings(column, hertz, arguments.Token));
            },
        };
}
