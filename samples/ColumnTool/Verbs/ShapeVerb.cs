using AirColumn;
using ColumnTool.Answers;
using ColumnTool.Questions;

namespace ColumnTool.Verbs;

/// <summary>shape: diameters, lengths and holes that reach several targets at once.</summary>
internal static class ShapeVerb
{
    private static readonly Parameter<DesignVariable[]> Choose = new(
        "choose",
        Kinds.Many(new TextKind<DesignVariable>(ShapeText.Variable, ShapeText.VariableExample)),
        "a parameter to choose, with its bounds, such as `length of section 1, 900 mm to 1100 mm`; on the command line repeat the option for each",
        Parameter.Required
    );

    // Read again with the tuning of the question.
    private static readonly Parameter<string[]> Reach = new(
        "reach",
        Kinds.Many(
            new TextKind<string>(
                text => ShapeText.Target(text, Tuning.Concert) is null ? "" : text,
                ShapeText.TargetExample
            )
        ),
        "a target: `resonance 1 on C2` or `on 65.4 Hz`, `interval from 1 to 2 of 1200 cents`, `magnitude of resonance 1 on 5e7` (Pa·s/m³), `total length of 1.2 m`, `widening from section 1 to 3`. You may add `; fingered xxx ooo` and `; weight 2`. On the command line repeat the option for each",
        Parameter.Required
    );

    private static readonly Parameter<int> Starts = new(
        "starts",
        new WholeKind(1, 1000),
        "the largest number of starts, 1 to 1000",
        "6"
    );

    private static readonly Parameter<int> Steps = new(
        "steps",
        new WholeKind(1, 10_000),
        "the largest number of steps from each start, 1 to 10 000",
        "60"
    );

    private static readonly Parameter<int> Seed = new(
        "seed",
        new WholeKind(0, 999_999_999),
        "the same seed gives the same answer",
        "1"
    );

    private static readonly Parameter<double> Within = new(
        "within",
        new NumberKind(1e-6, 100, ""),
        "the largest error of a target that counts as met: cents, tenths of a decibel or of a millimetre, 10⁻⁶ to 100",
        "0.01"
    );

    public static Verb Create() =>
        new Verb<Found<ShapeSolution>>
        {
            Name = "shape",
            Summary =
                "Chooses diameters, lengths and holes between bounds so that several targets are met as nearly as possible. The answer is the best shape found, and states whether it meets all targets.",
            Own = [Choose, Reach, Starts, Steps, Seed, Within, .. Tunings.Parameters],
            Members = Members,
            Compute = Compute,
        };

    /// <summary>What an answer with a shape has.</summary>
    public static IReadOnlyList<Field<Found<ShapeSolution>>> Members { get; } =
    [
        Fields<Found<ShapeSolution>>.Flag(
            "solved",
            "whether all targets are met",
            found => found.Solution.IsSolved
        ),
        Fields<Found<ShapeSolution>>.Text(
            "explanation",
            "the result, or the reason why the targets are not met",
            found => found.Solution.Explanation
        ),
        Fields<Found<ShapeSolution>>.List(
            "values",
            "the chosen value",
            found => found.Solution.Values,
            Fields<ChosenValue>.Text(
                "parameter",
                "the parameter, with sections and holes counted from 1",
                one => one.Variable.Parameter.ToString()
            ),
            Fields<ChosenValue>.Number("value", "see unit", "the chosen value", one => one.Value),
            Fields<ChosenValue>.Text(
                "unit",
                "the unit of the value; empty for a fraction",
                one => one.Variable.Parameter.Unit
            ),
            Fields<ChosenValue>.Flag("isAtBound", "whether it is at one of its bounds", one => one.IsAtBound)
        ),
        Fields<Found<ShapeSolution>>.List(
            "targets",
            "what was to be reached",
            found => found.Solution.Errors,
            Fields<TargetError>.Text("target", "the target in words", one => one.Target.ToString()),
            Fields<TargetError>.NumberOrNull(
                "error",
                "cent, 0.1 dB or 0.1 mm",
                "reached minus wanted; `null` if there is no such resonance",
                one => one.Error,
                "+0.000;-0.000;0"
            )
        ),
        Fields<Found<ShapeSolution>>.Whole(
            "evaluations",
            "the number of shapes computed",
            found => found.Solution.Evaluations
        ),
        Documents.Of<ShapeSolution>("the column of that shape", found => found.Column),
    ];

    /// <summary>What to know of the column that was found.</summary>
    public static (Found<ShapeSolution> Answer, IReadOnlyList<string> Warnings) Told(
        ShapeSolution found,
        Arguments arguments
    ) =>
        (
            new(found, arguments.Document),
            [
                .. found.IsSolved ? [] : new[] { found.Explanation },
                .. found.Column.FirstResonances(1, arguments.Token).Warnings,
            ]
        );

    private static (Found<ShapeSolution> Answer, IReadOnlyList<string> Warnings) Compute(Arguments arguments)
    {
        var column = arguments.Column;
        var tuning = Tunings.Of(arguments);
        ShapeTarget[] targets = [.. arguments.Get(Reach).Select(text => ShapeText.Target(text, tuning))];
        var options = new ShapeOptions
        {
            Starts = arguments.Get(Starts, 6),
            Steps = arguments.Get(Steps, 60),
            Seed = arguments.Get(Seed, 1),
            Within = arguments.Get(Within, 0.01),
        };
        var found = arguments.Blame(
            Choose,
            () =>
                ShapeSearch.Solve(
                    column,
                    arguments.Get(Choose),
                    targets,
                    options,
                    cancellationToken: arguments.Token
                )
        );
        return Told(found, arguments);
    }
}
