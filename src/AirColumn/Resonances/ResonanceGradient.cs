using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace AirColumn;

/// <summary>The gradient of a resonance with respect to dimensions and the air: ∂f/∂θ for each parameter θ. Immutable.</summary>
[JsonConverter(typeof(JsonAnswerConverter<ResonanceGradient>))]
public sealed class ResonanceGradient : IJsonAnswer
{
    private readonly double[] hertz;
    private readonly double[] magnitude;

    internal ResonanceGradient(
        Resonance resonance,
        IReadOnlyList<ColumnParameter> parameters,
        double[] hertz,
        double[] magnitude
    )
    {
        (Resonance, Parameters) = (resonance, parameters);
        (this.hertz, this.magnitude) = (hertz, magnitude);
    }

    /// <summary>The resonance.</summary>
    public Resonance Resonance { get; }

    /// <summary>The parameters, in the order in which they were given.</summary>
    public IReadOnlyList<ColumnParameter> Parameters { get; }

    /// <summary>∂f/∂θ for each parameter, Hz per <see cref="ColumnParameter.Unit"/>.</summary>
    public ReadOnlySpan<double> HertzPerUnit => hertz;

    /// <summary>
    /// ∂ln|Z|/∂θ for each parameter, per <see cref="ColumnParameter.Unit"/>: the relative change of |Z| at the resonance. NaN in a column without
    /// losses, where |Z| is infinite or zero.
    /// </summary>
    public ReadOnlySpan<double> LogMagnitudePerUnit => magnitude;

    /// <summary>∂f/∂θ for one parameter, in cents per <see cref="ColumnParameter.Unit"/>.</summary>
    /// <param name="parameter">Its index in <see cref="Parameters"/>.</param>
    /// <returns>Cents per unit of the parameter.</returns>
    public double CentsPerUnit(int parameter)
    {
        Require.InRange(parameter, 0, hertz.Length - 1, "");
        return 1200 / Math.Log(2) * hertz[parameter] / Resonance.Frequency.Hertz;
    }

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Object("resonance", Resonance);
        json.Objects(
            "parameters",
            Enumerable.Range(0, Parameters.Count),
            i =>
            {
                json.WriteString("parameter", Parameters[i].ToString());
                json.WriteString("unit", Parameters[i].Unit);
                json.Number("hertzPerUnit", hertz[i]);
                json.Number("centsPerUnit", CentsPerUnit(i));
                json.Number("logMagnitudePerUnit", magnitude[i]);
            }
        );
    }

    /// <summary>The resonance, and the cents by which each parameter moves it.</summary>
    /// <returns>The text.</returns>
    public override string ToString() =>
        $"{Resonance}: {string.Join("; ", Parameters.Select((parameter, i) => string.Create(CultureInfo.InvariantCulture, $"{parameter} {CentsPerUnit(i):G4} cents{(parameter.Unit.Length > 0 ? $"/{parameter.Unit}" : "")}")))}";
}
