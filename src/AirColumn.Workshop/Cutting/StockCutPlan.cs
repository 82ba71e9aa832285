using AirColumn.Workshop.Tubes;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Cutting;

/// <summary>A plan that assigns pieces to lengths of stock. Immutable.</summary>
public sealed record StockCutPlan
{
    internal StockCutPlan(
        Length stock,
        Length kerf,
        LengthUnits units,
        IReadOnlyList<StockBar> bars,
        int leastPossible
    )
    {
        (Stock, Kerf, Units, Bars, LeastPossible) = (stock, kerf, units, bars, leastPossible);
    }

    /// <summary>The length of one piece of stock.</summary>
    public Length Stock { get; }

    /// <summary>The kerf: the width of the saw cut.</summary>
    public Length Kerf { get; }

    /// <summary>The units in which the pieces are sawn.</summary>
    public LengthUnits Units { get; }

    /// <summary>The lengths to buy, each with its pieces.</summary>
    public IReadOnlyList<StockBar> Bars { get; }

    /// <summary>The smallest number of lengths that any plan could need.</summary>
    public int LeastPossible { get; }

    /// <summary>True if no plan with fewer lengths exists.</summary>
    public bool IsProvenLeast => Bars.Count == LeastPossible;

    /// <summary>The total left over from all lengths.</summary>
    public Length LeftOver => Length.FromMillimeters(Bars.Sum(bar => bar.LeftOver.Millimeters));

    /// <summary>The total that the saw takes from all lengths.</summary>
    public Length Sawn =>
        Length.FromMillimeters(
            Bars.Sum(bar =>
                Stock.Millimeters
                - bar.LeftOver.Millimeters
                - bar.Pieces.Sum(piece => piece.Length.Longest(Units).Millimeters)
            )
        );

    /// <summary>The plan in words: what to buy, then a line for each length. The same in every culture.</summary>
    /// <returns>The sentences and lines.</returns>
    public IReadOnlyList<string> Describe() =>
        [CutWords.Buy(this), .. Bars.Select((bar, i) => CutWords.Bar(i + 1, bar, Units))];
}

/// <summary>One length of stock.</summary>
/// <param name="Pieces">The pieces cut from it, in the order of cutting.</param>
/// <param name="LeftOver">The length left of it.</param>
public sealed record StockBar(IReadOnlyList<CutPiece> Pieces, Length LeftOver);

/// <summary>A piece to be cut.</summary>
/// <param name="Name">The tube and part that it is for.</param>
/// <param name="Length">Its length.</param>
public sealed record CutPiece(string Name, SawLength Length);

/// <summary>The pieces to be cut from one kind of pipe.</summary>
/// <param name="Pipe">A pipe of that kind.</param>
/// <param name="Pieces">The pieces.</param>
public sealed record PiecesOfPipe(PipePart Pipe, IReadOnlyList<CutPiece> Pieces)
{
    /// <summary>The name of the kind: its name in the catalogue, or the name of the first such pipe.</summary>
    public string Name => Pipe.Stock?.Name ?? Pipe.Name;
}
