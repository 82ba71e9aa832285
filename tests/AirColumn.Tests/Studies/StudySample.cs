using System.Text.Json.Nodes;
using AirColumn.Studies;

namespace AirColumn.Tests.Studies;

/// <summary>Study documents for tests.</summary>
internal static class StudySample
{
    /// <summary>Every kind of values, drawn by points of Sobol'.</summary>
    public const string Text = """
        {
          "study": 1,
          "name": "a tube",
          "column": {
            "column": 2,
            "air": { "temperature": "20 °C" },
            "wavefronts": "curved",
            "sections": [
              { "shape": "cylinder", "diameter": "40 mm", "length": "500 mm" },
              { "shape": "cone", "from": "40 mm", "to": "60 mm", "length": "100 mm" }
            ],
            "farEnd": { "kind": "open", "wall": "2 mm" }
          },
          "parameters": [
            { "parameter": "length of section 1", "steps": { "from": "500 mm", "to": "600 mm", "count": 3 } },
            { "parameter": "length of section 2", "values": ["100 mm", "4 in"] },
            { "parameter": "outlet diameter of section 2", "uniform": { "from": "50 mm", "to": "70 mm" } },
            { "parameter": "wall at the far end", "lognormal": { "median": "2 mm", "factor": 1.2 } },
            { "parameter": "temperature of the air", "normal": { "mean": "20 °C", "deviation": "2 K" } }
          ],
          "points": { "by": "sobol", "count": 7, "seed": 3 },
          "answers": {
            "resonances": 4, "intervals": true, "qualityFactors": true, "magnitudes": true, "gradients": true, "indicators": true,
            "impedance": ["100 Hz", "250 Hz"]
          }
        }
        """;

    /// <summary>The study.</summary>
    public static Study Study { get; } = AirColumn.Studies.Study.Parse(Text);

    /// <summary>It with something else in one place.</summary>
    public static string With(Action<JsonNode> change)
    {
        var json = JsonNode.Parse(Text)!;
        change(json);
        return json.ToJsonString();
    }
}
