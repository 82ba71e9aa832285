using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>A resonance heard in the ringing of a tube.</summary>
/// <param name="Frequency">The frequency at which the tube rings: the real part of the pole.</param>
/// <param name="StandardUncertaintyCents">
/// Standard uncertainty of the frequency, cents, from its differences between parts of the recording. Draughts, warming and the hand are not included.
/// </param>
/// <param name="QualityFactor">π·frequency·(time to fall to 1/e).</param>
/// <param name="Decibels">Its initial amplitude relative to the strongest resonance, dB.</param>
public readonly record struct RecordedResonance(
    Frequency Frequency,
    double StandardUncertaintyCents,
    double QualityFactor,
    double Decibels
);
