using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>The pitch at one time of a recording.</summary>
/// <param name="Time">Time from the beginning of the recording.</param>
/// <param name="Frequency">The fundamental at that time.</param>
public readonly record struct PitchPoint(Duration Time, Frequency Frequency);
