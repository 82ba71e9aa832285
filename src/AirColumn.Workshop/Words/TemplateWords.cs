using System.Globalization;
using AirColumn.Workshop.Tubes;

namespace AirColumn.Workshop.Words;

/// <summary>The words on templates, in English.</summary>
internal static class TemplateWords
{
    public const string Kind = "Template, full size";
    public const string Ruler =
        "Print at 100 %, not fitted to the page. Then measure this line: it must be 100 mm long (3 15/16 in). If it is not, do not use the page.";
    public const string CutTitle = "Line for a square cut";
    public const string HolesTitle = "Finger holes";
    public const string BendTitle = "Bend";
    public const string CutHere = "saw here";
    public const string Overlap = "goes under the other end";
    public const string ToTheEnd = "open end";
    public const string ToTheMouth = "to the mouth";
    public const string LipsEdge = "the pipe's end towards the lips";
    public const string OpenEdge = "the pipe's end towards the open end";
    public const string ToTheLips = "to the lips";
    public const string ToTheOpenEnd = "to the open end";
    private const string Join = "join";

    /// <summary>The letter at which pieces are joined.</summary>
    public static string JoinAt(int number, int count) => $"{Join} {(char)('A' + number % count)}";

    public static string NoTemplate(TubePart part) =>
        $"There is no template for {Named.The(part)}: there are templates for pipes, bends and finger holes.";

    public static string CutNote(string outside, string around) =>
        $"For a pipe {outside} outside, {around} around. Cut the strip out, wrap it round the pipe until the ends of the thick line meet, tape it, and saw along that line on the waste side.";

    public static string HolesNote(string outside, string edge) =>
        $"For a pipe {outside} outside. Cut the pieces out, join them at the letters, wrap them round the pipe with the edge marked '{edge}' at that end, and punch the middles. Drill small first, play, and open each hole up to its size: a wider hole is sharper.";

    public static string BendNote(string radius, string angle, string heated) =>
        $"Radius {radius} to the middle of the pipe, {angle} in all; the length to heat is {heated} along the middle. The pipe lies between the outer lines.";

    public static string Turned(int times, double degrees) =>
        times == 1
            ? ""
            : string.Create(
                CultureInfo.InvariantCulture,
                $" The page shows {degrees:0.#}° of the bend: lay the page on {times} times, end to end."
            );

    public static string Hole(string name, string diameter) => $"{name}: ⌀ {diameter}";
}
