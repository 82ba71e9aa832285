using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>The level in a band one third of an octave wide.</summary>
/// <param name="Centre">Exact mid-band frequency, 1000 Hz·10^(n/10) (iec61260-1, base ten).</param>
/// <param name="Decibels">Level of all sound in the band, dB relative to full scale: a sine wave of full amplitude has −3.01 dB.</param>
public readonly record struct BandLevel(Frequency Centre, double Decibels);
