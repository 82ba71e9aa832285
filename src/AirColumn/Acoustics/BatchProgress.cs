namespace AirColumn.Acoustics;

/// <summary>How far a <see cref="Batch"/> is.</summary>
/// <param name="Done">How many answers have been handed out.</param>
/// <param name="Total">How many there will be; null where the questions do not say their number beforehand.</param>
public readonly record struct BatchProgress(long Done, long? Total);
