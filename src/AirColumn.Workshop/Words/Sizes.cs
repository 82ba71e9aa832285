using System.Globalization;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>Lengths and diameters in the units that were asked for.</summary>
internal sealed class Sizes(LengthUnits units)
{
    /// <summary>A length as read from a tape: "14.2 mm (9/16 in)".</summary>
    public string Tape(Length length) =>
        units switch
        {
            LengthUnits.Millimetres => Wording.Millimetres(length),
            LengthUnits.Inches => InchFraction.Describe(length),
            _ => $"{Wording.Millimetres(length)} ({InchFraction.Describe(length)})",
        };

    /// <summary>A length as shops sell it: "10 ft", "3 m", any other as a tape measures it.</summary>
    public string Sold(Length length)
    {
        var (feet, metres) = (IsWhole(length.Inches / 12), IsWhole(10 * length.Meters));
        var metric = metres ? Text($"{length.Meters:0.#} m") : Wording.Millimetres(length);
        var imperial = feet ? Text($"{length.Inches / 12:0} ft") : InchFraction.Describe(length);
        return (units, feet, metres) switch
        {
            (LengthUnits.Millimetres, _, _) or (LengthUnits.Both, false, true) => metric,
            (LengthUnits.Inches, _, _) or (LengthUnits.Both, true, _) => imperial,
            _ => $"{metric} ({imperial})",
        };
    }

    /// <summary>From one whole number of millimetres to another: "25 to 40 mm (1 to 1 9/16 in)".</summary>
    public string Between(int from, int to)
    {
        var metric = Text($"{from} to {to} mm");
        var (least, most) = (
            InchFraction.Nearest(Length.FromMillimeters(from)).ToString(),
            InchFraction.Nearest(Length.FromMillimeters(to))
        );
        var imperial = $"{least[..^" in".Length]} to {most}";
        return units switch
        {
            LengthUnits.Millimetres => metric,
            LengthUnits.Inches => imperial,
            _ => $"{metric} ({imperial})",
        };
    }

    private static bool IsWhole(double value) => value >= 1 && Math.Abs(value - Math.Round(value)) < 1e-6;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>A length as read from a caliper: "2.4 mm (0.094 in)".</summary>
    public string Caliper(Length length) =>
        units switch
        {
            LengthUnits.Millimetres => string.Create(
                CultureInfo.InvariantCulture,
                $"{length.Millimeters:0.##} mm"
            ),
            LengthUnits.Inches => string.Create(CultureInfo.InvariantCulture, $"{length.Inches:0.000} in"),
            _ => Wording.Size(length),
        };

    /// <summary>What a caliper measures, in one unit where there is little room: "72 mm inside".</summary>
    public string Narrow(Length length) => SheetWords.Inside(Gap(length));

    /// <summary>A small distance in one unit.</summary>
    public string Gap(Length length) =>
        units == LengthUnits.Inches
            ? string.Create(CultureInfo.InvariantCulture, $"{length.Inches:0.00} in")
            : Wording.Millimetres(length);
}
