using AirColumn;
using ColumnTool.Answers;
using ColumnTool.Questions;
using Shared;
using UnitsNet;

namespace ColumnTool.Verbs;

/// <summary>quality: numbers that published tests have linked to how players rank instruments.</summary>
internal static class QualityVerb
{
    private static readonly Parameter<int> Count = new(
        "count",
        new WholeKind(1, 10_000),
        "how many resonances at most, 1 to 10 000",
        "8"
    );

    private static readonly Parameter<Frequency> Fundamental = new(
        "fundamental",
        Kinds.Frequency,
        "the frequency whose multiples the resonances are compared with: a number of Hz, or with its unit",
        "the first resonance"
    );

    private static readonly Parameter<bool> OnlyOdd = new(
        "only-odd",
        Kinds.Switch,
        "count odd multiples only, as for a tube closed at the blown end",
        "no"
    );

    private sealed record Answered(double Height, double Mean, IReadOnlyList<Harmonicity> Harmonics);

    public static Verb Create() =>
        new Verb<Answered>
        {
            Name = "quality",
            Summary = "Indicators that published tests have linked to how players rank instruments.",
            Own = [Count, Fundamental, OnlyOdd],
            Members =
            [
                Fields<Answered>.NumberOrNull(
                    "firstPeakHeight",
                    "1",
                    "|Z| at the first resonance over ρc/S at the blown end; `null` without losses",
                    all => all.Height
                ),
                Fields<Answered>.NumberOrNull(
                    "meanImpedance",
                    "Pa·s/m³",
                    "geometric mean of |Z| from 1 kHz to 2 kHz; `null` if the model ends below 2 kHz",
                    all => all.Mean
                ),
                Fields<Answered>.List(
                    "harmonicity",
                    "each resonance against the multiple of the fundamental nearest to it",
                    all => all.Harmonics,
                    Fields<Harmonicity>.Number(
                        "frequencyHz",
                        "Hz",
                        "the resonance",
                        one => one.Resonance.Frequency.Hertz,
                        "F3"
                    ),
                    Fields<Harmonicity>.Whole("harmonic", "the multiple", one => one.Harmonic),
                    Fields<Harmonicity>.Number(
                        "cents",
                        "cent",
                        "the distance from the multiple to the resonance",
                        one => one.Cents,
                        "+0.0;-0.0;0.0"
                    )
                ),
            ],
            Compute = Compute,
        };

    private static (Answered Answer, IReadOnlyList<string> Warnings) Compute(Arguments arguments)
    {
        var column = arguments.Column;
        var resonances = column.FirstResonances(arguments.Get(Count, 8), arguments.Token);
        if (resonances.Count == 0)
        {
            throw new FailureException("The column shows no resonance whose quality could be told.");
        }

        var fundamental = arguments.Get(Fundamental, resonances[0].Frequency);
        var harmonics = arguments.Blame(
            Fundamental,
            () => resonances.HarmonicityAgainst(fundamental, arguments.Get(OnlyOdd, false))
        );
        // As everywhere: without losses a peak has no height.
        var height = double.IsFinite(resonances[0].QualityFactor)
            ? column.FirstPeakHeight(arguments.Token)
            : double.NaN;
        var mean = column.HighestFrequency.Hertz < 2000 ? double.NaN : column.MeanImpedance(arguments.Token);
        return (new Answered(height, mean, harmonics), resonances.Warnings);
    }
}
