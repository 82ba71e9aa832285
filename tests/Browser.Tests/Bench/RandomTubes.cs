using System.Globalization;

namespace Browser.Tests.Bench;

/// <summary>Tubes that a maker might put together, by chance: with a mouthpiece, a coupling, an elbow, a bell, finger holes or none of them.</summary>
/// <param name="seed">The same tubes for the same seed.</param>
internal sealed class RandomTubes(int seed)
{
    private readonly Random random = new(seed);
    private int count;

    /// <summary>The parts file of the next one, which is called "tube" and its number.</summary>
    public string Next()
    {
        var parts = new List<string>();
        if (Is(2))
        {
            parts.Add(
                $$"""{ "part": "insert", "name": "mouthpiece", "inside": {{Size(26, 32)}}, "outside": "40 mm", "inserted": {{Size(15, 30)}}, "protrudes": {{Size(5, 20)}} }"""
            );
        }

        parts.Add(
            $$"""{ "part": "pipe", "name": "main", "stock": "pvc-40 1-1/2", "inside": {{Size(40.1, 40.8)}}, "length": "open" }"""
        );
        if (Is(2))
        {
            parts.Add(Hole("first", Size(200, 350), "lips", "closed"));
            parts.Add(Hole("second", Size(90, 160), "end", Is(3) ? "open" : "closed"));
        }

        if (Is(2))
        {
            parts.Add(
                Is(3)
                    ? $$"""{ "part": "elbow", "name": "elbow", "before": "pvc-40 1-1/2", "after": "pvc-40 1-1/2", "gap": "1 mm", "inside": "41 mm", "radius": {{Size(35, 60)}}, "angle": 90 }, { "part": "pipe", "name": "end", "stock": "pvc-40 1-1/2", "length": {{Size(200, 300)}} }"""
                    : $$"""{ "part": "coupling", "name": "reducer", "before": "pvc-40 1-1/2", "after": "pvc-40 2", "gap": "1 mm", "inside": "41 mm", "between": {{Size(5, 20)}} }, { "part": "pipe", "name": "end", "stock": "pvc-40 2", "length": {{Size(250, 300)}} }"""
            );
            if (Is(2))
            {
                parts.Add(Hole("third", Size(60, 200), "lips", "closed"));
            }
        }

        if (Is(2))
        {
            parts.Add(
                $$"""{ "part": "bell", "name": "bell", "inside": {{Size(55, 80)}}, "length": {{Size(20, 40)}} }"""
            );
        }

        return $$"""{ "tube": 1, "name": "tube {{count++}}", "parts": [ {{string.Join(",\n", parts)}} ] }""";
    }

    private bool Is(int oneIn) => random.Next(oneIn) == 0;

    private string Hole(string name, string at, string from, string drone) =>
        $$"""{ "part": "hole", "name": "{{name}}", "diameter": {{Size(5, 11)}}, "at": {{at}}, "from": "{{from}}", "drone": "{{drone}}" }""";

    private string Size(double least, double most) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"\"{least + (most - least) * random.NextDouble():0.0} mm\""
        );
}
