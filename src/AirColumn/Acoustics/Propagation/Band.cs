namespace AirColumn.Acoustics.Propagation;

/// <summary>
/// Frequencies that steps are prepared for: their number and their terms are counted once, so that what they leave out is smooth in
/// frequency.
/// </summary>
/// <param name="Low">ω, rad/s.</param>
/// <param name="High">ω, rad/s.</param>
/// <param name="Tolerance">How far the two-port of a segment may be off, relative.</param>
internal readonly record struct Band(double Low, double High, double Tolerance);
