using System.Reflection;
using AirColumn;
using AirColumn.Workshop;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using UnitsNet;

namespace Browser.Tests;

/// <summary>Build sheets to look at.</summary>
internal static class Sheet
{
    private static readonly Dictionary<string, Lazy<string>> Pages = new()
    {
        ["workshop"] = new(() => Of(File.ReadAllText(Shown), "D2", LengthUnits.Both)),
        ["inches"] = new(() => Of(File.ReadAllText(Shown), "C2", LengthUnits.Inches)),
        ["folded"] = new(() => Of(Folded, "C2", LengthUnits.Both)),
        ["elbows"] = new(() => Of(Elbows, "E2", LengthUnits.Both)),
        ["metal"] = new(() => Of(Metal, "D2", LengthUnits.Millimetres)),
    };

    // A name that does not break, a half turn, a bell, an insert that stands in flush.
    private const string Folded = """
        { "tube": 1, "name": "Tube_of_Žofie_with_a_name_that_has_no_place_to_break_anywhere_in_it", "wall": "3 mm", "parts": [
          { "part": "insert", "name": "mouthpiece", "inside": "30 mm", "outside": "40 mm", "inserted": "25 mm" },
          { "part": "pipe", "name": "leg_with_a_name_that_has_no_place_to_break_either", "stock": "pvc-40 1-1/2", "length": "open" },
          { "part": "bend", "name": "fold", "radius": "140 mm", "angle": 180, "straightAfter": "250 mm" },
          { "part": "coupling", "name": "coupler", "before": "pvc-40 1-1/2", "after": "pvc-40 1-1/2", "gap": "1 mm", "inside": "40 mm", "between": "14 mm" },
          { "part": "pipe", "name": "end pipe", "stock": "pvc-40 1-1/2", "length": "200 mm" },
          { "part": "bell", "name": "bell", "inside": "55 mm", "length": "60 mm" } ] }
        """;

    private const string Elbows = """
        { "tube": 1, "name": "Staircase", "parts": [
          { "part": "pipe", "name": "first", "stock": "pvc-40 1-1/4", "length": "300 mm" },
          { "part": "elbow", "name": "elbow", "before": "pvc-40 1-1/4", "after": "pvc-40 1-1/4", "inside": "34 mm", "radius": "30 mm", "angle": 90 },
          { "part": "pipe", "name": "second", "stock": "pvc-40 1-1/4", "length": "open" },
          { "part": "elbow", "name": "elbow", "before": "pvc-40 1-1/4", "after": "pvc-40 1-1/4", "inside": "34 mm", "radius": "30 mm", "angle": 90 },
          { "part": "pipe", "name": "third", "stock": "pvc-40 1-1/4", "length": "200 mm" },
          { "part": "fitting", "name": "rim", "adds": "22.5 mm", "inside": "35 mm" } ] }
        """;

    private const string Metal = """
        { "tube": 1, "parts": [
          { "part": "pipe", "name": "copper pipe", "stock": "copper-l 1-1/2", "length": "open" },
          { "part": "insert", "name": "end ring", "inside": "30 mm", "outside": "38 mm", "inserted": "20 mm", "protrudes": "5.5 mm" } ] }
        """;

    /// <summary>The repository.</summary>
    public static string Top { get; } =
        typeof(Sheet)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(data => data.Key == "Top")
            .Value!;

    public static IEnumerable<string> Names => Pages.Keys;

    private static string Shown => Path.Combine(Top, "samples", "DroneTube", "workshop-tube.json");

    /// <summary>A sheet by its name.</summary>
    public static string Html(string name) => Pages[name].Value;

    private static string Of(string parts, string note, LengthUnits units)
    {
        var file = PartsFile.Read(parts, Catalogue.Standard);
        var build = TubeBuilder.Plan(
            file.Assembly,
            Pitch.Parse(note),
            Tuning.Concert,
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
        );
        Assert.True(build.IsSolved, build.Explanation);
        return BuildSheet.Html(build, BuildSheet.Title(file.Name, build.Note), units);
    }
}
