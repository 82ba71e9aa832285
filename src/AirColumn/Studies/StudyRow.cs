namespace AirColumn.Studies;

/// <summary>The result of a study for one of its items. Immutable.</summary>
public sealed class StudyRow
{
    private readonly double[] numbers;

    /// <summary>Puts a row together, as it was read from a file.</summary>
    /// <param name="item">Which item.</param>
    /// <param name="numbers">A number for each of <see cref="Study.Fields"/>; NaN where there is none.</param>
    /// <param name="wavefronts">The wave fronts that were computed; empty where nothing was.</param>
    /// <param name="warnings">What to know before relying on it; empty if nothing.</param>
    /// <param name="error">Why something could not be computed; empty if all was.</param>
    public StudyRow(long item, double[] numbers, string wavefronts, string warnings, string error)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        (Item, this.numbers) = (item, numbers);
        (Wavefronts, Warnings, Error) = (wavefronts, warnings, error);
    }

    /// <summary>The number of the item: 0 is the first.</summary>
    public long Item { get; }

    /// <summary>
    /// A number for each of <see cref="Study.Fields"/>, the values of the parameters first; NaN where there is none: a resonance that the
    /// column does not have, a quality factor without losses.
    /// </summary>
    public ReadOnlySpan<double> Numbers => numbers;

    /// <summary>The wave fronts that were computed, such as "curved"; empty where nothing was.</summary>
    public string Wavefronts { get; }

    /// <summary>Cautions to read before relying on it, in one line; empty if there are none.</summary>
    public string Warnings { get; }

    /// <summary>Why something could not be computed, in one line; empty if all was. What could be stands in the numbers.</summary>
    public string Error { get; }

    /// <summary>Number of the item, and how many numbers it has or its error, in the invariant culture.</summary>
    /// <returns>Item and outcome, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"item {Item}: {(Error.Length > 0 ? Error : $"{numbers.Length} numbers")}"
        );
}
