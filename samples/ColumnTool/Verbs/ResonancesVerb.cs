using AirColumn;
using ColumnTool.Answers;
using ColumnTool.Questions;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>A resonance, what note it is nearest to, and how it moves.</summary>
internal sealed record ResonanceRow(Resonance Resonance, PitchReading? Reading, ResonanceGradient? Gradient)
{
    /// <summary>What of a resonance every list of them has.</summary>
    public static IReadOnlyList<Field<ResonanceRow>> Fields { get; } =
    [
        Fields<ResonanceRow>.Number(
            "frequencyHz",
            "Hz",
            "its frequency",
            row => row.Resonance.Frequency.Hertz,
            "F3"
        ),
        // Without losses a peak has no height; what rounding makes of it is not an answer.
        Fields<ResonanceRow>.NumberOrNull(
            "magnitude",
            "Pa·s/m³",
            "|Z| there; `null` without losses",
            row =>
                double.IsFinite(row.Resonance.QualityFactor)
                    ? row.Resonance.Magnitude
                    : double.PositiveInfinity,
            "0.000e+0"
        ),
        Fields<ResonanceRow>.NumberOrNull(
            "q",
            "1",
            "quality factor; `null` without losses",
            row => row.Resonance.QualityFactor,
            "F1"
        ),
        Fields<ResonanceRow>.TextOrNull(
            "pitch",
            "the nearest note; `null` below 1 Hz and above 100 kHz",
            row => row.Reading?.Pitch.ToString()
        ),
        Fields<ResonanceRow>.NumberOrNull(
            "cents",
            "cent",
            "the distance above that note; `null` if there is no note",
            row => row.Reading?.Cents ?? double.NaN,
            "+0.0;-0.0;0.0"
        ),
    ];
}

/// <summary>resonances: the notes of a column.</summary>
internal static class ResonancesVerb
{
    private const int UsualCount = 8;

    private static readonly Parameter<int> Count = new(
        "count",
        new WholeKind(1, 10_000),
        "the largest number of resonances, 1 to 10 000",
        "8, or all below the upper limit if one is given"
    );

    private static readonly Parameter<Frequency> Below = new(
        "below",
        Kinds.Frequency,
        "the upper limit: a number of Hz, or a frequency with its unit",
        "no limit"
    );

    private static readonly Parameter<bool> Gradients = new(
        "gradients",
        Kinds.Switch,
        "add how each resonance moves with every dimension and with the air",
        "no"
    );

    public static Verb Create() =>
        new Verb<ResonanceRow[]>
        {
            Name = "resonances",
            Summary = "Maxima of |Z| if the blown end is closed, minima if it is open, from the lowest.",
            Own = [Count, Below, .. Tunings.Parameters, Gradients],
            Members =
            [
                Fields<ResonanceRow[]>.List(
                    "resonances",
                    "from the lowest on",
                    rows => rows,
                    [
                        .. ResonanceRow.Fields,
                        Fields<ResonanceRow>.ListOrNothing(
                            "gradient",
                            "how it moves, if asked for",
                            row => row.Gradient is { } gradient ? Steps(gradient) : null,
                            Fields<Step>.Text(
                                "parameter",
                                "the parameter, with sections and holes counted from 1",
                                step => step.Gradient.Parameters[step.Index].ToString()
                            ),
                            Fields<Step>.Text(
                                "unit",
                                "the unit of the parameter; empty for a fraction",
                                step => step.Gradient.Parameters[step.Index].Unit
                            ),
                            Fields<Step>.Number(
                                "hertzPerUnit",
                                "Hz per unit",
                                "the change of the frequency",
                                step => step.Gradient.HertzPerUnit[step.Index]
                            ),
                            Fields<Step>.Number(
                                "centsPerUnit",
                                "cent per unit",
                                "the same in cents",
                                step => step.Gradient.CentsPerUnit(step.Index)
                            ),
                            Fields<Step>.NumberOrNull(
                                "logMagnitudePerUnit",
                                "1 per unit",
                                "the change of ln|Z|; `null` without losses",
                                step => step.Gradient.LogMagnitudePerUnit[step.Index]
                            )
                        ),
                    ]
                ),
            ],
            Compute = Compute,
        };

    private readonly record struct Step(ResonanceGradient Gradient, int Index);

    private static Step[] Steps(ResonanceGradient gradient) =>
        [.. Enumerable.Range(0, gradient.Parameters.Count).Select(i => new Step(gradient, i))];

    private static (ResonanceRow[] Answer, IReadOnlyList<string> Warnings) Compute(Arguments arguments)
    {
        var tuning = Tunings.Of(arguments);
        var column = arguments.Column;
        var most = arguments.Maybe(Count);
        var found = arguments.Maybe(Below) is { } limit
            ? arguments.Blame(Below, () => column.Resonances(limit, arguments.Token))
            : column.FirstResonances(most ?? UsualCount, arguments.Token);
        Resonance[] resonances = [.. found.Take(most ?? int.MaxValue)];
        var gradients = arguments.Get(Gradients, false)
            ? column.Gradients(resonances, cancellationToken: arguments.Token)
            : null;
        return (
            [
                .. resonances.Select(
                    (one, i) => new ResonanceRow(one, tuning.Nearest(one.Frequency.Hertz), gradients?[i])
                ),
            ],
            found.Warnings
        );
    }
}
