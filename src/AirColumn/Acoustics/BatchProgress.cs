namespace AirColumn.Acoustics;

/// <summary>How far a <see cref="Batch"/> is.</summary>
/// <param name="Done">The number of answers handed out.</param>
/// <param name="Total">The number of answers to come in all; null where the questions do not say their number beforehand.</param>
public readonly record struct BatchProgress(long Done, long? Total);
