using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>One partial of a note.</summary>
/// <param name="Number">The number of the partial: 1 is the fundamental.</param>
/// <param name="Frequency">Its frequency divided by the frequency of the note.</param>
/// <param name="Decibels">Its level against the strongest partial of the note, dB: 0 or less.</param>
/// <param name="AboveNoiseDecibels">Its level above the noise next to it, in one window of the measurement (four periods or 30 ms), dB.</param>
public readonly record struct NotePartial(
    int Number,
    Frequency Frequency,
    double Decibels,
    double AboveNoiseDecibels
);
