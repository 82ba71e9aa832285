// Writes a configuration that mutates a random part of the large folders of Acoustics, where all of it would take a day:
//     dotnet run tests/Mutation/Sample.cs -- 0.04 1 > tests/Mutation/sample.json
// The share of the text, then a seed. Windows of some lines are drawn, so that what is near each other is drawn together.
using System.Globalization;
using System.Text.Json.Nodes;

const int Window = 400; // characters

var share = double.Parse(args[0], CultureInfo.InvariantCulture);
var random = new Random(int.Parse(args[1], CultureInfo.InvariantCulture));
var folder = Path.Combine("src", "AirColumn", "Acoustics");
var done = new[] { "Losses", "Junctions", "Elements", "Interpolation" };
var copies = new[] { "WaveKernel128.cs", "WaveKernel256.cs", "WaveKernel512.cs" };
var mutate = new List<string>();
foreach (
    var file in Directory
        .EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
        .Order(StringComparer.Ordinal)
        .Where(file => !done.Contains(Path.GetFileName(Path.GetDirectoryName(file))))
        .Where(file => !copies.Contains(Path.GetFileName(file)))
)
{
    var length = File.ReadAllText(file).Length;
    var windows = "";
    for (var start = 0; start < length; start += Window)
    {
        windows += random.NextDouble() < share ? $"{{{start}..{Math.Min(start + Window, length)}}}" : "";
    }

    if (windows.Length > 0)
    {
        mutate.Add(
            $"**/{Path.GetRelativePath(Path.Combine("src", "AirColumn"), file).Replace('\\', '/')}{windows}"
        );
    }
}

// The rest as for the folders that are mutated whole, the tests of the modes with them.
var configuration = JsonNode.Parse(File.ReadAllText(Path.Combine("tests", "Mutation", "columns.json")))!;
var settings = configuration["stryker-config"]!;
settings["mutate"] = new JsonArray([.. mutate.Select(each => JsonValue.Create(each))]);
settings["test-case-filter"] = settings["test-case-filter"]!
    .GetValue<string>()
    .Replace("&FullyQualifiedName!~.Multimodal.", "", StringComparison.Ordinal);
Console.WriteLine(configuration.ToJsonString(new() { WriteIndented = true }));
