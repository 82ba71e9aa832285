using System.Globalization;
using System.Numerics;
using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet;

namespace AirColumn;

/// <summary>
/// One resonance of a column: a maximum of |Z| at a closed blown end, a minimum at an open one. Immutable.
/// </summary>
[JsonConverter(typeof(JsonAnswerConverter<Resonance>))]
public sealed class Resonance : IJsonAnswer
{
    internal Resonance(double hertz, double magnitude, Complex pole)
    {
        Frequency = Frequency.FromHertz(hertz);
        Magnitude = magnitude;
        Pole = pole;
    }

    /// <summary>
    /// The frequency at which |Z| is extreme. In a column with losses this differs slightly from the zero of
    /// Im Z and from the real part of <see cref="Pole"/>.
    /// </summary>
    public Frequency Frequency { get; }

    /// <summary>
    /// |Z| at that frequency, Pa·s/m³. In a column without losses a maximum is huge or infinite and a minimum is tiny or 0, depending on
    /// rounding.
    /// </summary>
    public double Magnitude { get; }

    /// <summary>
    /// The complex frequency f of the free oscillation exp(2πjft), Hz: the pole of Z (closed blown end) or of 1/Z (open)
    /// that belongs to this extremum. Its imaginary part is positive: the oscillation decays.
    /// </summary>
    public Complex Pole { get; }

    /// <summary>
    /// Quality factor Re f/(2·Im f) of <see cref="Pole"/>; infinite in a column without wall losses and radiation. A guess if a warning of the list
    /// says so.
    /// </summary>
    public double QualityFactor => Pole.Real / (2 * Pole.Imaginary);

    /// <summary>The pitch nearest to <see cref="Frequency"/>. The note that a player sounds may differ.</summary>
    /// <param name="tuning">The tuning that names pitches.</param>
    /// <returns>The pitch and the distance from it.</returns>
    public PitchReading Nearest(Tuning tuning)
    {
        ArgumentNullException.ThrowIfNull(tuning);
        return tuning.Nearest(Frequency);
    }

    /// <summary>Frequency and quality factor in the invariant culture, such as "65.34 Hz, Q 52".</summary>
    /// <returns>Frequency and quality factor, as text.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Frequency.Hertz:F2} Hz, Q {QualityFactor:F0}");

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Number("frequencyHz", Frequency.Hertz);
        json.Number("magnitudePaSPerM3", Magnitude);
        json.Number("qualityFactor", QualityFactor);
        json.Number("poleHz", Pole);
    }
}
