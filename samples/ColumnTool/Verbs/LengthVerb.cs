using AirColumn.Design;
using AirColumn.Resonances;
using ColumnTool.Answers;
using ColumnTool.Questions;
using Shared;

namespace ColumnTool.Verbs;

/// <summary>length: how long a section must be for a resonance to lie on a note.</summary>
internal static class LengthVerb
{
    private static readonly Parameter<int> Resonance = new(
        "resonance",
        new WholeKind(1, 1000),
        "which resonance, 1 to 1000",
        "1"
    );

    public static Verb Create() =>
        new Verb<LengthSolution>
        {
            Name = "length",
            Summary =
                "How long one section must be for a resonance to lie on a note, all else kept. The note must lie below the end of plane-wave theory in the bore.",
            Own = [Sections.Section, Sections.Note, Resonance, .. Tunings.Parameters],
            Members =
            [
                Fields<LengthSolution>.Number(
                    "lengthMetres",
                    "m",
                    "the length of the section",
                    found => found.Length.Meters,
                    "0.00000"
                ),
                Fields<LengthSolution>.Number(
                    "frequencyHz",
                    "Hz",
                    "the resonance then",
                    found => found.Frequency.Hertz,
                    "F3"
                ),
                Fields<LengthSolution>.Number(
                    "centsPerMillimetre",
                    "cent/mm",
                    "what 1 mm more does",
                    found => found.CentsPerMillimetre,
                    "+0.000;-0.000"
                ),
                Documents.Of<LengthSolution>("the column with that length", found => found.Column),
            ],
            Compute = Compute,
        };

    private static (LengthSolution Answer, IReadOnlyList<string> Warnings) Compute(Arguments arguments)
    {
        var column = arguments.Column;
        var section = Sections.Index(arguments);
        var target = Sections.Target(arguments, Tunings.Of(arguments));
        var solution = arguments.Blame(
            Sections.Note,
            () =>
                SectionLength.Solve(
                    column,
                    new LengthQuestion(section, target) { Resonance = arguments.Get(Resonance, 1) },
                    arguments.Token
                )
        );
        return solution.IsSolved
            ? (solution, solution.Column.FirstResonances(1, arguments.Token).Warnings)
            : throw new FailureException(solution.Explanation);
    }
}
