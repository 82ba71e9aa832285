using UnitsNet;

namespace AirColumn;

/// <summary>
/// Finds the resonances of a column: the maxima of |Z| if the blown end is closed, its minima if it is open.
/// </summary>
public static class ColumnResonances
{
    private const int MostResonances = 10_000;

    /// <summary>
    /// Finds all resonances below a frequency. A resonance is found only if its undamped mode lies within the range of the radiation model.
    /// </summary>
    /// <param name="column">The column.</param>
    /// <param name="below">The frequency: above 0, up to the end of the radiation model.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The resonances in order; modes too damped to make an extremum are named in the warnings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    public static ResonanceList Resonances(
        this Column column,
        Frequency below,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        Require.Positive(below.Hertz, "Hz", nameof(below));
        if (below.Hertz > column.HighestHertz)
        {
            throw new ArgumentOutOfRangeException(
                nameof(below),
                below.Hertz,
                $"below is {Require.Show(below.Hertz, "Hz")}; the radiation of this open end is known up to "
                    + $"{Require.Show(column.HighestHertz, "Hz")}. Ask for a lower frequency."
            );
        }

        var search = new ResonanceSearch(column, below.Hertz, cancellationToken);
        var found = search.Lowest(MostResonances);
        var warnings = new List<string>([.. column.WarningsUpTo(below.Hertz), .. search.Remarks(found)]);
        if (found.Count == MostResonances)
        {
            warnings.Add($"The search ended after {found.Count} resonances; ask for a lower range.");
        }

        return new ResonanceList(found, warnings, column.ModeConvergenceAt);
    }

    /// <summary>Finds the lowest resonances, up to the limit of plane-wave theory.</summary>
    /// <param name="column">The column.</param>
    /// <param name="count">The number of resonances: 1 to 10 000.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>
    /// The resonances in order; fewer, with a warning, if the next ones lie above <see cref="Column.CutOn"/> or above the range of the radiation model.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is out of range.</exception>
    public static ResonanceList FirstResonances(
        this Column column,
        int count,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        Require.InRange(count, 1, MostResonances, "");
        var limit = Math.Min(column.HighestHertz, column.CutOnHertz);
        var search = new ResonanceSearch(column, limit, cancellationToken);
        var found = search.Lowest(count);
        var warnings = new List<string>([.. column.WarningsUpTo(0), .. search.Remarks(found)]);
        if (found.Count < count && !search.GaveUp)
        {
            warnings.Add(
                $"{found.Count} of {count} resonances were found below {Require.Show(Math.Round(limit, 1), "Hz")}, where "
                    + "plane-wave theory or the model of the radiating end stops."
            );
        }

        return new ResonanceList(found, warnings, column.ModeConvergenceAt);
    }

    /// <summary>The resonance of the lowest mode; null where it is too damped or lies beyond plane-wave theory.</summary>
    internal static Resonance? LowestResonance(
        this Column column,
        CancellationToken cancellationToken = default
    ) =>
        new ResonanceSearch(
            column,
            Math.Min(column.HighestHertz, column.CutOnHertz),
            cancellationToken
        ).OfLowestMode();
}
