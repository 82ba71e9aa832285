using AirColumn;
using ColumnTool.Answers;
using ColumnTool.Questions;

namespace ColumnTool.Verbs;

/// <summary>uncertainty: how sure the resonances are, and what makes them unsure.</summary>
internal static class UncertaintyVerb
{
    private static readonly Parameter<int> Count = new(
        "count",
        new WholeKind(1, 1000),
        "how many resonances at most, 1 to 1000",
        "3"
    );

    public static Verb Create() =>
        new Verb<IReadOnlyList<ResonanceBudget>>
        {
            Name = "uncertainty",
            Summary =
                "The uncertainty of the lowest resonances, given tolerances of dimensions and air, and the contribution of each. Values between limits are equally likely unless stated otherwise; tolerances are independent of each other.",
            Own = [Tolerances.Needed, Count],
            Members =
            [
                Fields<IReadOnlyList<ResonanceBudget>>.List(
                    "resonances",
                    "from the lowest on",
                    budgets => budgets,
                    Fields<ResonanceBudget>.Number(
                        "frequencyHz",
                        "Hz",
                        "the resonance",
                        one => one.Resonance.Frequency.Hertz,
                        "F3"
                    ),
                    Fields<ResonanceBudget>.Number(
                        "standardDeviationCents",
                        "cent",
                        "its standard deviation",
                        one => one.StandardDeviationCents,
                        "F2"
                    ),
                    Fields<ResonanceBudget>.Number(
                        "plusMinusCents",
                        "cent",
                        "half its 95 % range",
                        one => one.PlusMinusCents,
                        "F2"
                    ),
                    Fields<ResonanceBudget>.Number(
                        "fromHz",
                        "Hz",
                        "the lower end of that range",
                        one => one.From.Hertz,
                        "F3"
                    ),
                    Fields<ResonanceBudget>.Number("toHz", "Hz", "the upper end", one => one.To.Hertz, "F3"),
                    Fields<ResonanceBudget>.TextOrNull(
                        "remark",
                        "what the linear estimate leaves out; `null` if that is negligible",
                        one => one.Remark
                    ),
                    Fields<ResonanceBudget>.List(
                        "contributions",
                        "the largest first",
                        one => one.Contributions,
                        Fields<Contribution>.Text(
                            "tolerance",
                            "the tolerance as given",
                            one => one.Tolerance.ToString()
                        ),
                        Fields<Contribution>.Number(
                            "centsPerUnit",
                            "cent per unit",
                            "the change of the resonance",
                            one => one.CentsPerUnit
                        ),
                        Fields<Contribution>.Text(
                            "unit",
                            "the unit of the parameter; empty for a fraction",
                            one => one.Tolerance.Parameter.Unit
                        ),
                        Fields<Contribution>.Number(
                            "standardDeviationCents",
                            "cent",
                            "the standard deviation due to this tolerance alone",
                            one => one.StandardDeviationCents,
                            "F2"
                        ),
                        Fields<Contribution>.Number(
                            "share",
                            "1",
                            "its share of the variance",
                            one => one.Share,
                            "F3"
                        )
                    )
                ),
            ],
            Compute = arguments =>
            {
                var column = arguments.Column;
                var found = column.FirstResonances(arguments.Get(Count, 3), arguments.Token);
                var budgets = arguments.Blame(
                    Tolerances.Needed,
                    () =>
                        column.Budgets(
                            found,
                            arguments.Get(Tolerances.Needed),
                            cancellationToken: arguments.Token
                        )
                );
                return (budgets, found.Warnings);
            },
        };
}
