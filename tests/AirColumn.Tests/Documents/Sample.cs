namespace AirColumn.Tests.Documents;

/// <summary>Documents to change and to read.</summary>
internal static class Sample
{
    /// <summary>Everything that version 1 can say about a column and the engine can compute.</summary>
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

    /// <summary>The least that is a document.</summary>
    public const string Least = """
        {"column":1,"sections":[{"shape":"cylinder","diameter":"30 mm","length":"25 mm"}],"farEnd":{"kind":"closed"}}
        """;

    /// <summary>The constants of a gas given directly.</summary>
    public const string Constants = """
        { "speedOfSound": "343.37 m/s", "density": "1.2045 kg/m³", "viscosity": "1.814e-5 Pa·s",
          "conductivity": "0.0258 W/(m·K)", "heatCapacity": "1006 J/(kg·K)", "heatCapacityRatio": 1.4019 }
        """;

    /// <summary>A document with one piece of its text replaced.</summary>
    public static string With(string old, string replacement, string document = Full)
    {
        Assert.Contains(old, document, StringComparison.Ordinal);
        return document.Replace(old, replacement, StringComparison.Ordinal);
    }
}
