using System.Numerics;
using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet;

namespace AirColumn;

/// <summary>
/// Pressure and volume flow along a column at one frequency, complex amplitudes, exp(+jωt), for a source of 1. Immutable.
/// </summary>
/// <remarks>
/// The source excites the column. At a closed blown end the source is a flow of 1 m³/s into the end; pressures are then in Pa per m³/s and
/// flows in m³/s per m³/s. At an open blown end the source is a pressure of 1 Pa at the beginning of the end correction; pressures are then
/// in Pa per Pa and flows in m³/s per Pa. Flow counts towards the far end. At the position of a step or a hole the values are taken on the
/// side of the far end.
/// </remarks>
[JsonConverter(typeof(JsonAnswerConverter<StandingWave>))]
public sealed class StandingWave : IJsonAnswer
{
    private readonly double[] positions;
    private readonly Complex[] pressure;
    private readonly Complex[] flow;

    internal StandingWave(
        Frequency frequency,
        double[] positions,
        Complex[] pressure,
        Complex[] flow,
        IReadOnlyList<string> warnings
    )
    {
        Frequency = frequency;
        this.positions = positions;
        this.pressure = pressure;
        this.flow = flow;
        Warnings = warnings;
    }

    /// <summary>The frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>The number of positions.</summary>
    public int Count => positions.Length;

    /// <summary>Distances from the blown end along the axis, m.</summary>
    public ReadOnlySpan<double> Metres => positions;

    /// <summary>Pressure at each position, Pa per unit of the source.</summary>
    public ReadOnlySpan<Complex> Pressure => pressure;

    /// <summary>Volume flow at each position, m³/s per unit of the source.</summary>
    public ReadOnlySpan<Complex> Flow => flow;

    /// <summary>Cautions to read before relying on the wave.</summary>
    public IReadOnlyList<string> Warnings { get; }

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Number("frequencyHz", Frequency.Hertz);
        json.Numbers("positionMetres", Metres);
        json.Numbers("pressureRePaPerSource", Pressure, p => p.Real);
        json.Numbers("pressureImPaPerSource", Pressure, p => p.Imaginary);
        json.Numbers("flowReM3PerSPerSource", Flow, u => u.Real);
        json.Numbers("flowImM3PerSPerSource", Flow, u => u.Imaginary);
        json.Texts("warnings", Warnings);
    }

    /// <summary>The frequency and the number of positions.</summary>
    /// <returns>The text.</returns>
    public override string ToString() =>
        $"Standing wave at {Require.Show(Frequency.Hertz, "Hz")}, {Count} positions";
}
