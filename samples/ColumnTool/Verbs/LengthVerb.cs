using AirColumn;
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
        "the number of the resonance, 1 to 1000",
        "1"
    );

    public static Verb Create() =>
        new Verb<Found<LengthSolution>>
        {
            Name = "length",
            Summary =
                "Finds the length of one section that puts a resonance on a note; everything else stays the same. The note must be below the limit of plane-wave theory in the bore.",
            Own = [Sections.Section, Sections.Note, Resonance, .. Tunings.Parameters],
            Members =
            [
                Fields<Found<LengthSolution>>.Number(
                    "lengthMetres",
                    "m",
                    "the length of the section",
                    found => found.Solution.Length.Meters,
                    "0.00000"
                ),
                Fields<Found<LengthSolution>>.Number(
                    "frequencyHz",
                    "Hz",
                    "the resonance with that length",
                    found => found.Solution.Frequency.Hertz,
                    "F3"
                ),
                Fields<Found<LengthSolution>>.Number(
                    "centsPerMillimetre",
                    "cent/mm",
                    "the change for 1 mm more",
                    found => found.Solution.CentsPerMillimetre,
                    "+0.000;-0.000"
                ),
                Documents.Of<LengthSolution>("the column with that length", found => found.Column),
            ],
            Compute = Compute,
        };

    private static (Found<LengthSolution> Answer, IReadOnlyList<string> Warnings) Compute(Arguments arguments)
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
            ? (
                new(solution, arguments.Document),
                solution.Column.FirstResonances(1, arguments.Token).Warnings
            )
            : throw new FailureException(solution.Explanation);
    }
}
