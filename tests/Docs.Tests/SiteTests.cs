using System.Text.RegularExpressions;
using AirColumn;
using AirColumn.Plots;
using AirColumn.Recordings;
using AirColumn.Workshop;
using NotebookRunner;

namespace Docs.Tests;

/// <summary>The site is built without a warning, has all pages and types, and its links lead somewhere. Building takes half a minute.</summary>
[Trait(Amount.Trait, Amount.Long)]
public partial class SiteTests(SiteTests.Site site) : IClassFixture<SiteTests.Site>
{
    private static readonly Type[] Packages =
    [
        typeof(Column),
        typeof(Cautions),
        typeof(Recording),
        typeof(Picture),
    ];

    [Fact]
    public void Every_page_is_on_it()
    {
        string[] pages =
        [
            .. Repository.Pages("docs").Select(page => page["docs/".Length..]),
            .. Repository.Pages("samples"),
            "DEVELOPERS.md",
        ];
        Assert.True(pages.Length > 20);
        Assert.All(pages, page => Assert.Contains(Path.ChangeExtension(page, "html"), site.Files.Keys));
    }

    [Fact]
    public void Every_public_type_and_namespace_is_on_it()
    {
        var types = Packages.SelectMany(type => type.Assembly.GetExportedTypes()).ToList();
        var names = types
            .Select(type => type.Namespace!)
            .Distinct()
            .Concat(types.Select(type => type.FullName!.Replace('`', '-').Replace('+', '.')))
            .ToList();
        Assert.True(names.Count > 100);
        Assert.All(names, name => Assert.Contains($"api/{name}.html", site.Files.Keys));
    }

    [Fact]
    public void Its_own_links_lead_somewhere()
    {
        var broken = new List<string>();
        var links = 0;
        foreach (var (page, text) in site.Files.Where(file => file.Value.Length > 0))
        {
            foreach (var target in Link().Matches(text).Select(match => match.Groups[1].Value))
            {
                if (Outside().IsMatch(target))
                {
                    continue;
                }

                links++;
                var parts = target.Split('#', 2);
                var path = Uri.UnescapeDataString(parts[0].Split('?')[0]);
                var file = path.Length == 0 ? page : Joined(page, path);
                if (!site.Files.TryGetValue(file, out var there))
                {
                    broken.Add($"{page}: {target}");
                }
                else if (
                    parts is [_, { Length: > 0 } anchor]
                    && !there.Contains($"id=\"{anchor}\"", StringComparison.Ordinal)
                )
                {
                    broken.Add($"{page}: {target} (no such place)");
                }
            }
        }

        Assert.True(links > 1000, $"{links}");
        Assert.Empty(broken);
    }

    private static string Joined(string page, string path)
    {
        var top = Path.GetFullPath(Path.Combine(Path.GetTempPath(), "top"));
        var whole = Path.GetFullPath(Path.Combine(top, Path.GetDirectoryName(page)!, path));
        return Path.GetRelativePath(top, whole).Replace('\\', '/');
    }

    [GeneratedRegex("(?:href|src)=\"([^\"]+)\"")]
    private static partial Regex Link();

    [GeneratedRegex("^(https?:|mailto:|data:|//)")]
    private static partial Regex Outside();

    /// <summary>The site as it is built now.</summary>
    public sealed class Site
    {
        private static readonly string Folder = Repository.File("artifacts/site");

        public Site()
        {
            foreach (var old in (string[])[Folder, Repository.File("artifacts/api")])
            {
                if (Directory.Exists(old))
                {
                    Directory.Delete(old, true);
                }
            }

            Tools.Restore(Repository.Top);
            Shell.Dotnet(Repository.Top, "tool", "run", "docfx", ".config/docfx.json", "--warningsAsErrors");
            Files = Directory
                .EnumerateFiles(Folder, "*", SearchOption.AllDirectories)
                .ToDictionary(
                    file => Path.GetRelativePath(Folder, file).Replace('\\', '/'),
                    file => Path.GetExtension(file) == ".html" ? File.ReadAllText(file) : ""
                );
        }

        /// <summary>The text of each page, and nothing for other files, by their paths.</summary>
        public IReadOnlyDictionary<string, string> Files { get; }
    }
}
