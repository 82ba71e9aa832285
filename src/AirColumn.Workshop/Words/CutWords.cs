using System.Globalization;
using AirColumn.Workshop.Cutting;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>What to buy and how to saw it, in English.</summary>
internal static class CutWords
{
    public static string Buy(StockCutPlan plan)
    {
        var sizes = new Sizes(plan.Units);
        var lengths = plan.Bars.Count == 1 ? "1 length" : Text($"{plan.Bars.Count} lengths");
        var least = plan.IsProvenLeast
            ? "minimum"
            : Text($"may not be the minimum; at least {plan.LeastPossible} are needed");
        var offcut = plan.Bars.Count == 1 ? "Offcut" : "Offcuts together";
        return $"Buy {lengths} of {sizes.Sold(plan.Stock)} ({least}). {offcut} {sizes.Tape(plan.LeftOver)}, {sizes.Tape(plan.Sawn)} lost to the saw.";
    }

    public static string Bar(int number, StockBar bar, LengthUnits units) =>
        Text($"{number}: ")
        + string.Join(", ", bar.Pieces.Select(piece => $"{piece.Name} {piece.Length.In(units)}"))
        + $"; {new Sizes(units).Tape(bar.LeftOver)} left";

    public static string TooLong(CutPiece piece, Length stock, LengthUnits units) =>
        $"The piece '{piece.Name}' is {piece.Length.In(units)} long, longer than the stock of {new Sizes(units).Sold(stock)}; buy longer stock or join two pieces.";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
