using AirColumn;
using ColumnTool.Answers;
using ColumnTool.Questions;
using Shared;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>trim: what each cut makes of the drone.</summary>
internal static class TrimVerb
{
    private static readonly Parameter<Length> Step = new(
        "step",
        Kinds.Length,
        "the length cut from one row to the next, with its unit: 0.01 mm to 1 m",
        "1 mm"
    );

    private static readonly Parameter<int> Rows = new(
        "rows",
        new WholeKind(2, 10_000),
        "the largest number of rows, 2 to 10 000",
        "60"
    );

    private static readonly Parameter<double> Played = new(
        "played-above",
        new NumberKind(-1200, 1200, "cents"),
        "the distance of the played note above the resonance, cents",
        "0"
    );

    private static readonly Parameter<double> PlayedWithin = new(
        "played-within",
        new NumberKind(0, 1200, "cents"),
        "the standard deviation of that distance, cents",
        "0"
    );

    private sealed record Row(TrimRow Cut);

    public static Verb Create() =>
        new Verb<TrimTable>
        {
            Name = "trim",
            Summary =
                "Cuts a section step by step, and gives the first resonance after each cut, up to the first cut that makes it sharp. The answer also states how much can be cut before the 95 % range reaches the note.",
            Own =
            [
                Sections.Section,
                Sections.Note,
                Step,
                Rows,
                Tolerances.Optional,
                Played,
                PlayedWithin,
                .. Tunings.Parameters,
            ],
            Members =
            [
                Fields<TrimTable>.Text(
                    "explanation",
                    "how far to cut first, or why not to cut",
                    table => table.Explanation
                ),
                Fields<TrimTable>.List(
                    "rows",
                    "from the tube as it is",
                    table => [.. table.Rows.Select(row => new Row(row))],
                    RowFields
                ),
                Fields<TrimTable>.Group(
                    "safeCut",
                    "the most that can be cut before listening; `null` if nothing can be cut",
                    table => table.SafeCut is { } safe ? new Row(safe) : null,
                    RowFields
                ),
            ],
            Compute = Compute,
        };

    private static IReadOnlyList<Field<Row>> RowFields { get; } =
    [
        Fields<Row>.Number("cutMetres", "m", "the length cut off", row => row.Cut.Cut.Meters, "0.00000"),
        Fields<Row>.Number(
            "lengthMetres",
            "m",
            "the length of the section after the cut",
            row => row.Cut.Length.Meters,
            "0.00000"
        ),
        Fields<Row>.Number(
            "resonanceHz",
            "Hz",
            "the first resonance after the cut",
            row => row.Cut.Resonance.Hertz,
            "F3"
        ),
        Fields<Row>.Number("noteHz", "Hz", "the note to expect", row => row.Cut.Note.Hertz, "F3"),
        Fields<Row>.Number(
            "cents",
            "cent",
            "the distance above the wanted note",
            row => row.Cut.Cents,
            "+0.0;-0.0;0.0"
        ),
        Fields<Row>.Number(
            "plusMinusCents",
            "cent",
            "half its 95 % range",
            row => row.Cut.PlusMinusCents,
            "F1"
        ),
    ];

    private static (TrimTable Answer, IReadOnlyList<string> Warnings) Compute(Arguments arguments)
    {
        var column = arguments.Column;
        var section = Sections.Index(arguments);
        var target = Sections.Target(arguments, Tunings.Of(arguments));
        var question = arguments.Blame(
            Step,
            () =>
                new TrimQuestion(section, target)
                {
                    Step = arguments.Get(Step, Length.FromMillimeters(1)),
                    Rows = arguments.Get(Rows, 60),
                    Tolerances = arguments.Has(Tolerances.Optional) ? arguments.Get(Tolerances.Optional) : [],
                    Correction = new PlayingCorrection(
                        arguments.Get(Played, 0),
                        arguments.Get(PlayedWithin, 0)
                    ),
                }
        );
        var first = column.FirstResonances(1, arguments.Token);
        if (first.Count == 0)
        {
            throw new FailureException("The column shows no resonance to trim.");
        }

        var table = arguments.Blame(
            Tolerances.Optional,
            () => TrimTable.For(column, question, arguments.Token)
        );
        return (table, first.Warnings);
    }
}
