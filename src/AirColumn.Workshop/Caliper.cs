using System.Runtime.CompilerServices;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>Checked entry of what is measured at the bench; kept in millimetres, so that equal sizes are equal values.</summary>
internal static class Caliper
{
    private const double SmallestDiameter = 5;
    private const double LargestDiameter = 500;
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

    private static Length InRange(Length length, double min, double max, string parameter) =>
        Length.FromMillimeters(Require.InRange(length.Millimeters, min, max, "mm", parameter));
}
