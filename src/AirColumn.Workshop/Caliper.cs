using System.Runtime.CompilerServices;
using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>Checked entry of what is measured at the bench; kept in millimetres, so that equal sizes are equal values.</summary>
internal static class Caliper
{
    private const double SmallestDiameter = 5;
    private const double LargestDiameter = 500;
    private const double LargestOutside = 600;
    private const double ShortestLength = 0.1;
    private const double LongestLength = 10_000;
    private const double ThickestWall = 100;

    public static Length Diameter(
        Length diameter,
        [CallerArgumentExpression(nameof(diameter))] string parameter = ""
    ) => InRange(diameter, SmallestDiameter, LargestDiameter, parameter);

    public static Length AxialLength(
        Length length,
        [CallerArgumentExpression(nameof(length))] string parameter = ""
    ) => InRange(length, ShortestLength, LongestLength, parameter);

    public static Length Wall(Length wall, [CallerArgumentExpression(nameof(wall))] string parameter = "") =>
        InRange(wall, 0, ThickestWall, parameter);

    public static Length Tolerance(
        Length tolerance,
        [CallerArgumentExpression(nameof(tolerance))] string parameter = ""
    ) => InRange(tolerance, 0, ThickestWall, parameter);

    /// <summary>An outside diameter around an inside one.</summary>
    public static Length Outside(
        Length outside,
        Length inside,
        string part,
        [CallerArgumentExpression(nameof(outside))] string parameter = ""
    )
    {
        var checkedOutside = InRange(outside, SmallestDiameter, LargestOutside, parameter);
        return checkedOutside > inside
            ? checkedOutside
            : throw new ArgumentException(
                $"'{part}' is {Wording.Size(inside)} inside and {Wording.Size(checkedOutside)} outside; the outside diameter must be the larger. "
                    + "Measure both diameters with a caliper.",
                parameter
            );
    }

    /// <summary>A length that may be none.</summary>
    public static Length LengthOrNone(
        Length length,
        [CallerArgumentExpression(nameof(length))] string parameter = ""
    ) => InRange(length, 0, LongestLength, parameter);

    private static Length InRange(Length length, double min, double max, string parameter) =>
        Length.FromMillimeters(Require.InRange(length.Millimeters, min, max, "mm", parameter));
}
