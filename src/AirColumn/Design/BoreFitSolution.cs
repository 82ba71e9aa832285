using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace AirColumn;

/// <summary>The bore that fits a measurement, and its uncertainty. Immutable.</summary>
[JsonConverter(typeof(JsonAnswerConverter<BoreFitSolution>))]
public sealed class BoreFitSolution : IJsonAnswer
{
    // Of what was known beforehand: the data tell of what they leave less uncertain than this.
    private const double Told = 0.7;
    private const double TooMuchNoise = 1.25;

    private readonly double[,] covariance;

    internal BoreFitSolution(
        SolveStatus status,
        Column column,
        FittedValue[] values,
        double[,] covariance,
        double misfit,
        IReadOnlyList<string> warnings
    )
    {
        (Status, Column, Values, this.covariance) = (status, column, values, covariance);
        (Misfit, Warnings) = (misfit, warnings);
    }

    /// <summary>The outcome of the fit.</summary>
    public SolveStatus Status { get; }

    /// <summary>True if a bore fits.</summary>
    public bool IsSolved => Status == SolveStatus.Solved;

    /// <summary>The column that fits. If none of the values tried make a bore: the believed column.</summary>
    public Column Column { get; }

    /// <summary>The uncertain values, the diameters of the profile first, each with the value that was found.</summary>
    public IReadOnlyList<FittedValue> Values { get; }

    /// <summary>
    /// Root mean square of the differences between measurement and column, over the stated noise: about 1 if model and noise are right. If it is
    /// larger, the uncertain dimensions do not explain the measurement, and the uncertainties are too small by that factor.
    /// </summary>
    public double Misfit { get; }

    /// <summary>
    /// Cautions about the column's model over the measured frequencies. If the model is less accurate than the measurement, the fitted bore is off
    /// by more than its uncertainties state.
    /// </summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>The covariance of two of the values, in the product of their units.</summary>
    /// <param name="first">Index in <see cref="Values"/>.</param>
    /// <param name="second">Index in <see cref="Values"/>.</param>
    /// <returns>The covariance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such value.</exception>
    public double Covariance(int first, int second) =>
        covariance[
            (int)Require.InRange(first, 0, Values.Count - 1, "", nameof(first)),
            (int)Require.InRange(second, 0, Values.Count - 1, "", nameof(second))
        ];

    /// <summary>The values that the measurement determines: their uncertainty is less than 0.7 of the uncertainty before the measurement.</summary>
    public IEnumerable<FittedValue> ToldByTheData =>
        Values.Where(value => value.StandardDeviation < Told * value.BelievedStandardDeviation);

    /// <summary>The values that differ from the believed ones by more than two standard deviations of the fit.</summary>
    public IEnumerable<FittedValue> Off => ToldByTheData.Where(value => value.IsOff);

    /// <summary>A few sentences: which values are off, by how much, and which values the measurement tells little about.</summary>
    public string Explanation
    {
        get
        {
            if (Status == SolveStatus.NoBore)
            {
                return "No values near the believed ones make a bore that covers all measured frequencies or resonances. Leave out the highest frequencies, or check the believed values.";
            }

            var off = Off.OrderByDescending(value => Math.Abs(value.Change) / value.StandardDeviation)
                .ToList();
            var untold = Values.Except(ToldByTheData).ToList();
            var culture = CultureInfo.InvariantCulture;
            return string.Join(
                ' ',
                (string[])
                    [
                        .. Status == SolveStatus.NotConverged
                            ? ["The fit was still improving when its steps ran out."]
                            : (string[])[],
                        off.Count == 0
                            ? "No value differs with certainty from the believed one."
                            : string.Create(
                                culture,
                                $"Different from the believed values: {string.Join(", ", off.Take(4))}{(off.Count > 4 ? $", and {off.Count - 4} more" : "")}."
                            ),
                        .. untold.Count == 0
                            ? (string[])[]
                            :
                            [
                                string.Create(
                                    culture,
                                    $"The measurement tells little about {(untold.Count == Values.Count ? "all" : untold.Count)} of {Values.Count} values: {string.Join(", ", untold.Take(4).Select(value => value.Parameter))}{(untold.Count > 4 ? " …" : "")}."
                                ),
                            ],
                        .. Misfit > TooMuchNoise
                            ?
                            [
                                string.Create(
                                    culture,
                                    $"The remaining differences are {Misfit:0.0} times the noise: something else is off, and the uncertainties are too small."
                                ),
                            ]
                            : (string[])[],
                    ]
            );
        }
    }

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.WriteBoolean("isSolved", IsSolved);
        json.WriteString("status", Status.ToString());
        json.Objects(
            "values",
            Values,
            fitted =>
            {
                json.WriteString("parameter", fitted.Parameter.ToString());
                json.WriteString("unit", fitted.Parameter.Unit);
                json.Number("believedValue", fitted.Believed);
                json.Number("value", fitted.Value);
                json.Number("plusMinusValue", fitted.PlusMinus);
            }
        );
        json.Number("misfit", Misfit);
        json.Texts("warnings", Warnings);
        json.WriteString("explanation", Explanation);
    }

    /// <summary><see cref="Explanation"/>.</summary>
    /// <returns>The explanation.</returns>
    public override string ToString() => Explanation;
}

/// <summary>An uncertain value before and after a fit, in the unit of its parameter. Immutable.</summary>
/// <param name="Parameter">The parameter.</param>
/// <param name="Believed">The value as it was believed.</param>
/// <param name="BelievedStandardDeviation">Its standard deviation before the fit.</param>
/// <param name="Value">The value that fits.</param>
/// <param name="StandardDeviation">Its standard deviation after the fit, including the uncertainty of all other values.</param>
public sealed record FittedValue(
    ColumnParameter Parameter,
    double Believed,
    double BelievedStandardDeviation,
    double Value,
    double StandardDeviation
)
{
    /// <summary>The difference from the value believed.</summary>
    public double Change => Value - Believed;

    /// <summary>True if the change is more than two standard deviations.</summary>
    public bool IsOff => Math.Abs(Change) > 2 * StandardDeviation;

    /// <summary>Half the width of the 95 % range of the true value.</summary>
    public double PlusMinus => Coverage.OfNormal * StandardDeviation;

    /// <summary>The name of the parameter, its difference from the value believed, and the 95 % range, rounded to two digits of that range.</summary>
    /// <returns>Name, difference and range, as text.</returns>
    public override string ToString() =>
        $"{Parameter} {(Change < 0 ? "−" : "+")}{Parameter.Show(Rounded(Math.Abs(Change)))} ± {Parameter.Show(Rounded(PlusMinus))}";

    private double Rounded(double value) =>
        PlusMinus > 0
            ? Math.Round(value, Math.Clamp(1 - (int)Math.Floor(Math.Log10(PlusMinus)), 0, 15))
            : value;
}
