namespace AirColumn;

/// <summary>
/// A search with wave fronts and a number of modes that stay the same from one trial to the next: what a column takes by itself may jump between
/// two. That is a few tenths of a cent, and with several open holes what they hear of each other, which radial modes leave out.
/// </summary>
internal static class FrontsOfSearch
{
    private const int MostRounds = 3;

    /// <summary>
    /// Searches with what the column to begin with has taken; where the column found takes something else, again from there with that.
    /// </summary>
    /// <param name="start">The column to begin with.</param>
    /// <param name="search">From a column to a solution.</param>
    /// <param name="found">The column of a solution.</param>
    /// <param name="with">A solution with another column.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    /// <returns>A solution whose column has the options of the start; or, where it takes something else each time, those it was found with.</returns>
    public static T Keep<T>(
        Column start,
        Func<Column, T> search,
        Func<T, Column> found,
        Func<T, Column, T> with,
        CancellationToken cancellationToken
    )
    {
        var from = start.Decided(cancellationToken);
        for (var round = 1; ; round++)
        {
            var solution = search(from);
            var end = found(solution);
            var (used, asked) = (from.Options, start.Options);
            if (ReferenceEquals(from, start))
            {
                return solution;
            }

            var free = end.With(
                end.Parts with
                {
                    Options = end.Options with { Wavefronts = asked.Wavefronts, Modes = asked.Modes },
                }
            );
            from = free.Decided(cancellationToken);
            var isSame = from.Options.Wavefronts == used.Wavefronts && from.Options.Modes == used.Modes;
            if (isSame || round == MostRounds)
            {
                return isSame ? with(solution, free) : solution;
            }
        }
    }
}
