namespace AirColumn.Workshop.Cutting;

/// <summary>The fewest bins for items of whole sizes, as far as a bounded search can tell.</summary>
/// <remarks>
/// Each largest item first into the fullest bin that has room; then, from the lower bound L2 (Martello and Toth 1990, Knapsack Problems, 8.3.2)
/// upwards, a search for a packing into one bin less: bin by bin, the largest item left and every maximal set beside it (dominance, ibid. 8.4),
/// never with
/// more room wasted than there is to waste. A number of bins that the search rules out raises the lower bound.
/// </remarks>
internal sealed class BinPacking
{
    // A choice: well under a second, and far beyond the sets that a workshop saws in a day.
    private const int MostSteps = 100_000_000;

    private readonly long[] sizes;
    private readonly int[] counts;
    private readonly Stack<List<int>> bins = [];
    private readonly CancellationToken cancellationToken;
    private readonly long room;
    private int steps;

    private BinPacking(IReadOnlyList<long> items, long room, CancellationToken cancellationToken)
    {
        (this.room, this.cancellationToken) = (room, cancellationToken);
        var kinds = items.GroupBy(size => size).OrderByDescending(kind => kind.Key).ToList();
        sizes = [.. kinds.Select(kind => kind.Key)];
        counts = [.. kinds.Select(kind => kind.Count())];
    }

    /// <summary>Packs.</summary>
    /// <param name="items">The sizes, each above 0 and at most the room.</param>
    /// <param name="room">The room of a bin.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    /// <returns>For each bin the indices of its items, and how many bins no packing can do without.</returns>
    public static (List<List<int>> Bins, int Least) Pack(
        IReadOnlyList<long> items,
        long room,
        CancellationToken cancellationToken
    )
    {
        cancellationToken.ThrowIfCancellationRequested();
        var best = BestFit(items, room);
        var least = LowerBound(items, room);
        while (least < best.Count)
        {
            var search = new BinPacking(items, room, cancellationToken);
            if (search.IntoBins(least, least * room - items.Sum()))
            {
                return (search.Indices(items), least);
            }

            if (search.steps > MostSteps)
            {
                break;
            }

            least++;
        }

        return (best, least);
    }

    /// <summary>L2: no packing has fewer bins.</summary>
    internal static int LowerBound(IReadOnlyList<long> items, long room)
    {
        var bound = 0L;
        foreach (var small in items.Where(size => 2 * size <= room).Append(0).Distinct())
        {
            // Bins of their own for the large; the middling fit only where room is left beside the large.
            var (large, free, middling) = (0L, 0L, 0L);
            foreach (var size in items)
            {
                if (2 * size > room)
                {
                    large++;
                    free += size <= room - small ? room - size : 0;
                }
                else if (size >= small)
                {
                    middling += size;
                }
            }

            bound = Math.Max(bound, large + Math.Max(0, (middling - free + room - 1) / room));
        }

        return (int)bound;
    }

    private static List<List<int>> BestFit(IReadOnlyList<long> items, long room)
    {
        var bins = new List<(List<int> Items, long Free)>();
        foreach (var i in Enumerable.Range(0, items.Count).OrderByDescending(i => items[i]).ThenBy(i => i))
        {
            var best = -1;
            for (var b = 0; b < bins.Count; b++)
            {
                if (items[i] <= bins[b].Free && (best < 0 || bins[b].Free < bins[best].Free))
                {
                    best = b;
                }
            }

            if (best < 0)
            {
                bins.Add(([i], room - items[i]));
            }
            else
            {
                bins[best].Items.Add(i);
                bins[best] = (bins[best].Items, bins[best].Free - items[i]);
            }
        }

        return [.. bins.Select(bin => bin.Items)];
    }

    private bool IntoBins(int left, long waste)
    {
        var largest = Array.FindIndex(counts, count => count > 0);
        if (largest < 0)
        {
            return true;
        }

        if (left == 0 || steps > MostSteps)
        {
            return false;
        }

        cancellationToken.ThrowIfCancellationRequested();
        counts[largest]--;
        bins.Push([largest]);
        if (Fill(largest, room - sizes[largest], left, waste))
        {
            return true;
        }

        bins.Pop();
        counts[largest]++;
        return false;
    }

    // More into the bin on top, from a kind on; then the next bin.
    private bool Fill(int from, long free, int left, long waste)
    {
        cancellationToken.ThrowIfCancellationRequested();
        steps += sizes.Length - from;
        if (steps > MostSteps)
        {
            return false;
        }

        for (var kind = from; kind < sizes.Length; kind++)
        {
            if (counts[kind] == 0 || sizes[kind] > free)
            {
                continue;
            }

            counts[kind]--;
            bins.Peek().Add(kind);
            if (Fill(kind, free - sizes[kind], left, waste))
            {
                return true;
            }

            var bin = bins.Peek();
            bin.RemoveAt(bin.Count - 1);
            counts[kind]++;
        }

        // A bin with room for one more is never needed.
        var smallest = Array.FindLastIndex(counts, count => count > 0);
        return free <= waste && (smallest < 0 || sizes[smallest] > free) && IntoBins(left - 1, waste - free);
    }

    private List<List<int>> Indices(IReadOnlyList<long> items)
    {
        var ofKind = sizes.ToDictionary(
            size => size,
            size => new Queue<int>(Enumerable.Range(0, items.Count).Where(i => items[i] == size))
        );
        return [.. bins.Reverse().Select(bin => bin.Select(kind => ofKind[sizes[kind]].Dequeue()).ToList())];
    }
}
