using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace AirColumn.Tests;

/// <summary>Which source file names what is declared in which other, as the compiler resolves it.</summary>
internal sealed class SourceHouse
{
    private const string Usings = """
        global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq;
        global using System.Threading; global using System.Threading.Tasks;
        """;

    // Bodies are not asked for what is wrong in them, which would read all of them twice: a name in one that means nothing is found where it is
    // looked up.
    // A partial method of which a generator writes the other half, such as a regular expression: no generator runs here.
    private const string HalfOfMethod = "CS8795";

    private readonly Dictionary<string, SortedSet<string>> named = [];
    private readonly List<string> unresolved = [];

    /// <summary>Reads files: the path of each, with '/', and its text.</summary>
    public SourceHouse(IReadOnlyDictionary<string, string> files)
    {
        var options = new CSharpParseOptions(LanguageVersion.Preview);
        var trees = files.Select(file => CSharpSyntaxTree.ParseText(file.Value, options, file.Key)).ToArray();
        var compilation = CSharpCompilation.Create(
            "House",
            [.. trees, CSharpSyntaxTree.ParseText(Usings, options)],
            Libraries(),
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, allowUnsafe: true)
        );
        Errors =
        [
            .. compilation
                .GetDeclarationDiagnostics()
                .Where(found => found.Severity == DiagnosticSeverity.Error && found.Id != HalfOfMethod)
                .Select(found => found.ToString()),
        ];
        foreach (var tree in trees)
        {
            named[tree.FilePath] = Named(tree, compilation.GetSemanticModel(tree));
        }

        Errors = [.. Errors, .. unresolved];
    }

    /// <summary>What could not be resolved; names are missing where there is any.</summary>
    public IReadOnlyList<string> Errors { get; }

    /// <summary>The files.</summary>
    public IEnumerable<string> Files => named.Keys;

    /// <summary>All arrows from a file to another that it names.</summary>
    public IEnumerable<(string From, string To)> Arrows =>
        named.SelectMany(file => file.Value.Select(other => (file.Key, other)));

    /// <summary>The folders, "" for files beside the project.</summary>
    public IReadOnlyList<string> Folders => [.. Files.Select(FolderOf).Distinct().Order()];

    /// <summary>All .cs files below a folder but what the build writes.</summary>
    public static SourceHouse Below(string folder) =>
        new(
            Directory
                .EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
                .Select(file => (Path: Path.GetRelativePath(folder, file).Replace('\\', '/'), file))
                .Where(file => file.Path.Split('/')[0] is not ("obj" or "bin"))
                .ToDictionary(file => file.Path, file => File.ReadAllText(file.file))
        );

    /// <summary>The folder of a file.</summary>
    public static string FolderOf(string file) =>
        file.Contains('/', StringComparison.Ordinal) ? file[..file.LastIndexOf('/')] : "";

    /// <summary>Groups of files each of which leads to each other of its group, the largest first (Tarjan's components).</summary>
    public IReadOnlyList<string[]> Circles()
    {
        var index = new Dictionary<string, int>();
        var low = new Dictionary<string, int>();
        var open = new Stack<string>();
        var circles = new List<string[]>();
        foreach (var file in named.Keys)
        {
            if (!index.ContainsKey(file))
            {
                Visit(file);
            }
        }

        return [.. circles.OrderByDescending(circle => circle.Length)];

        void Visit(string file)
        {
            index[file] = low[file] = index.Count;
            open.Push(file);
            foreach (var other in named[file])
            {
                if (!index.TryGetValue(other, out var seen))
                {
                    Visit(other);
                    low[file] = Math.Min(low[file], low[other]);
                }
                else if (open.Contains(other))
                {
                    low[file] = Math.Min(low[file], seen);
                }
            }

            if (low[file] != index[file])
            {
                return;
            }

            var circle = new List<string>();
            do
            {
                circle.Add(open.Pop());
            } while (circle[^1] != file);

            if (circle.Count > 1)
            {
                circles.Add([.. circle.Order(StringComparer.Ordinal)]);
            }
        }
    }

    private SortedSet<string> Named(SyntaxTree tree, SemanticModel model)
    {
        var found = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var name in tree.GetRoot().DescendantNodes().OfType<SimpleNameSyntax>())
        {
            if (name.Ancestors().Any(above => above is UsingDirectiveSyntax))
            {
                continue;
            }

            var symbol = model.GetSymbolInfo(name).Symbol;
            if (symbol is null && name.Identifier.Text is not ("nameof" or "notnull"))
            {
                unresolved.Add($"{name.GetLocation().GetLineSpan()}: {name}");
            }

            if (symbol is null or INamespaceSymbol)
            {
                continue;
            }

            found.UnionWith(
                symbol
                    .OriginalDefinition.DeclaringSyntaxReferences.Select(place => place.SyntaxTree.FilePath)
                    .Where(file => file.Length > 0 && file != tree.FilePath)
            );
        }

        return found;
    }

    // All that the tests run on.
    private static IEnumerable<MetadataReference> Libraries() =>
        ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
            .Split(Path.PathSeparator)
            .Where(file => Path.GetFileName(file) != "AirColumn.dll")
            .Select(file => MetadataReference.CreateFromFile(file));
}
