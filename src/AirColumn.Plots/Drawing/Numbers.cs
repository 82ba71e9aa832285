using System.Globalization;

namespace AirColumn.Plots.Drawing;

/// <summary>Numbers as text, in the invariant culture, with a true minus sign.</summary>
internal static class Numbers
{
    /// <summary>A number with as many significant digits as asked for at most.</summary>
    public static string Plain(double value, int digits = 6)
    {
        if (value == 0)
        {
            return "0";
        }

        var size = Math.Abs(value);
        var text = size is >= 1e-4 and < 1e7
            ? Rounded(value, digits).ToString("0.##########", CultureInfo.InvariantCulture)
            : value.ToString(
                "0." + new string('#', Math.Max(digits - 1, 1)) + "e0",
                CultureInfo.InvariantCulture
            );
        return text.Replace('-', '−');
    }

    /// <summary>A number with a fixed count of decimals.</summary>
    public static string Fixed(double value, int decimals) =>
        value
            .ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
            .Replace('-', '−');

    /// <summary>A number of three digits with its unit, thousands and millions in the unit.</summary>
    public static string WithUnit(double value, string unit)
    {
        var size = Math.Abs(value);
        return size switch
        {
            >= 1e6 and < 1e10 => $"{Plain(value / 1e6, 3)} M{unit}",
            >= 1e3 and < 1e6 => $"{Plain(value / 1e3, 3)} k{unit}",
            _ => $"{Plain(value, 3)} {unit}",
        };
    }

    /// <summary>Cents with their sign and one decimal.</summary>
    public static string Cents(double value)
    {
        var rounded = Math.Round(value, 1);
        return (rounded < 0 ? "" : "+") + Fixed(rounded == 0 ? 0 : rounded, 1);
    }

    private static double Rounded(double value, int digits)
    {
        var decimals = Math.Clamp(digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 10);
        return Math.Round(value, decimals);
    }
}
