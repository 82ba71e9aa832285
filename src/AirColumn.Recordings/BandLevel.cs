using UnitsNet;

namespace AirColumn.Recordings;

/// <summary>The level in a band one third of an octave wide.</summary>
/// <param name="Centre">Exact middle of the band, 1000 Hz·10^(n/10) (iec61260-1, base ten).</param>
/// <param name="Decibels">Level of all that is in the band, dB of full scale: that of a sine wave of full amplitude is −3.01 dB.</param>
public readonly record struct BandLevel(Frequency Centre, double Decibels);
