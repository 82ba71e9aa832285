using System.Globalization;

namespace AirColumn;

/// <summary>The progress of a <see cref="Batch"/>.</summary>
/// <param name="Done">The number of answers handed out.</param>
/// <param name="Total">The total number of answers; null if the number of questions is not known beforehand.</param>
public readonly record struct BatchProgress(long Done, long? Total)
{
    /// <summary>The number of answers handed out, and the total number if it is known, in the invariant culture.</summary>
    /// <returns>The progress, as text.</returns>
    public override string ToString() =>
        Total is { } total
            ? string.Create(CultureInfo.InvariantCulture, $"{Done} of {total}")
            : Done.ToString(CultureInfo.InvariantCulture);
}
