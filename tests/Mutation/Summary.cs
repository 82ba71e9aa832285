// Counts the mutants of a report by folder, and lists those that live:
//     dotnet run tests/Mutation/Summary.cs -- artifacts/mutation/pitches/reports/mutation.json
using System.Globalization;
using System.Text.Json.Nodes;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

var report = JsonNode.Parse(File.ReadAllText(args[0]))!;
var mutants = (
    from file in report["files"]!.AsObject()
    let source = file.Value!["source"]!.GetValue<string>().Split('\n')
    from mutant in file.Value["mutants"]!.AsArray()
    let status = mutant["status"]!.GetValue<string>()
    where status != "Ignored"
    select new Mutant(
        Path.GetRelativePath(report["projectRoot"]!.GetValue<string>(), file.Key),
        status,
        Place(mutant["location"]!["start"]!),
        Place(mutant["location"]!["end"]!),
        mutant["mutatorName"]!.GetValue<string>(),
        mutant["replacement"]!.GetValue<string>(),
        source
    )
).ToList();

// The tool's score: what no test covers counts as alive, what does not compile does not count.
Console.WriteLine("| folder | mutants | killed | timeout | survived | no coverage | score |");
Console.WriteLine("|---|--:|--:|--:|--:|--:|--:|");
foreach (var folder in mutants.GroupBy(mutant => Path.GetDirectoryName(mutant.File)!).OrderBy(g => g.Key))
{
    Console.WriteLine(Row(folder.Key, folder));
}

Console.WriteLine(Row("all", mutants));
Console.WriteLine();
foreach (
    var mutant in mutants
        .Where(mutant => mutant.Status is "Survived" or "NoCoverage")
        .OrderBy(mutant => mutant.File)
        .ThenBy(mutant => mutant.Start)
)
{
    Console.WriteLine(
        $"{mutant.File}:{mutant.Start.Line} {mutant.Status}, {mutant.Kind}: {mutant.Before} → {OneLine(mutant.After)}"
    );
}

static string Row(string name, IEnumerable<Mutant> mutants)
{
    var of = mutants.CountBy(mutant => mutant.Status).ToDictionary();
    var (killed, late) = (of.GetValueOrDefault("Killed"), of.GetValueOrDefault("Timeout"));
    var (alive, unseen) = (of.GetValueOrDefault("Survived"), of.GetValueOrDefault("NoCoverage"));
    var all = killed + late + alive + unseen;
    return $"| {name} | {all} | {killed} | {late} | {alive} | {unseen} | {100.0 * (killed + late) / all:F1} % |";
}

static (int Line, int Column) Place(JsonNode node) =>
    (node["line"]!.GetValue<int>(), node["column"]!.GetValue<int>());

static string OneLine(string text) =>
    string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

internal sealed record Mutant(
    string File,
    string Status,
    (int Line, int Column) Start,
    (int Line, int Column) End,
    string Kind,
    string After,
    string[] Source
)
{
    public string Before =>
        Start.Line == End.Line
            ? Source[Start.Line - 1][(Start.Column - 1)..(End.Column - 1)]
            : Source[Start.Line - 1][(Start.Column - 1)..].TrimEnd() + " …";
}
