// Puts a random choice of faults into the source of Workshop, Recordings, Plots and Design, builds it once with all of them, and switches them on
// one at a time: first on the tests that take less than a third of a second, then on the others. It changes the sources, so give it a clone:
//     git clone . ../faults
//     dotnet run tests/Mutation/RandomFaults.cs -- ../faults 100 1
// How many, then a seed. A fault is an operator, a condition or a number that is another; words are left alone.
#:package Microsoft.CodeAnalysis.CSharp
#:property PublishAot=false
using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Xml.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using static Microsoft.CodeAnalysis.CSharp.SyntaxFactory;

// Seconds of a test with all its cases that is tried first.
const double First = 0.3;
var patience = TimeSpan.FromMinutes(10);

if (
    args.Length != 3
    || !Directory.Exists(Path.Combine(args[0], "src"))
    || !int.TryParse(args[1], CultureInfo.InvariantCulture, out var count)
    || !int.TryParse(args[2], CultureInfo.InvariantCulture, out var seed)
)
{
    Console.Error.WriteLine(
        "Give the folder of a clone to put faults into, how many, and a whole number as seed."
    );
    return 2;
}

var top = Path.GetFullPath(args[0]);
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
    Build(package);
}

var random = new Random(seed);
var sources = packages.Select(package => new Source(top, package)).ToArray();
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
    Build(package);
}

var seconds = packages.ToDictionary(
    package => package,
    package =>
        Run(package, package.Tests, null, out var took) == "survived"
            ? took
            : throw new InvalidOperationException(
                $"The tests of {package.Name} fail with no fault switched on."
            )
);
var found = new ConcurrentBag<(Fault Fault, string Outcome)>();
Parallel.ForEach(
    Partitioner.Create(faults, EnumerablePartitionerOptions.NoBuffering),
    new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
    fault =>
    {
        var took = seconds[fault.Package];
        var outcome = Run(
            fault.Package,
            Named(took.Where(test => test.Value <= First).Select(test => test.Key)),
            fault,
            out _
        );
        if (outcome == "survived")
        {
            outcome = Run(
                fault.Package,
                Named(took.Where(test => test.Value > First).Select(test => test.Key)),
                fault,
                out _
            );
        }

        found.Add((fault, outcome));
        Console.WriteLine($"{found.Count}: {outcome}: {fault.Number} {fault}");
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

static string Named(IEnumerable<string> tests) =>
    string.Join('|', tests.Select(test => $"FullyQualifiedName={test}"));

static void Row(string name, string[] outcomes)
{
    int Count(string outcome) => outcomes.Count(each => each == outcome);
    Console.WriteLine(
        string.Create(
            CultureInfo.InvariantCulture,
            $"| {name} | {outcomes.Length} | {Count("killed")} | {Count("timeout")} | {Count("survived")} |"
        )
    );
}

void Build(Package package)
{
    var start = new ProcessStartInfo(
        "dotnet",
        [
            "build",
            Path.Combine(top, "tests", package.Project),
            "-c",
            "Release",
            "-p:RunAnalyzers=false",
            "-p:TreatWarningsAsErrors=false",
            "-v:q",
        ]
    )
    {
        RedirectStandardOutput = true,
        WorkingDirectory = top,
    };
    using var process = Process.Start(start)!;
    var said = process.StandardOutput.ReadToEnd();
    process.WaitForExit();
    if (process.ExitCode != 0)
    {
        throw new InvalidOperationException(said);
    }
}

// Without a fault also how long each test takes.
string Run(Package package, string filter, Fault? fault, out Dictionary<string, double> took)
{
    took = [];
    if (filter.Length == 0)
    {
        return "survived";
    }

    var results = fault is null ? Directory.CreateTempSubdirectory("faults").FullName : null;
    var settings = Path.Combine(top, "faults.runsettings");
    File.WriteAllText(
        $"{settings}.{package.Name}.{fault?.Number}",
        $"<RunSettings><RunConfiguration><TestCaseFilter>{filter.Replace("&", "&amp;", StringComparison.Ordinal)}</TestCaseFilter></RunConfiguration><xUnit><StopOnFail>true</StopOnFail><MaxParallelThreads>1</MaxParallelThreads></xUnit></RunSettings>"
    );
    var start = new ProcessStartInfo(
        "dotnet",
        [
            "vstest",
            Path.Combine(
                top,
                "tests",
                package.Project,
                "bin",
                "Release",
                "net10.0",
                $"{package.Project}.dll"
            ),
            $"--Settings:{settings}.{package.Name}.{fault?.Number}",
            .. results is null ? Array.Empty<string>() : ["--logger:trx", $"--ResultsDirectory:{results}"],
        ]
    )
    {
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    };
    start.Environment["AIRCOLUMN_FAULT"] = (fault?.Number ?? 0).ToString(CultureInfo.InvariantCulture);
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

/// <summary>What gets faults, and the tests that are to see them.</summary>
internal sealed record Package(string Name, string Folder, string Part, string Project, string Tests);

/// <summary>One expression and what stands in its place.</summary>
internal sealed record Fault(Package Package, string File, ExpressionSyntax Place, ExpressionSyntax Instead)
{
    public int Number { get; init; }

    public override string ToString() =>
        $"{Package.Name} {File}:{Place.GetLocation().GetLineSpan().StartLinePosition.Line + 1}: {Place.NormalizeWhitespace()} → {Instead.NormalizeWhitespace()}";
}

/// <summary>The source of a package, as the compiler reads it.</summary>
internal sealed class Source
{
    private const string Usings =
        "global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq; global using System.Threading; global using System.Threading.Tasks;";

    private static readonly CSharpParseOptions Options = new(LanguageVersion.Preview);
    private readonly Package package;
    private readonly string folder;
    private readonly CSharpCompilation compilation;
    private readonly Dictionary<string, SyntaxTree> files;
    private readonly HashSet<string> usual;

    public Source(string top, Package package)
    {
        this.package = package;
        folder = Path.Combine(top, package.Folder);
        files = Directory
            .EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
            .Select(file => (Path: Path.GetRelativePath(folder, file).Replace('\\', '/'), file))
            .Where(file => file.Path.Split('/')[0] is not ("obj" or "bin"))
            .OrderBy(file => file.Path, StringComparer.Ordinal)
            .ToDictionary(
                file => file.Path,
                file => CSharpSyntaxTree.ParseText(File.ReadAllText(file.file), Options, file.Path)
            );
        var built = Path.Combine(top, "tests", package.Project, "bin", "Release", "net10.0");
        var own = Path.GetFileName(package.Folder) + ".dll";
        var libraries = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
            .Split(Path.PathSeparator)
            .Where(file =>
                Path.GetFileName(file) is var name
                && !name.StartsWith("Microsoft.CodeAnalysis", StringComparison.Ordinal)
            )
            .Concat(
                (
                    (string[])
                        [
                            "AirColumn",
                            "UnitsNet",
                            "MathNet.Numerics",
                            "NAudio.Core",
                            "Sep",
                            "csFastFloat",
                            "ScottPlot",
                            "SkiaSharp",
                            "SkiaSharp.HarfBuzz",
                            "HarfBuzzSharp",
                        ]
                )
                    .Select(name => Path.Combine(built, $"{name}.dll"))
                    .Where(file => File.Exists(file) && Path.GetFileName(file) != own)
            );
        compilation = CSharpCompilation.Create(
            Path.GetFileName(package.Folder),
            [
                .. files.Values,
                CSharpSyntaxTree.ParseText(Usings, Options),
                CSharpSyntaxTree.ParseText(Switch(package), Options),
            ],
            libraries.Select(file => MetadataReference.CreateFromFile(file)),
            new CSharpCompilationOptions(
                OutputKind.DynamicallyLinkedLibrary,
                allowUnsafe: true,
                nullableContextOptions: NullableContextOptions.Enable
            )
        );
        usual = [.. Errors(compilation).Select(error => error.Id + error.Location.GetLineSpan().Path)];
    }

    /// <summary>All that can be made wrong, each in one way.</summary>
    public IEnumerable<Fault> Candidates(Random random)
    {
        foreach (
            var (file, tree) in files.Where(file =>
                file.Key.StartsWith(package.Part, StringComparison.Ordinal)
            )
        )
        {
            var model = compilation.GetSemanticModel(tree);
            foreach (var place in tree.GetRoot().DescendantNodes().OfType<ExpressionSyntax>().Where(IsInCode))
            {
                ExpressionSyntax[] ways = [.. Ways(place).Where(way => Fits(model, place, way))];
                if (ways.Length > 0)
                {
                    yield return new Fault(package, file, place, ways[random.Next(ways.Length)]);
                }
            }
        }
    }

    /// <summary>Those of the faults that do not compile.</summary>
    public IEnumerable<Fault> Unfit(Fault[] faults)
    {
        var ours = faults.Where(fault => fault.Package == package).ToArray();
        var changed = compilation;
        foreach (var group in ours.GroupBy(fault => fault.File))
        {
            changed = changed.ReplaceSyntaxTree(
                files[group.Key],
                CSharpSyntaxTree.ParseText(Text(group.Key, ours), Options, group.Key)
            );
        }

        foreach (
            var error in Errors(changed)
                .Where(error => !usual.Contains(error.Id + error.Location.GetLineSpan().Path))
        )
        {
            var place = error.Location.GetLineSpan();
            // Lines stay where they are. What is said of another line of the same member, as of a variable that is not set, may be of any in it.
            var near = ours.Where(fault => fault.File == place.Path && Holds(fault.Place, place)).ToList();
            foreach (
                var fault in near.Count > 0
                    ? near
                    : ours.Where(fault =>
                        fault.File == place.Path
                        && Holds(fault.Place.FirstAncestorOrSelf<MemberDeclarationSyntax>()!, place)
                    )
            )
            {
                yield return fault;
            }
        }
    }

    public void Write(Fault[] faults)
    {
        var ours = faults.Where(fault => fault.Package == package).ToArray();
        foreach (var file in ours.Select(fault => fault.File).Distinct())
        {
            File.WriteAllText(Path.Combine(folder, file), Text(file, ours));
        }

        File.WriteAllText(Path.Combine(folder, "Faults.cs"), Switch(package));
    }

    private static string Switch(Package package) =>
        $$"""
            namespace Faults{{package.Name}};
            internal static class Fault
            {
                private static readonly int Active = int.Parse(Environment.GetEnvironmentVariable("AIRCOLUMN_FAULT") ?? "0", System.Globalization.CultureInfo.InvariantCulture);
                public static bool Is(int number) => number == Active;
            }
            """;

    private string Text(string file, Fault[] faults)
    {
        var numbered = faults.Where(fault => fault.File == file).ToDictionary(fault => fault.Place);
        var root = files[file].GetRoot();
        return root.ReplaceNodes(
                numbered.Keys,
                (place, now) =>
                    ParseExpression(
                            $"(Faults{package.Name}.Fault.Is({numbered[place].Number}) ? ({numbered[place].Instead.NormalizeWhitespace("", " ").WithoutTrivia()}) : ({now.WithoutTrivia()}))"
                        )
                        .WithTriviaFrom(now)
            )
            .ToFullString();
    }

    private static bool Holds(SyntaxNode node, FileLinePositionSpan place) =>
        node.GetLocation().GetLineSpan() is var span
        && span.StartLinePosition.Line <= place.EndLinePosition.Line
        && span.EndLinePosition.Line >= place.StartLinePosition.Line;

    private static IEnumerable<Diagnostic> Errors(CSharpCompilation compilation) =>
        compilation.GetDiagnostics().Where(found => found.Severity == DiagnosticSeverity.Error);

    // Not where the language wants a constant.
    private static bool IsInCode(ExpressionSyntax place) =>
        !place
            .Ancestors()
            .Any(node =>
                node
                    is AttributeSyntax
                        or PatternSyntax
                        or SwitchLabelSyntax
                        or ParameterSyntax
                        or EnumMemberDeclarationSyntax
                        or InterpolationFormatClauseSyntax
                || node is FieldDeclarationSyntax field && field.Modifiers.Any(SyntaxKind.ConstKeyword)
                || node is LocalDeclarationStatementSyntax local && local.IsConst
            );

    private static bool Fits(SemanticModel model, ExpressionSyntax place, ExpressionSyntax instead)
    {
        var now = model.GetTypeInfo(place);
        return now.Type is { TypeKind: not TypeKind.Error }
            && now.Type.SpecialType != SpecialType.System_String
            && SymbolEqualityComparer.Default.Equals(now.Type, now.ConvertedType)
            && SymbolEqualityComparer.Default.Equals(
                now.Type,
                model
                    .GetSpeculativeTypeInfo(
                        place.SpanStart,
                        instead,
                        SpeculativeBindingOption.BindAsExpression
                    )
                    .Type
            );
    }

    private static IEnumerable<ExpressionSyntax> Ways(ExpressionSyntax place)
    {
        if (place is BinaryExpressionSyntax two)
        {
            foreach (var sign in Instead(two.OperatorToken.Text))
            {
                yield return ParseExpression($"{two.Left} {sign} {two.Right}");
            }
        }
        else if (place is PrefixUnaryExpressionSyntax { OperatorToken.Text: "-" or "!" } one)
        {
            yield return ParseExpression(one.Operand.ToString());
        }
        else if (place is ConditionalExpressionSyntax choice)
        {
            yield return ParseExpression($"!({choice.Condition}) ? {choice.WhenTrue} : {choice.WhenFalse}");
        }
        else if (place is LiteralExpressionSyntax { Token.Value: int or double } number)
        {
            yield return ParseExpression(
                number.Token.Value is int whole
                    ? (whole + 1).ToString(CultureInfo.InvariantCulture)
                    : $"({number} * 1.1)"
            );
        }
        else if (place is InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax member } call)
        {
            var name = member.Name.Identifier.Text switch
            {
                "Min" => "Max",
                "Max" => "Min",
                "First" => "Last",
                "Last" => "First",
                "All" => "Any",
                "Any" => "All",
                "Floor" => "Ceiling",
                "Ceiling" => "Floor",
                _ => null,
            };
            if (name is not null)
            {
                yield return ParseExpression($"{member.Expression}.{name}{call.ArgumentList}");
            }
        }
    }

    private static string[] Instead(string sign) =>
        sign switch
        {
            "+" => ["-"],
            "-" => ["+"],
            "*" => ["/"],
            "/" => ["*"],
            "%" => ["*"],
            "<" => ["<=", ">="],
            ">" => [">=", "<="],
            "<=" => ["<", ">"],
            ">=" => [">", "<"],
            "==" => ["!="],
            "!=" => ["=="],
            "&&" => ["||"],
            "||" => ["&&"],
            _ => [],
        };
}
