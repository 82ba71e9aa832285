using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Cutting;

/// <summary>Which pieces to cut from which length of stock, so that as few lengths as possible are bought.</summary>
public static class StockCuts
{
    // Beyond, every order cannot be tried in a moment.
    private const int MostExact = 14;

    /// <summary>Plans the cuts.</summary>
    /// <param name="pieces">The pieces, up to 1000.</param>
    /// <param name="stock">The length of one piece of stock: 1 mm to 100 m.</param>
    /// <param name="kerf">What the saw takes with each cut: 0 to 20 mm. A piece that leaves less than that is the last of its length.</param>
    /// <returns>
    /// The fewest lengths, proven for up to 14 pieces or where the total says so; else those of a good guess, the longest piece first into
    /// the fullest length that has room.
    /// </returns>
    /// <exception cref="ArgumentException">A piece is longer than the stock, or there are too many.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is out of range.</exception>
    public static StockCutPlan Plan(IReadOnlyList<CutPiece> pieces, Length stock, Length kerf)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        Require.InRange(stock.Millimeters, 1, 100_000, "mm", nameof(stock));
        Require.InRange(kerf.Millimeters, 0, 20, "mm", nameof(kerf));
        if (pieces.Count > 1000)
        {
            throw new ArgumentException(
                $"There are {pieces.Count} pieces; allowed are 1000.",
                nameof(pieces)
            );
        }

        foreach (var piece in pieces)
        {
            Require.Positive(piece.Length.Millimeters, "mm", nameof(pieces));
            if (piece.Length > stock)
            {
                throw new ArgumentException(
                    $"The piece '{piece.Name}' is {Wording.Millimetres(piece.Length)} long, longer than the stock of {Wording.Millimetres(stock)}; "
                        + "buy longer stock or join two pieces.",
                    nameof(pieces)
                );
            }
        }

        // Each piece takes its kerf, but the last of a length needs none.
        var (room, cut) = (stock.Millimeters + kerf.Millimeters, kerf.Millimeters);
        var sizes = pieces.Select(piece => piece.Length.Millimeters + cut).ToArray();
        var order = Enumerable
            .Range(0, sizes.Length)
            .OrderByDescending(i => sizes[i])
            .ThenBy(i => i)
            .ToArray();
        var best = BestFit(sizes, order, room);
        var least = (int)Math.Ceiling(sizes.Sum() / room * (1 - 1e-12));
        var isProven = best.Count <= least;
        if (!isProven && pieces.Count <= MostExact)
        {
            best = new Search(sizes, order, room, best).Run(least);
            isProven = true;
        }

        return new StockCutPlan(
            stock,
            kerf,
            [.. best.Select(bar => new StockBar([.. bar.Select(i => pieces[i])], LeftOver(bar)))],
            isProven
        );

        Length LeftOver(List<int> bar) =>
            Length.FromMillimeters(Math.Max(0, Math.Round(stock.Millimeters - bar.Sum(i => sizes[i]), 6)));
    }

    private static List<List<int>> BestFit(double[] sizes, int[] order, double room)
    {
        var bars = new List<(List<int> Pieces, double Free)>();
        foreach (var i in order)
        {
            var best = -1;
            for (var b = 0; b < bars.Count; b++)
            {
                if (Fits(sizes[i], bars[b].Free) && (best < 0 || bars[b].Free < bars[best].Free))
                {
                    best = b;
                }
            }

            if (best < 0)
            {
                bars.Add(([i], room - sizes[i]));
            }
            else
            {
                bars[best].Pieces.Add(i);
                bars[best] = (bars[best].Pieces, bars[best].Free - sizes[i]);
            }
        }

        return [.. bars.Select(bar => bar.Pieces)];
    }

    // Sums of measured sizes, so that what fits exactly fits.
    private static bool Fits(double size, double free) => size <= free + 1e-6;

    // Every piece into every length that is open, or a new one; never where a solution at hand would not be beaten.
    private sealed class Search(double[] sizes, int[] order, double room, List<List<int>> best)
    {
        private readonly List<List<int>> open = [];
        private readonly List<double> free = [];

        public List<List<int>> Run(int least)
        {
            Place(0, least);
            return best;
        }

        private bool Place(int n, int least)
        {
            if (n == order.Length)
            {
                best = [.. open.Select(bar => bar.ToList())];
                return best.Count == least;
            }

            var i = order[n];
            for (var b = 0; b < open.Count; b++)
            {
                // Lengths with the same room are the same.
                if (!Fits(sizes[i], free[b]) || free.IndexOf(free[b]) < b)
                {
                    continue;
                }

                open[b].Add(i);
                free[b] -= sizes[i];
                if (Place(n + 1, least))
                {
                    return true;
                }

                free[b] += sizes[i];
                open[b].RemoveAt(open[b].Count - 1);
            }

            if (open.Count + 1 >= best.Count)
            {
                return false;
            }

            open.Add([i]);
            free.Add(room - sizes[i]);
            var found = Place(n + 1, least);
            if (!found)
            {
                open.RemoveAt(open.Count - 1);
                free.RemoveAt(free.Count - 1);
            }

            return found;
        }
    }
}
