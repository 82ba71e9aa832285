using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet;

namespace AirColumn;

/// <summary>A resonance against the harmonic that is nearest to it.</summary>
/// <param name="Resonance">The resonance.</param>
/// <param name="Harmonic">The multiple of the fundamental nearest in cents: 1, 2, 3, …</param>
/// <param name="Cents">The distance from that multiple to the resonance: positive if the resonance is sharp.</param>
[JsonConverter(typeof(JsonAnswerConverter<Harmonicity>))]
public readonly record struct Harmonicity(Resonance Resonance, int Harmonic, double Cents) : IJsonAnswer
{
    /// <summary>The deviation in the invariant culture, such as "3 × fundamental -12.1 cents".</summary>
    /// <returns>The deviation, as text.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Harmonic} × fundamental {Cents:+0.0;-0.0;0.0} cents");

    internal static Harmonicity Of(Resonance resonance, double fundamental, bool onlyOdd)
    {
        var ratio = resonance.Frequency.Hertz / fundamental;
        var step = onlyOdd ? 2 : 1;
        // The nearest in cents is one of the two that enclose the ratio.
        var below = Math.Max(1, onlyOdd ? 2 * (int)Math.Floor((ratio - 1) / 2) + 1 : (int)Math.Floor(ratio));
        var above = below + step;
        var harmonic = ratio * ratio < (double)below * above ? below : above;
        return new Harmonicity(
            resonance,
            harmonic,
            AirColumn.Cents.Between(Frequency.FromHertz(harmonic * fundamental), resonance.Frequency)
        );
    }

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Object("resonance", Resonance);
        json.WriteNumber("harmonic", Harmonic);
        json.Number("cents", Cents);
    }
}
