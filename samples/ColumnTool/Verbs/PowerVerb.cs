using AirColumn;
using ColumnTool.Answers;
using ColumnTool.Questions;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>power: where what is sent in goes.</summary>
internal static class PowerVerb
{
    // For a source of 1.
    private const string Unit = "W per source²";

    public static Verb Create() =>
        new Verb<PowerBalance[]>
        {
            Name = "power",
            Summary =
                "Balance of the power that a source of amplitude 1 sends into the column: 1 m³/s at a closed blown end, 1 Pa at an open one. Each part of the balance is computed independently.",
            IsCsv = true,
            Own = AtFrequencies.Parameters,
            Members =
            [
                Fields<PowerBalance[]>.Columns(
                    rows => rows,
                    Fields<PowerBalance>.Number(
                        "frequencyHz",
                        "Hz",
                        "the frequencies asked for",
                        one => one.Frequency.Hertz
                    ),
                    Fields<PowerBalance>.Number("input", Unit, "into the blown end", one => one.Input),
                    Fields<PowerBalance>.Number("radiated", Unit, "out of the far end", one => one.Radiated),
                    Fields<PowerBalance>.Number("viscous", Unit, "friction at the wall", one => one.Viscous),
                    Fields<PowerBalance>.Number(
                        "thermal",
                        Unit,
                        "heat conduction into the wall",
                        one => one.Thermal
                    ),
                    Fields<PowerBalance>.Number(
                        "sideOpenings",
                        Unit,
                        "into holes and branches",
                        one => one.SideOpenings
                    ),
                    Fields<PowerBalance>.Number(
                        "efficiency",
                        "1",
                        "radiated over input",
                        one => one.Efficiency
                    ),
                    Fields<PowerBalance>.Number(
                        "imbalance",
                        "1",
                        "all parts together over the input, minus 1: a check",
                        one => one.Imbalance
                    )
                ),
            ],
            Compute = arguments =>
            {
                var hertz = AtFrequencies.Of(arguments);
                var column = arguments.Column;
                PowerBalance[] rows = AtFrequencies.Compute(() =>
                    hertz.Select(one => column.PowerAt(Frequency.FromHertz(one), arguments.Token)).ToArray()
                );
                return (rows, AtFrequencies.Warnings(column, hertz, arguments.Token));
            },
        };
}
