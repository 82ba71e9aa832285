using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet;

namespace AirColumn;

/// <summary>
/// The balance of the power that a source of amplitude 1 sends into a column at one frequency. Powers are means over a period, in W per
/// (m³/s)² at a closed blown end and in W per Pa² at an open blown end (see <see cref="StandingWave"/>). Immutable.
/// </summary>
/// <remarks>
/// Each part is computed independently. The input comes from pressure and flow at the blown end, the radiated power from pressure and flow
/// at the far end, and the losses from the field along the wall. So their sum is a check, not a definition.
/// </remarks>
/// <param name="Frequency">The frequency.</param>
/// <param name="Input">½·Re(p·U*) into the blown end.</param>
/// <param name="Radiated">½·Re(p·U*) out of the far end: the sound radiated there, less the sound that the end takes in from holes.</param>
/// <param name="Viscous">½∫Re Z'·|U|²dx: friction at the wall.</param>
/// <param name="Thermal">½∫Re Y'·|p|²dx: heat conduction into the wall.</param>
/// <param name="SideOpenings">
/// Power that goes into holes and branches: radiated by the open ones, lost at their own walls. 0 without holes and branches. A single hole
/// may take in power from outside if it hears others.
/// </param>
[JsonConverter(typeof(JsonAnswerConverter<PowerBalance>))]
public sealed record PowerBalance(
    Frequency Frequency,
    double Input,
    double Radiated,
    double Viscous,
    double Thermal,
    double SideOpenings
) : IJsonAnswer
{
    /// <summary>Radiated over input power: the radiation efficiency of the far end, 0 to 1; below 0 if the end takes in more from open holes than it sends.</summary>
    public double Efficiency => Radiated / Input;

    /// <summary>The sum of radiated power, viscous and thermal losses and the power into side openings, over the input power, minus 1.</summary>
    public double Imbalance => (Radiated + Viscous + Thermal + SideOpenings - Input) / Input;

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Number("frequencyHz", Frequency.Hertz);
        json.Number("inputWPerSourceSquared", Input);
        json.Number("radiatedWPerSourceSquared", Radiated);
        json.Number("viscousWPerSourceSquared", Viscous);
        json.Number("thermalWPerSourceSquared", Thermal);
        json.Number("sideOpeningsWPerSourceSquared", SideOpenings);
        json.Number("efficiency", Efficiency);
    }
}
