#!/usr/bin/env dotnet
// Puts a random choice of faults into the source of Workshop, Recordings, Plots and Design, builds it once with all of them, and switches them on
// one at a time: first on the tests that take less than a third of a second, then on the others. It changes the sources, so give it a new clone:
//     git clone . ../faults
//     dotnet run tests/Mutation/RandomFaults.cs -- ../faults 100 1
// How many, then a seed. A third number, such as 58, goes on with that fault, in a new clone of the same sources.
// A fault is an operator, a condition or a number that is another; words are left alone. The SDK must be 10.0.300 or later.
#:package Microsoft.CodeAnalysis.CSharp
#:property PublishAot=false
#:include RandomFaults/*.cs
using System.Collections.Concurrent;
using System.Globalization;

// Seconds of a test with all its cases that is tried first.
const double First = 0.3;
int[] numbers =
[
    .. args.Skip(1).Select(text => int.TryParse(text, CultureInfo.InvariantCulture, out var n) ? n : -1),
];
if (
    numbers is not [> 0, >= 0] and not [> 0, >= 0, > 0]
    || !Directory.Exists(Path.Combine(args[0], "src"))
    || File.Exists(Path.Combine(args[0], "src", "AirColumn.Workshop", Source.SwitchFile))
)
{
    Console.Error.WriteLine(
        "Give the folder of a new clone to put faults into, how many, a whole number as seed and, to go on, the first to try."
    );
    return 2;
}

var (count, seed, from) = (numbers[0], numbers[1], numbers.ElementAtOrDefault(2));
var clone = new Clone(Path.GetFullPath(args[0]));
Package[] packages =
[
    new("Workshop", "src/AirColumn.Workshop", "", "AirColumn.Workshop.Tests", "Run!=Long"),
    new(
        "Recordings",
        "src/AirColumn.Recordings",
        "",
        "AirColumn.Recordings.Tests",
        "Run!=Long&FullyQualifiedName!~CancellationTests"
    ),
    new("Plots", "src/AirColumn.Plots", "", "AirColumn.Plots.Tests", "Run!=Long"),
    new("Design", "src/AirColumn", "Design/", "AirColumn.Tests", "Run!=Long&FullyQualifiedName~.Design."),
];

Console.WriteLine("The build without faults …");
foreach (var package in packages)
{
    clone.Build(package);
}

var random = new Random(seed);
var sources = packages.Select(package => new Source(clone.Top, package)).ToArray();
Fault[] candidates = [.. sources.SelectMany(source => source.Candidates(random))];
random.Shuffle(candidates);
Fault[] faults = [.. candidates.Take(count).Select((fault, n) => fault with { Number = n + 1 })];
Console.WriteLine(
    $"{candidates.Length} places, of which {faults.Length} are drawn with the seed {seed}; what does not compile is drawn anew."
);
var next = faults.Length;
while (true)
{
    var bad = sources.SelectMany(source => source.Unfit(faults)).Select(fault => fault.Number).ToHashSet();
    if (bad.Count == 0)
    {
        break;
    }

    faults =
    [
        .. faults.Select(fault =>
            bad.Contains(fault.Number) ? candidates[next++] with { Number = fault.Number } : fault
        ),
    ];
}

foreach (var source in sources)
{
    source.Write(faults);
}

Console.WriteLine("The build with faults …");
foreach (var package in packages)
{
    clone.Build(package);
}

var seconds = packages.ToDictionary(package => package, clone.Times);
var found = new ConcurrentBag<(Fault Fault, Outcome Outcome)>();
Parallel.ForEach(
    Partitioner.Create(faults.Where(fault => fault.Number >= from), EnumerablePartitionerOptions.NoBuffering),
    new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
    fault =>
    {
        var parts = seconds[fault.Package].ToLookup(test => test.Value <= First, test => test.Key);
        var (outcome, test) = clone.Run(fault.Package, parts[true], fault);
        if (outcome == Outcome.Survived)
        {
            (outcome, test) = clone.Run(fault.Package, parts[false], fault);
        }

        found.Add((fault, outcome));
        Console.WriteLine($"{found.Count}: {outcome}: {fault.Number} {fault} {test}");
    }
);

Console.WriteLine("| package | faults | killed | timeout | survived |");
Console.WriteLine("|---|--:|--:|--:|--:|");
foreach (var package in packages)
{
    Row(package.Name, [.. found.Where(one => one.Fault.Package == package).Select(one => one.Outcome)]);
}

Row("all", [.. found.Select(one => one.Outcome)]);
return 0;

static void Row(string name, Outcome[] outcomes)
{
    int Count(Outcome outcome) => outcomes.Count(each => each == outcome);
    Console.WriteLine(
        string.Create(
            CultureInfo.InvariantCulture,
            $"| {name} | {outcomes.Length} | {Count(Outcome.Killed)} | {Count(Outcome.Timeout)} | {Count(Outcome.Survived)} |"
        )
    );
}
