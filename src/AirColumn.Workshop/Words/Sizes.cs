using System.Globalization;
using UnitsNet;

namespace AirColumn.Workshop.Words;

/// <summary>Lengths and diameters in the units that were asked for.</summary>
internal sealed class Sizes(LengthUnits units)
{
    /// <summary>What a tape measures: "14.2 mm (9/16 in)".</summary>
    public string Tape(Length length) =>
        units switch
        {
            LengthUnits.Millimetres => Wording.Millimetres(length),
            LengthUnits.Inches => InchFraction.Describe(length),
            _ => $"{Wording.Millimetres(length)} ({InchFraction.Describe(length)})",
        };

    /// <summary>What a caliper measures: "2.4 mm (0.094 in)".</summary>
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
