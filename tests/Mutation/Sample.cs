// Writes a configuration that mutates a random part of the large folders of Acoustics, where all of it would take a day:
//     dotnet run tests/Mutation/Sample.cs -- 0.04 1 > tests/Mutation/sample.json
// The share of the text, then a seed. Windows of some lines are drawn, so that what is near each other is drawn together.
using System.Globalization;
using System.Text.Json.Nodes;

const int Window = 400; // characters

if (
    args.Length != 2
    || !double.TryParse(args[0], CultureInfo.InvariantCulture, out var share)
    || share is not (> 0 and <= 1)
    || !int.TryParse(args[1], CultureInfo.InvariantCulture, out var seed)
)
{
    Console.Error.WriteLine("Give a share above 0, up to 1, and a whole number as seed: 0.04 1");
    return 2;
}

var random = new Random(seed);
var folder = Path.Combine("src", "AirColumn", "Acoustics");
var done = new[] { "Losses", "Junctions", "Line", "Interpolation" };
var mutate = new List<string>();
foreach (
    var file in Directory
        .EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
        .Order(StringComparer.Ordinal)
        .Where(file => !done.Contains(Path.GetFileName(Path.GetDirectoryName(file))))
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

// The rest as for the folders that are mutated whole.
var configuration = JsonNode.Parse(File.ReadAllText(Path.Combine("tests", "Mutation", "columns.json")))!;
configuration["stryker-config"]!["mutate"] = new JsonArray([
    .. mutate.Select(each => JsonValue.Create(each)),
]);
Console.WriteLine(configuration.ToJsonString(new() { WriteIndented = true }));
return 0;
