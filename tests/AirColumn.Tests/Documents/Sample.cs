using System.Text.RegularExpressions;

namespace AirColumn.Tests.Documents;

/// <summary>Documents to change and to read.</summary>
internal static class Sample
{
    /// <summary>What version 1 can say about a column.</summary>
    public const string Full = """
        {
          "column": 1,
          "name": "stepped tube",
          "air": { "temperature": "20 °C", "humidity": "50 %", "pressure": "101.325 kPa", "co2": "400 ppm" },
          "losses": "large-tube",
          "wavefronts": "plane",
          "blownEnd": "open",
          "correction": "8 mm",
          "sections": [
            { "shape": "cylinder", "diameter": "30 mm", "length": "25 mm" },
            { "shape": "cone", "from": "38 mm", "to": "70 mm", "length": "90 mm" },
            { "shape": "profile", "points": [["0 mm", "70 mm"], ["40 mm", "74 mm"], ["90 mm", "80 mm"]], "join": "straight" }
          ],
          "farEnd": { "kind": "open", "wall": "3 mm" }
        }
        """;

    /// <summary>What is new in version 2.</summary>
    public const string New = """
        {
          "$schema": "column-document.schema.json",
          "column": 2,
          "name": "flute with a bent foot",
          "x-shelf": { "row": 3 },
          "air": { "from": { "state": "breath" }, "to": { "temperature": "20 °C" }, "decay": "200 mm", "x-seen": true },
          "radiation": "dalmont2001",
          "tolerance": 1e-9,
          "blownEnd": "free",
          "blownWall": "2 mm",
          "sections": [
            { "shape": "cylinder", "diameter": "18 mm", "length": "300 mm", "x-wood": "maple" },
            { "shape": "bend", "diameter": "18 mm", "curvatureRadius": "60 mm", "angle": "90 °" },
            { "shape": "bend", "diameter": "18 mm", "curvatureRadius": "60 mm", "length": "40 mm" }
          ],
          "farEnd": { "kind": "open", "wall": "2 mm" },
          "holes": [
            { "name": "R1", "position": "230 mm", "diameter": "8 mm", "height": "3 mm" },
            { "position": "200 mm", "diameter": "7 mm", "height": "5 mm", "chimneyWall": "1 mm", "pad": { "diameter": "11 mm", "height": "2.5 mm" } }
          ],
          "branches": [
            {
              "name": "stub", "position": "60 mm",
              "sections": [{ "shape": "cone", "from": "6 mm", "to": "5 mm", "length": "30 mm" }],
              "farEnd": { "kind": "closed" },
              "branches": [
                { "position": "15 mm", "sections": [{ "shape": "cylinder", "diameter": "2 mm", "length": "4 mm" }], "farEnd": { "kind": "ideal" } }
              ]
            }
          ],
          "fingering": "ox",
          "fingerings": [{ "name": "G4", "holes": "x | x" }, { "name": "B4", "holes": "all open" }]
        }
        """;

    /// <summary>The least that is a document.</summary>
    public const string Least = """
        {"column":1,"sections":[{"shape":"cylinder","diameter":"30 mm","length":"25 mm"}],"farEnd":{"kind":"closed"}}
        """;

    /// <summary>The constants of a gas given directly.</summary>
    public const string Constants = """
        { "speedOfSound": "343.37 m/s", "density": "1.2045 kg/m³", "viscosity": "1.814e-5 Pa·s",
          "conductivity": "0.0258 W/(m·K)", "heatCapacity": "1006 J/(kg·K)", "heatCapacityRatio": 1.4019 }
        """;

    /// <summary>A document of version 1 as one of version 2.</summary>
    public static string Version2(string document) =>
        Regex.Replace(document, "\"column\": ?1", "\"column\": 2");

    /// <summary>A document with one piece of its text replaced.</summary>
    public static string With(string old, string replacement, string document = Full)
    {
        Assert.Contains(old, document, StringComparison.Ordinal);
        return document.Replace(old, replacement, StringComparison.Ordinal);
    }
}
