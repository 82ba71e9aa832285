// Tries a random part of the mutants of Acoustics one by one, each on the quick tests, from a build that has them all in it. The tool would
// first time every test on every mutant it reaches, which takes hours:
//     dotnet run tests/Mutation/OneByOne.cs -- <folder of that build> 200 1
// How many, then a seed. docs/mutation.md says how to come by the build.
#:property PublishAot=false
using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Xml.Linq;

const string Reaching =
    "(FullyQualifiedName~.Acoustics.|FullyQualifiedName~.Resonances.)&Speed!=Slow"
    // It looks at sources, and fails on such code whatever is active.
    + "&FullyQualifiedName!~made_from_the_widest";

// Seconds on code with mutants in it, of one test with all its cases: those to try first, and those to try if these see nothing. What takes
// longer is tried only where it is about the folder itself.
const double First = 0.3;
const double Second = 4;
const double Longest = 40;

// Done whole by a configuration of the tool.
string[] done = ["Losses", "Junctions", "Line", "Interpolation"];

var patience = TimeSpan.FromMinutes(5);

if (
    args.Length != 3
    || !File.Exists(Path.Combine(args[0], "AirColumn.dll"))
    || !int.TryParse(args[1], CultureInfo.InvariantCulture, out var count)
    || !int.TryParse(args[2], CultureInfo.InvariantCulture, out var seed)
)
{
    Console.Error.WriteLine(
        "Give the folder of a build with mutants in it, how many to try, and a whole number as seed."
    );
    return 2;
}

var folder = args[0];
var settings = Path.Combine(folder, "one-by-one.runsettings");
File.WriteAllText(
    settings,
    "<RunSettings><xUnit><StopOnFail>true</StopOnFail><ParallelizeTestCollections>false</ParallelizeTestCollections></xUnit></RunSettings>"
);
var all = Mutants(Path.Combine(folder, "AirColumn.dll")).OrderBy(mutant => mutant.Id).ToArray();
new Random(seed).Shuffle(all);
var chosen = all[..Math.Min(count, all.Length)];
Console.WriteLine($"{chosen.Length} of {all.Length} mutants");
if (Run(Reaching, null, out var seconds) != "survived")
{
    Console.Error.WriteLine("The tests fail with no mutant active; nothing is to be learnt from them.");
    return 1;
}

var found = new ConcurrentBag<(Mutant Mutant, string Outcome)>();
Parallel.ForEach(
    Partitioner.Create(chosen, EnumerablePartitionerOptions.NoBuffering),
    new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
    mutant =>
    {
        var outcome = Outcome(mutant);
        found.Add((mutant, outcome));
        Console.WriteLine($"{found.Count}: {mutant.Id} {mutant.Place} {outcome}");
    }
);

Console.WriteLine("| folder | mutants | killed | timeout | survived | score |");
Console.WriteLine("|---|--:|--:|--:|--:|--:|");
foreach (
    var group in found.GroupBy(one => one.Mutant.Folder).OrderBy(group => group.Key, StringComparer.Ordinal)
)
{
    Row(group.Key, [.. group.Select(one => one.Outcome)]);
}

Row("all", [.. found.Select(one => one.Outcome)]);
return 0;

static void Row(string name, string[] outcomes)
{
    int Count(string outcome) => outcomes.Count(each => each == outcome);
    var score = 100.0 * (outcomes.Length - Count("survived")) / outcomes.Length;
    Console.WriteLine(
        string.Create(
            CultureInfo.InvariantCulture,
            $"| {name} | {outcomes.Length} | {Count("killed")} | {Count("timeout")} | {Count("survived")} | {score:F1} % |"
        )
    );
}

string Outcome(Mutant mutant)
{
    var own = mutant.Folder switch
    {
        "Sensitivity" or "Parameters" => "Gradient",
        "Multimodal" => ".Multimodal.",
        _ => "nothing",
    };
    var first = seconds.Where(test => test.Value <= First).Select(test => test.Key);
    var second = seconds
        .Where(test =>
            test.Value > First
            && (
                test.Value <= Second
                || test.Value <= Longest && test.Key.Contains(own, StringComparison.Ordinal)
            )
        )
        .Select(test => test.Key);
    return Run(Any(first), mutant, out _) is var outcome and not "survived"
        ? outcome
        : Run(Any(second), mutant, out _);

    static string Any(IEnumerable<string> tests) =>
        string.Join('|', tests.Select(test => $"FullyQualifiedName={test}"));
}

// Without a mutant also how long each test takes.
string Run(string filter, Mutant? mutant, out Dictionary<string, double> took)
{
    took = [];
    var results = mutant is null ? Directory.CreateTempSubdirectory("one-by-one").FullName : null;
    var start = new ProcessStartInfo(
        "dotnet",
        [
            "vstest",
            Path.Combine(folder, "AirColumn.Tests.dll"),
            $"--TestCaseFilter:{filter}",
            $"--Settings:{settings}",
            .. results is null ? Array.Empty<string>() : ["--logger:trx", $"--ResultsDirectory:{results}"],
        ]
    )
    {
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    };
    // How a build with mutants is told which of them is active.
    start.Environment["STRYKER_MUTANT_ID_CONTROL_VAR"] = "ActiveMutation";
    start.Environment["ActiveMutation"] = (mutant?.Id ?? -1).ToString(CultureInfo.InvariantCulture);
    using var process = Process.Start(start)!;
    process.OutputDataReceived += (_, _) => { };
    process.ErrorDataReceived += (_, _) => { };
    process.BeginOutputReadLine();
    process.BeginErrorReadLine();
    if (!process.WaitForExit(patience))
    {
        process.Kill(true);
        return "timeout";
    }

    if (results is not null)
    {
        var report = XDocument.Load(Directory.EnumerateFiles(results, "*.trx").Single());
        XNamespace space = report.Root!.Name.Namespace;
        var names = report
            .Descendants(space + "UnitTest")
            .ToDictionary(
                test => test.Attribute("id")!.Value,
                test =>
                    $"{test.Element(space + "TestMethod")!.Attribute("className")!.Value}."
                    + test.Element(space + "TestMethod")!.Attribute("name")!.Value.Split('(')[0]
            );
        foreach (var result in report.Descendants(space + "UnitTestResult"))
        {
            var name = names[result.Attribute("testId")!.Value];
            var time = TimeSpan.Parse(result.Attribute("duration")!.Value, CultureInfo.InvariantCulture);
            took[name] = took.GetValueOrDefault(name) + time.TotalSeconds;
        }

        Directory.Delete(results, true);
    }

    return process.ExitCode == 0 ? "survived" : "killed";
}

// A mutant shows as a constant that is handed to a call of IsActive.
List<Mutant> Mutants(string assembly)
{
    const byte Call = 0x28;
    var mutants = new Dictionary<int, Mutant>();
    using var file = new PEReader(File.OpenRead(assembly));
    var metadata = file.GetMetadataReader();
    foreach (var type in metadata.TypeDefinitions.Select(metadata.GetTypeDefinition))
    {
        var outer = type;
        while (!outer.GetDeclaringType().IsNil)
        {
            outer = metadata.GetTypeDefinition(outer.GetDeclaringType());
        }

        var space = metadata.GetString(outer.Namespace);
        var name = metadata.GetString(outer.Name);
        var part = space.Split('.');
        if (!space.StartsWith("AirColumn.Acoustics", StringComparison.Ordinal) || done.Contains(part[^1]))
        {
            continue;
        }

        foreach (
            var method in type.GetMethods()
                .Select(metadata.GetMethodDefinition)
                .Where(m => m.RelativeVirtualAddress > 0)
        )
        {
            var code = file.GetMethodBody(method.RelativeVirtualAddress).GetILBytes()!;
            for (var i = 5; i + 5 <= code.Length; i++)
            {
                if (
                    code[i] == Call
                    && IsActive(metadata, BitConverter.ToInt32(code, i + 1))
                    && Constant(code, i) is { } id
                )
                {
                    mutants[id] = new Mutant(id, part[^1], $"{name}.{metadata.GetString(method.Name)}");
                }
            }
        }
    }

    return [.. mutants.Values];
}

static bool IsActive(MetadataReader metadata, int token)
{
    const int MethodTable = 6;
    if (token >> 24 != MethodTable || (token & 0xFFFFFF) > metadata.MethodDefinitions.Count)
    {
        return false;
    }

    var handle = System.Reflection.Metadata.Ecma335.MetadataTokens.MethodDefinitionHandle(token & 0xFFFFFF);
    return metadata.StringComparer.Equals(metadata.GetMethodDefinition(handle).Name, "IsActive");
}

// ldc.i4, ldc.i4.s, or one of ldc.i4.0 to ldc.i4.8.
static int? Constant(byte[] code, int call) =>
    code[call - 5] == 0x20 ? BitConverter.ToInt32(code, call - 4)
    : code[call - 2] == 0x1F ? (sbyte)code[call - 1]
    : code[call - 1] is >= 0x16 and <= 0x1E ? code[call - 1] - 0x16
    : null;

/// <summary>A mutant, the folder it is in, and type and method.</summary>
internal sealed record Mutant(int Id, string Folder, string Place);
