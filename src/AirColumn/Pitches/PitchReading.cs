using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace AirColumn;

/// <summary>A frequency read as a pitch and a deviation from it.</summary>
/// <param name="Pitch">The pitch.</param>
/// <param name="Cents">
/// The distance of the frequency from the pitch in cents, positive if the frequency is sharp; −1 200 000 to 1 200 000.
/// </param>
/// <exception cref="ArgumentOutOfRangeException">The deviation is outside that range.</exception>
[JsonConverter(typeof(JsonAnswerConverter<PitchReading>))]
public readonly record struct PitchReading(Pitch Pitch, double Cents) : IJsonAnswer
{
    /// <summary>The pitch.</summary>
    public Pitch Pitch { get; } = Pitch;

    /// <summary>The distance of the frequency from the pitch, in cents; positive if it is sharp.</summary>
    public double Cents { get; } =
        Require.InRange(Cents, -AirColumn.Cents.Largest, AirColumn.Cents.Largest, "cents");

    /// <summary>Text such as "C2 -3.1 cents": always a sign, one decimal, the same in every culture.</summary>
    /// <returns>The pitch and the distance in cents, as text.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Pitch} {Cents:+0.0;-0.0;+0.0} cents");

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.WriteString("pitch", Pitch.ToString());
        json.Number("cents", Cents);
    }
}
