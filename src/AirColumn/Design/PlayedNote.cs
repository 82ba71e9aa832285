using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet;

namespace AirColumn;

/// <summary>A resonance and the note that a player is expected to sound on it, each with its 95 % range. Immutable.</summary>
[JsonConverter(typeof(JsonAnswerConverter<PlayedNote>))]
public sealed record PlayedNote : IJsonAnswer
{
    internal PlayedNote(
        Resonance resonance,
        double resonancePlusMinusCents,
        PlayingCorrection correction,
        double standardDeviationCents,
        double plusMinusCents
    )
    {
        (Resonance, ResonancePlusMinusCents, Correction) = (resonance, resonancePlusMinusCents, correction);
        (StandardDeviationCents, PlusMinusCents) = (standardDeviationCents, plusMinusCents);
    }

    /// <summary>The resonance.</summary>
    public Resonance Resonance { get; }

    /// <summary>Half the 95 % range of the resonance, cents; 0 if its uncertainty was not taken into account.</summary>
    public double ResonancePlusMinusCents { get; }

    /// <summary>The correction for the player.</summary>
    public PlayingCorrection Correction { get; }

    /// <summary>The note to expect.</summary>
    public Frequency Frequency => Resonance.Frequency * Cents.ToRatio(Correction.MeanCents);

    /// <summary>Standard deviation of the note, cents, from resonance and player together.</summary>
    public double StandardDeviationCents { get; }

    /// <summary>Half the 95 % range of the note, cents.</summary>
    public double PlusMinusCents { get; }

    /// <summary>The lower end of the 95 % range of the note.</summary>
    public Frequency From => Frequency * Cents.ToRatio(-PlusMinusCents);

    /// <summary>The upper end of the 95 % range of the note.</summary>
    public Frequency To => Frequency * Cents.ToRatio(PlusMinusCents);

    void IJsonAnswer.WriteMembers(Utf8JsonWriter json)
    {
        json.Object("resonance", Resonance);
        json.Number("frequencyHz", Frequency.Hertz);
        json.Number("standardDeviationCents", StandardDeviationCents);
        json.Number("plusMinusCents", PlusMinusCents);
        json.Number("fromHz", From.Hertz);
        json.Number("toHz", To.Hertz);
    }
}
