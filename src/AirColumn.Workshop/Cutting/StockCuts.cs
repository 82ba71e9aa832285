using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Cutting;

/// <summary>Assigns pieces to lengths of stock so that as few lengths as possible are bought.</summary>
public static class StockCuts
{
    private const int MostPieces = 1000;

    // To a ten-thousandth of a millimetre a sixteenth of an inch, 1.5875 mm, is whole.
    private const double PerMillimetre = 1e4;

    /// <summary>Every pipe of every tube, by the kind of pipe it is sawn from.</summary>
    /// <param name="tubes">The tubes, each with a name of its own.</param>
    /// <returns>
    /// The kinds, in the order in which they first occur. Pipes with the same name in the catalogue are of one kind, however they were
    /// measured. Other pipes are of one kind if their inside and outside diameters are the same.
    /// </returns>
    /// <exception cref="ArgumentException">A plan has no solution.</exception>
    public static IReadOnlyList<PiecesOfPipe> PiecesOf(IReadOnlyList<(string Name, TubeBuild Build)> tubes)
    {
        ArgumentNullException.ThrowIfNull(tubes);
        foreach (var (_, build) in tubes)
        {
            if (!build.IsSolved)
            {
                throw new ArgumentException(build.Explanation, nameof(tubes));
            }
        }

        return
        [
            .. tubes
                .SelectMany(tube =>
                    tube.Build.CutList.Select(cut =>
                        (cut.Pipe, Piece: new CutPiece($"{tube.Name} {cut.Pipe.Name}".Trim(), cut.Length))
                    )
                )
                .GroupBy(cut =>
                    cut.Pipe.Stock is { } stock
                        ? (stock.Name, 0, 0)
                        : ("", cut.Pipe.Inside.Millimeters, cut.Pipe.Outside.Millimeters)
                )
                .Select(kind => new PiecesOfPipe(kind.First().Pipe, [.. kind.Select(cut => cut.Piece)])),
        ];
    }

    /// <summary>Plans the cuts of one kind of pipe.</summary>
    /// <param name="pieces">The pieces, up to 1000.</param>
    /// <param name="stock">The length of one piece of stock: 1 mm to 100 m.</param>
    /// <param name="kerf">
    /// The width of the saw cut: 0 to 20 mm. A piece that leaves less than the kerf is the last piece of its length of stock.
    /// </param>
    /// <param name="units">The units in which the pieces are sawn; with both, there is room for the longer of the two marks.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>
    /// A plan with the fewest lengths, if that could be proven; otherwise a good plan, with the number of lengths that any plan needs.
    /// </returns>
    /// <exception cref="ArgumentException">A piece is longer than the stock, or there are too many pieces.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is out of range, or the units are not defined.</exception>
    public static StockCutPlan Plan(
        IReadOnlyList<CutPiece> pieces,
        Length stock,
        Length kerf,
        LengthUnits units = LengthUnits.Both,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(pieces);
        Require.InRange(stock.Millimeters, 1, 100_000, "mm", nameof(stock));
        Require.InRange(kerf.Millimeters, 0, 20, "mm", nameof(kerf));
        Require.Named(units);
        if (pieces.Count > MostPieces)
        {
            throw new ArgumentException(
                $"There are {pieces.Count} pieces; at most {MostPieces} are allowed.",
                nameof(pieces)
            );
        }

        foreach (var piece in pieces)
        {
            if (piece.Length.Longest(units) > stock)
            {
                throw new ArgumentException(CutWords.TooLong(piece, stock, units), nameof(pieces));
            }
        }

        // Each piece takes its kerf, but the last of a length needs none.
        var cut = (long)Math.Ceiling(Math.Round(kerf.Millimeters * PerMillimetre, 3));
        var room = (long)Math.Floor(Math.Round(stock.Millimeters * PerMillimetre, 3)) + cut;
        var (bins, least) = BinPacking.Pack(
            [.. pieces.Select(piece => Whole(piece) + cut)],
            room,
            cancellationToken
        );
        return new StockCutPlan(
            stock,
            kerf,
            units,
            [.. bins.Select(bin => new StockBar([.. bin.Select(i => pieces[i])], LeftOver(bin)))],
            least
        );

        long Whole(CutPiece piece) =>
            (long)Math.Round(piece.Length.Longest(units).Millimeters * PerMillimetre);

        Length LeftOver(List<int> bin) =>
            Length.FromMillimeters(
                Math.Max(0, room - cut - bin.Sum(i => Whole(pieces[i]) + cut)) / PerMillimetre
            );
    }
}
