using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>One partial of a note.</summary>
/// <param name="Number">Which: 1 is the fundamental.</param>
/// <param name="Frequency">Its own frequency over the note.</param>
/// <param name="Decibels">Its level against the strongest partial of the note, dB: 0 or less.</param>
/// <param name="AboveNoiseDecibels">Its level against the noise beside it, in one window of the measurement, of four periods or 30 ms, dB.</param>
public readonly record struct NotePartial(
    int Number,
    Frequency Frequency,
    double Decibels,
    double AboveNoiseDecibels
);
