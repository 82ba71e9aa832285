namespace AirColumn;

/// <summary>The progress of a <see cref="Batch"/>.</summary>
/// <param name="Done">The number of answers handed out.</param>
/// <param name="Total">The total number of answers; null if the number of questions is not known beforehand.</param>
public readonly record struct BatchProgress(long Done, long? Total);
