using System.Globalization;
using System.Numerics;
using AirColumn;
using ColumnTool.Answers;
using ColumnTool.Questions;
using Shared;

namespace ColumnTool.Verbs;

/// <summary>A complex number at a frequency.</summary>
internal readonly record struct AtFrequency(double Hertz, Complex Value);

/// <summary>impedance: what the blown end is to the player.</summary>
internal static class ImpedanceVerb
{
    public static Verb Create() =>
        new Verb<AtFrequency[]>
        {
            Name = "impedance",
            Summary =
                "Input impedance at the blown end, exp(+jωt), in the order asked for. A frequency above the range of the radiation model is refused.",
            IsCsv = true,
            Own = AtFrequencies.Parameters,
            Members = Members("Pa·s/m³", "the acoustic impedance"),
            Compute = Compute,
        };

    /// <summary>A complex number over frequencies.</summary>
    public static IReadOnlyList<Field<AtFrequency[]>> Members(string unit, string meaning) =>
        [
            Fields<AtFrequency[]>.Columns(
                all => all,
                [
                    Fields<AtFrequency>.Number(
                        "frequencyHz",
                        "Hz",
                        "the frequencies asked for",
                        one => one.Hertz
                    ),
                    .. Fields<AtFrequency>.Complex("", unit, meaning, one => one.Value),
                ]
            ),
        ];

    private static (AtFrequency[] Answer, IReadOnlyList<string> Warnings) Compute(Arguments arguments)
    {
        // The grid is in increasing order, each frequency once; the answer is as it was asked for.
        var hertz = AtFrequencies.Of(arguments);
        double[] increasing = [.. hertz.Distinct().Order()];
        var column = arguments.Column;
        var curve = AtFrequencies.Compute(() =>
            column.Impedance(FrequencyGrid.FromHertz(increasing), arguments.Token)
        );
        return (
            [
                .. hertz.Select(one =>
                {
                    var z = curve[Array.BinarySearch(increasing, one)];
                    return Complex.IsFinite(z)
                        ? new AtFrequency(one, z)
                        : throw new FailureException(
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"The impedance at {one:R} Hz is not finite: a column without losses resonates there."
                            )
                        );
                }),
            ],
            curve.Warnings
        );
    }
}
