using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using static Microsoft.CodeAnalysis.CSharp.SyntaxFactory;

/// <summary>The source of a package, as the compiler reads it.</summary>
internal sealed class Source
{
    /// <summary>The file that says which fault is switched on.</summary>
    public const string SwitchFile = "Faults.cs";

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
                ExpressionSyntax[] ways = [.. Ways.Of(place).Where(way => Fits(model, place, way))];
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

        File.WriteAllText(Path.Combine(folder, SwitchFile), Switch(package));
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
}
