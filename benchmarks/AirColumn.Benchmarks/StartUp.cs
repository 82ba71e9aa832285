using System.Diagnostics;

namespace AirColumn.Benchmarks;

/// <summary>What ColumnTool takes from the start of its process to its answer: as it is built, and compiled ahead for this machine.</summary>
internal static class StartUp
{
    private const int Runs = 21;

    /// <summary>A stepped tube.</summary>
    internal const string Document = """
        { "column": 1, "air": { "temperature": "20 °C", "humidity": "50 %" },
          "sections": [ { "shape": "cylinder", "diameter": "31 mm", "length": "30 mm" },
                        { "shape": "cylinder", "diameter": "50 mm", "length": "980 mm" },
                        { "shape": "cone", "from": "50 mm", "to": "75 mm", "length": "120 mm" } ],
          "farEnd": { "kind": "open", "wall": "3 mm" } }
        """;

    /// <summary>Medians in milliseconds; null where the program could not be published so.</summary>
    public static (double? AsBuilt, double? Ahead) Milliseconds(PublishedTool tool)
    {
        var document = Path.Combine(tool.Folder, "tube.json");
        File.WriteAllText(document, Document);
        return (
            tool.Built is { } built ? Median("dotnet", built, document) : null,
            tool.Ahead is { } ahead ? Median(ahead, null, document) : null
        );
    }

    private static double Median(string program, string? library, string document)
    {
        string[] arguments =
        [
            .. library is null ? [] : new[] { library },
            "resonances",
            document,
            "--count",
            "8",
        ];
        var times = new List<double>();
        for (var i = 0; i < Runs; i++)
        {
            var start = Stopwatch.GetTimestamp();
            if (!PublishedTool.Succeeds(program, arguments))
            {
                throw new InvalidOperationException($"{program} did not answer.");
            }

            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        times.Sort();
        return times[Runs / 2];
    }
}
