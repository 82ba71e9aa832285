using System.Globalization;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace AirColumn;

/// <summary>Checked entry and exit of lengths and diameters: quantities outside, metres inside.</summary>
internal static class Dimension
{
    private const double SmallestDiameter = 1e-5;
    private const double LargestDiameter = 10;
    private const double ShortestLength = 1e-6;
    private const double LongestLength = 1000;

    /// <summary>A length along the axis in metres, 1 µm to 1 km.</summary>
    public static double AxialLength(
        Length length,
        [CallerArgumentExpression(nameof(length))] string parameter = ""
    ) => InRange(length, ShortestLength, LongestLength, parameter);

    /// <summary>A radius in metres from an inside diameter, 0.01 mm to 10 m.</summary>
    public static double RadiusOf(
        Length diameter,
        [CallerArgumentExpression(nameof(diameter))] string parameter = ""
    ) => InRange(diameter, SmallestDiameter, LargestDiameter, parameter) / 2;

    /// <summary>The same for one diameter of several in an argument, called by name in the message.</summary>
    public static double RadiusOf(Length diameter, string name, string parameter)
    {
        var (mm, least, most) = (diameter.Millimeters, SmallestDiameter * 1000, LargestDiameter * 1000);
        return mm >= least && mm <= most
            ? diameter.Meters / 2
            : throw new ArgumentOutOfRangeException(
                parameter,
                mm,
                $"{name} is {Require.Show(mm, "mm")}; allowed is {Require.Show(least, "mm")} to {Require.Show(most, "mm")}."
            );
    }

    /// <summary>A thickness or a correction in metres, 0 to 10 m.</summary>
    public static double ZeroOrMore(
        Length length,
        [CallerArgumentExpression(nameof(length))] string parameter = ""
    ) => InRange(length, 0, LargestDiameter, parameter);

    /// <summary>A length shown in millimetres, the unit in which bores are drawn.</summary>
    public static Length InMillimeters(double metres) => Length.FromMillimeters(metres * 1000);

    /// <summary>A length in millimetres, invariant culture, without the stray last digits of a conversion.</summary>
    public static string Text(Length length) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Round(length.Millimeters, 6)} mm");

    // Messages in millimetres: nobody measures a bore in metres.
    private static double InRange(Length length, double min, double max, string parameter)
    {
        Require.InRange(length.Millimeters, min * 1000, max * 1000, "mm", parameter);
        return length.Meters;
    }
}
