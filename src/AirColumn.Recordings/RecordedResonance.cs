using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>A resonance of a tube as it was heard ringing.</summary>
/// <param name="Frequency">At which it rings while it dies away: the real part of its pole.</param>
/// <param name="StandardUncertaintyCents">
/// Of the frequency, cents: from how it differs between parts of the recording. Draughts, warming and the hand are not in it.
/// </param>
/// <param name="QualityFactor">π·frequency·(time to fall to 1/e).</param>
/// <param name="Decibels">Its amplitude at the beginning, against the strongest, dB.</param>
public readonly record struct RecordedResonance(
    Frequency Frequency,
    double StandardUncertaintyCents,
    double QualityFactor,
    double Decibels
);
