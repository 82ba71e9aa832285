namespace AirColumn.Recordings.Tracking;

/// <summary>A short piece of sound: how loud and how periodic it is.</summary>
/// <param name="Seconds">Its middle.</param>
/// <param name="Level">Root mean square, of full scale.</param>
/// <param name="Hertz">One over its period.</param>
/// <param name="Clarity">How alike one period is to the next: 1 if it repeats exactly, about 0 for noise.</param>
internal readonly record struct PitchFrame(double Seconds, double Level, double Hertz, double Clarity);
