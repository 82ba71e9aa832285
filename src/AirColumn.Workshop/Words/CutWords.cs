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
        return $"Buy {lengths} of {Stock(plan.Stock, plan.Units)} ({least}). {offcut} {sizes.Tape(plan.LeftOver)}, {sizes.Tape(plan.Sawn)} lost to the saw.";
    }

    public static string Bar(int number, StockBar bar, LengthUnits units) =>
        Text($"{number}: ")
        + string.Join(", ", bar.Pieces.Select(piece => $"{piece.Name} {piece.Length.In(units)}"))
        + $"; {new Sizes(units).Tape(bar.LeftOver)} left";

    public static string TooLong(CutPiece piece, Length stock, LengthUnits units) =>
        $"The piece '{piece.Name}' is {piece.Length.In(units)} long, longer than the stock of {Stock(stock, units)}; buy longer stock or join two pieces.";

    // As shops sell it: "10 ft", "3 m".
    private static string Stock(Length stock, LengthUnits units)
    {
        var (feet, metres) = (IsWhole(stock.Inches / 12), IsWhole(10 * stock.Meters));
        var metric = metres ? Text($"{stock.Meters:0.#} m") : Wording.Millimetres(stock);
        var imperial = feet ? Text($"{stock.Inches / 12:0} ft") : InchFraction.Describe(stock);
        return (units, feet, metres) switch
        {
            (LengthUnits.Millimetres, _, _) or (LengthUnits.Both, false, true) => metric,
            (LengthUnits.Inches, _, _) or (LengthUnits.Both, true, _) => imperial,
            _ => $"{metric} ({imperial})",
        };
    }

    private static bool IsWhole(double value) => value >= 1 && Math.Abs(value - Math.Round(value)) < 1e-6;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
