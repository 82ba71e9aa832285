using System.Globalization;
using AirColumn;

namespace Samples.Tests;

/// <summary>A tube that a maker might put together, by its number: every other one is a pipe between two fittings at most, as the verb plan knows it.</summary>
internal sealed class RandomTube
{
    private static readonly (string Name, double Inside)[] Pipes =
    [
        ("pvc-40 1-1/4", 34.65),
        ("pvc-40 1-1/2", 40.39),
        ("pvc-40 2", 52.1),
    ];

    private readonly Random random;

    public RandomTube(int number)
    {
        (Number, random) = (number, new Random(number));
        Note = Pitch.FromNumber(random.Next(32, 46));
        if (number % 2 == 0)
        {
            var (mouth, end) = (random.Next(3) > 0, random.Next(3) > 0);
            var (inside, wall) = (Size(28, 55), Size(1.5, 4));
            var (m, e) = ((Size(8, 60), Size(26, 34)), (Size(10, 80), Size(40, 70)));
            PlanOptions =
            [
                .. (string[])["--pipe-diameter", inside, "--wall", wall],
                .. mouth ? ["--mouth-adds", m.Item1, "--mouth-diameter", m.Item2] : Array.Empty<string>(),
                .. end ? ["--end-adds", e.Item1, "--end-diameter", e.Item2] : Array.Empty<string>(),
            ];
            Json = File(
                wall,
                mouth ? Fitting("mouth", m) : "",
                $$"""{ "part": "pipe", "name": "open one", "inside": "{{inside}}", "outside": "62 mm", "length": "open" }""",
                end ? Fitting("end", e) : ""
            );
            return;
        }

        var pipe = Pipes[random.Next(Pipes.Length)];
        Json = File(
            null,
            random.Next(2) == 0
                ? $$"""{ "part": "insert", "name": "mouth", "inside": "{{Size(26, 30)}}", "outside": "{{Text(pipe.Inside - 1)}}", "inserted": "{{Size(15, 40)}}", "protrudes": "{{Size(5, 20)}}" }"""
                : "",
            $$"""{ "part": "pipe", "name": "open one", "stock": "{{pipe.Name}}", "length": "open" }""",
            random.Next(3) switch
            {
                0 =>
                    $$"""{ "part": "bell", "name": "bell", "inside": "{{Text(pipe.Inside * 1.3)}}", "length": "{{Size(50, 90)}}" }""",
                1 =>
                    $$"""
                { "part": "coupling", "name": "sleeve", "before": "{{pipe.Name}}", "after": "{{pipe.Name}}", "inside": "{{Text(
                    pipe.Inside
                )}}", "between": "{{Size(2, 6)}}" },
                { "part": "pipe", "name": "end pipe", "stock": "{{pipe.Name}}", "length": "{{Size(
                    120,
                    300
                )}}" }
                """,
                _ => "",
            }
        );
    }

    public int Number { get; }

    public Pitch Note { get; }

    public string Json { get; }

    /// <summary>The same tube in options of the verb plan; null where those cannot say it.</summary>
    public string[]? PlanOptions { get; }

    private static string File(string? wall, params string[] parts) =>
        $$"""{ "tube": 1, {{(wall is null ? "" : $"\"wall\": \"{wall}\", ")}}"parts": [ {{string.Join(",\n", parts.Where(part => part.Length > 0))}} ] }""";

    private static string Fitting(string name, (string Adds, string Inside) size) =>
        $$"""{ "part": "fitting", "name": "{{name}}", "adds": "{{size.Adds}}", "inside": "{{size.Inside}}" }""";

    private string Size(double from, double to) => Text(from + (to - from) * random.NextDouble());

    private static string Text(double millimetres) =>
        string.Create(CultureInfo.InvariantCulture, $"{millimetres:0.0} mm");
}
