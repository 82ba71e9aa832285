using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet;

namespace AirColumn;

/// <summary>The uncertainty of a resonance, and its causes. Immutable.</summary>
[JsonConverter(typeof(JsonAnswerConverter<ResonanceBudget>))]
public sealed record ResonanceBudget : IJsonAnswer
{
    internal ResonanceBudget() { }

    /// <summary>The resonance.</summary>
    public required Resonance Resonance { get; init; }

    /// <summary>Its standard deviation, cents: to first order in the tolerances.</summary>
    public required double StandardDeviationCents { get; init; }

    /// <summary>Half its 95 % range, cents, from the distribution of the sum of all contributions.</summary>
    public required double PlusMinusCents { get; init; }

    /// <summary>The lower end of the 95 % range.</summary>
    public Frequency From => Resonance.Frequency * Cents.ToRatio(-PlusMinusCents);

    /// <summary>The upper end of the 95 % range.</summary>
    public Frequency To => Resonance.Frequency * Cents.ToRatio(PlusMinusCents);

    /// <summary>The contributions, the largest first.</summary>
    public required IReadOnlyList<Contribution> Contributions { get; init; }

    /// <summary>True if the resonance moves nearly in proportion to every parameter, up to the ends of its tolerance.</summary>
    public bool IsLinear => Remark is null;

    /// <summary>A sentence about second-order effects if they are more than a twentieth of the range; otherwise null.</summary>
    public required string? Remark { get; init; }

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Object("resonance", Resonance);
        json.Number("standardDeviationCents", StandardDeviationCents);
        json.Number("plusMinusCents", PlusMinusCents);
        json.Number("fromHz", From.Hertz);
        json.Number("toHz", To.Hertz);
        json.Objects(
            "contributions",
            Contributions,
            part =>
            {
                json.WriteString("parameter", part.Tolerance.Parameter.ToString());
                json.WriteString("unit", part.Tolerance.Parameter.Unit);
                json.Number("centsPerUnit", part.CentsPerUnit);
                json.Number("standardDeviationCents", part.StandardDeviationCents);
                json.Number("share", part.Share);
            }
        );
        json.WriteString("remark", Remark);
    }

    /// <summary>The resonance, half its 95 % range and the share of each tolerance, in the invariant culture.</summary>
    /// <returns>The budget, as text.</returns>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Resonance.Frequency.Hertz:F2} Hz ± {PlusMinusCents:0.0} cents (95 %): "
        ) + string.Join("; ", Contributions);
}

/// <summary>The contribution of one tolerance to the uncertainty of a resonance.</summary>
/// <param name="Tolerance">The parameter and its limits.</param>
/// <param name="CentsPerUnit">The change of the resonance, cents per unit of the parameter.</param>
/// <param name="StandardDeviationCents">Standard deviation of the resonance due to this tolerance alone, cents.</param>
/// <param name="Share">Its share of the variance, 0 to 1.</param>
public readonly record struct Contribution(
    Tolerance Tolerance,
    double CentsPerUnit,
    double StandardDeviationCents,
    double Share
)
{
    /// <summary>The tolerance and its share of the variance, in the invariant culture.</summary>
    /// <returns>Tolerance and share, as text.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Tolerance}, {100 * Share:0.#} %");
}
