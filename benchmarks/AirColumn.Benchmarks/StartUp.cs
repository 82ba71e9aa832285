using System.Diagnostics;
using System.Runtime.InteropServices;

namespace AirColumn.Benchmarks;

/// <summary>What ColumnTool takes from the start of its process to its answer: as it is built, and compiled ahead for this machine.</summary>
internal static class StartUp
{
    private const int Runs = 21;

    private const string Document = """
        { "column": 1, "air": { "temperature": "20 °C", "humidity": "50 %" },
          "sections": [ { "shape": "cylinder", "diameter": "31 mm", "length": "30 mm" },
                        { "shape": "cylinder", "diameter": "50 mm", "length": "980 mm" },
                        { "shape": "cone", "from": "50 mm", "to": "75 mm", "length": "120 mm" } ],
          "farEnd": { "kind": "open", "wall": "3 mm" } }
        """;

    /// <summary>Medians in milliseconds; null where the program could not be published so.</summary>
    public static (double? AsBuilt, double? Ahead) Milliseconds(string top)
    {
        var folder = Directory.CreateTempSubdirectory("start-up-");
        try
        {
            var document = Path.Combine(folder.FullName, "tube.json");
            File.WriteAllText(document, Document);
            var project = Path.Combine(top, "samples", "ColumnTool");
            var (built, ahead) = (
                Path.Combine(folder.FullName, "built"),
                Path.Combine(folder.FullName, "ahead")
            );
            var isBuilt = Succeeds("dotnet", "publish", project, "-c", "Release", "-o", built);
            // The compiler refuses some machines by name; the set that the most have is next.
            var isAhead = PublishesAhead("native") || PublishesAhead("x86-64-v3");
            return (
                isBuilt ? Median("dotnet", Path.Combine(built, "ColumnTool.dll"), document) : null,
                isAhead ? Median(Path.Combine(ahead, "ColumnTool"), null, document) : null
            );

            bool PublishesAhead(string instructions) =>
                Succeeds(
                    "dotnet",
                    "publish",
                    project,
                    "-c",
                    "Release",
                    "-r",
                    RuntimeInformation.RuntimeIdentifier,
                    "-p:PublishAot=true",
                    $"-p:IlcInstructionSet={instructions}",
                    "-o",
                    ahead
                );
        }
        finally
        {
            folder.Delete(true);
        }
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
            if (!Succeeds(program, arguments))
            {
                throw new InvalidOperationException($"{program} did not answer.");
            }

            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        times.Sort();
        return times[Runs / 2];
    }

    private static bool Succeeds(string program, params string[] arguments)
    {
        using var process = Process.Start(
            new ProcessStartInfo(program, arguments)
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        var error = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        _ = error.GetAwaiter().GetResult();
        return process.ExitCode == 0;
    }
}
