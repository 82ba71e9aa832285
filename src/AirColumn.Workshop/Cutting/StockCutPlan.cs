using UnitsNet;

namespace AirColumn.Workshop.Cutting;

/// <summary>Which pieces come from which length of stock. Immutable.</summary>
public sealed record StockCutPlan
{
    internal StockCutPlan(Length stock, Length kerf, IReadOnlyList<StockBar> bars, bool isProvenLeast)
    {
        (Stock, Kerf, Bars, IsProvenLeast) = (stock, kerf, bars, isProvenLeast);
    }

    /// <summary>The length of one piece of stock.</summary>
    public Length Stock { get; }

    /// <summary>What the saw takes with each cut.</summary>
    public Length Kerf { get; }

    /// <summary>The lengths to buy, each with its pieces.</summary>
    public IReadOnlyList<StockBar> Bars { get; }

    /// <summary>Whether no plan with fewer lengths exists.</summary>
    public bool IsProvenLeast { get; }

    /// <summary>What is left over and sawn away of all lengths together.</summary>
    public Length Waste =>
        Length.FromMillimeters(
            Bars.Count * Stock.Millimeters
                - Bars.Sum(bar => bar.Pieces.Sum(piece => piece.Length.Millimeters))
        );
}

/// <summary>One length of stock.</summary>
/// <param name="Pieces">What is cut from it, in the order of cutting.</param>
/// <param name="LeftOver">What is left of it.</param>
public sealed record StockBar(IReadOnlyList<CutPiece> Pieces, Length LeftOver);

/// <summary>A piece to be cut.</summary>
/// <param name="Name">What it is for.</param>
/// <param name="Length">How long it is.</param>
public sealed record CutPiece(string Name, Length Length);
