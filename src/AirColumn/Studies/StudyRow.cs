namespace AirColumn.Studies;

/// <summary>The result of a study for one of its items. Immutable.</summary>
public sealed class StudyRow
{
    private readonly double[] numbers;

    /// <summary>Puts a row together, as it was read from a file.</summary>
    /// <param name="item">The number of the item.</param>
    /// <param name="numbers">A number for each of <see cref="Study.Fields"/>; NaN if it is missing.</param>
    /// <param name="wavefronts">The wave fronts that were used; empty if nothing was computed.</param>
    /// <param name="warnings">Its warnings; empty if there are none.</param>
    /// <param name="error">The reason why something could not be computed; empty if all was computed.</param>
    public StudyRow(long item, double[] numbers, string wavefronts, string warnings, string error)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        (Item, this.numbers) = (item, numbers);
        (Wavefronts, Warnings, Error) = (wavefronts, warnings, error);
    }

    /// <summary>The number of the item: 0 is the first.</summary>
    public long Item { get; }

    /// <summary>
    /// A number for each of <see cref="Study.Fields"/>, the values of the parameters first; NaN if it is missing: a resonance that the
    /// column does not have, a quality factor without losses.
    /// </summary>
    public ReadOnlySpan<double> Numbers => numbers;

    /// <summary>The wave fronts that were used, such as "curved"; empty if nothing was computed.</summary>
    public string Wavefronts { get; }

    /// <summary>Cautions to read before relying on the row, in one line; empty if there are none.</summary>
    public string Warnings { get; }

    /// <summary>The reason why something could not be computed, in one line; empty if all was computed.</summary>
    public string Error { get; }

    /// <summary>Number of the item, and its count of numbers or its error, in the invariant culture.</summary>
    /// <returns>Item and outcome, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"item {Item}: {(Error.Length > 0 ? Error : $"{numbers.Length} numbers")}"
        );
}
