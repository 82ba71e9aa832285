using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>Pipe lengths as a maker can cut them: whole units, never none.</summary>
internal static class Rounded
{
    public static Length Shortest => Length.FromMillimeters(1);

    public static Length ToMillimetre(Length length) =>
        Length.FromMillimeters(Math.Max(1, Math.Round(length.Millimeters, MidpointRounding.AwayFromZero)));

    // Nine decimals decide, so that a sum that should be whole is not rounded up by its last digit.
    public static Length UpToMillimetre(Length length) =>
        Length.FromMillimeters(Math.Max(1, Math.Ceiling(Math.Round(length.Millimeters, 9))));

    public static Length UpToTenth(Length length) =>
        Length.FromMillimeters(Math.Max(1, Math.Ceiling(Math.Round(10 * length.Millimeters, 9))) / 10);

    public static Length ToSixteenth(Length length) =>
        new InchFraction(Math.Max(1, InchFraction.Nearest(length).Sixteenths)).Length;
}
