using System.Globalization;
using AirColumn;
using AirColumn.Documents;
using ColumnTool.Answers;
using ColumnTool.Questions;

namespace ColumnTool.Verbs;

/// <summary>fit: which bore was measured.</summary>
internal static class FitVerb
{
    private const string Example = "1 at 73.42 Hz ± 5 cents";

    private static readonly Parameter<MeasuredResonance[]> Resonance = new(
        "resonance",
        Kinds.Many(new TextKind<MeasuredResonance>(Measured, Example)),
        "a measured resonance, its number counted from the lowest, such as `1 at 73.42 Hz ± 5 cents`; the limits hold 95 %. On the command line repeat the option for each",
        "none"
    );

    // Kept as text until the column says what its characteristic impedance is.
    private static readonly Parameter<string> Impedance = new(
        "impedance",
        new FileKind<string>(text => text.ReadToEnd()),
        "the measured impedance: lines of frequency in Hz, Re Z and Im Z in Pa·s/m³, separated by commas, semicolons or tabs; on the command line the name of a file",
        "none"
    );

    private static readonly Parameter<double> Noise = new(
        "noise",
        new NumberKind(1e-9, 1, ""),
        "the noise of the measured impedance: standard deviation of either part of its reflectance, 10⁻⁹ to 1",
        "0.01"
    );

    public static Verb Create() =>
        new Verb<Found<BoreFitSolution>>
        {
            Name = "fit",
            Summary =
                "Finds the bore that fits a measured impedance or measured resonances, from the column as it is believed to be and the dimensions that are uncertain. The answer gives the uncertainty of each dimension, which dimensions are off, and what the measurement cannot tell.",
            Own = [Tolerances.Needed, Resonance, Impedance, Noise],
            Members =
            [
                Fields<Found<BoreFitSolution>>.Flag(
                    "solved",
                    "whether a bore was found that fits",
                    found => found.Solution.IsSolved
                ),
                Fields<Found<BoreFitSolution>>.Text(
                    "explanation",
                    "what is off, and what the measurement cannot tell",
                    found => found.Solution.Explanation
                ),
                Fields<Found<BoreFitSolution>>.Number(
                    "misfit",
                    "1",
                    "root mean square of the differences over the stated noise; about 1 if nothing else is off",
                    found => found.Solution.Misfit,
                    "F2"
                ),
                Fields<Found<BoreFitSolution>>.List(
                    "values",
                    "what was uncertain",
                    found => found.Solution.Values,
                    Fields<FittedValue>.Text(
                        "parameter",
                        "the parameter, with sections and holes counted from 1",
                        one => one.Parameter.ToString()
                    ),
                    Fields<FittedValue>.Number(
                        "believed",
                        "see unit",
                        "the believed value",
                        one => one.Believed
                    ),
                    Fields<FittedValue>.Number("value", "see unit", "the fitted value", one => one.Value),
                    Fields<FittedValue>.Number(
                        "plusMinus",
                        "see unit",
                        "half its 95 % range",
                        one => one.PlusMinus
                    ),
                    Fields<FittedValue>.Text(
                        "unit",
                        "the unit of the values; empty for a fraction",
                        one => one.Parameter.Unit
                    ),
                    Fields<FittedValue>.Flag(
                        "isOff",
                        "whether it differs from the believed value by more than two standard deviations",
                        one => one.IsOff
                    )
                ),
                Documents.Of<BoreFitSolution>("the column that fits", found => found.Column),
            ],
            Compute = arguments =>
            {
                if (arguments.Has(Resonance) == arguments.Has(Impedance))
                {
                    throw arguments.Wrong(
                        Resonance,
                        $"or {arguments.Name(Impedance)} must be given, whichever was measured, but not both."
                    );
                }

                var column = arguments.Column;
                var measured = Measurement(arguments);
                if (measured.HighestFrequency > column.HighestFrequency)
                {
                    throw arguments.Wrong(
                        arguments.Has(Resonance) ? Resonance : Impedance,
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"goes up to {measured.HighestFrequency.Hertz:0.#} Hz; the column answers up to {column.HighestFrequency.Hertz:0.#} Hz. Leave out the higher frequencies."
                        )
                    );
                }

                var fit = arguments.Blame(
                    Tolerances.Needed,
                    () =>
                        BoreFit.Solve(
                            column,
                            measured,
                            arguments.Get(Tolerances.Needed),
                            cancellationToken: arguments.Token
                        )
                );
                return (
                    new Found<BoreFitSolution>(fit, arguments.Document),
                    [.. fit.IsSolved ? [] : new[] { fit.Explanation }, .. fit.Warnings]
                );
            },
        };

    private static BoreMeasurement Measurement(Arguments arguments)
    {
        if (arguments.Has(Resonance))
        {
            return arguments.Blame(Resonance, () => new MeasuredResonances(arguments.Get(Resonance)));
        }

        try
        {
            return MeasuredReflectance.ReadImpedance(
                new StringReader(arguments.Get(Impedance)),
                arguments.Column.CharacteristicImpedance,
                arguments.Get(Noise, 0.01)
            );
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            throw arguments.Wrong(Impedance, $"is no measurement: {Shared.OneLine.Of(problem)}");
        }
    }

    private static MeasuredResonance Measured(string text)
    {
        var parts = text.Replace("+-", "±", StringComparison.Ordinal)
            .Split([" at ", "±"], 3, StringSplitOptions.TrimEntries);
        const string Cents = "cents";
        if (
            parts.Length == 3
            && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && parts[2].EndsWith(Cents, StringComparison.Ordinal)
            && double.TryParse(
                parts[2][..^Cents.Length],
                NumberStyles.AllowDecimalPoint | NumberStyles.AllowTrailingWhite,
                CultureInfo.InvariantCulture,
                out var cents
            )
        )
        {
            return MeasuredResonance.Within(number, QuantityText.ParseFrequency(parts[1]), cents);
        }

        throw new FormatException($"'{text}' is not a measured resonance; write one such as \"{Example}\".");
    }
}
