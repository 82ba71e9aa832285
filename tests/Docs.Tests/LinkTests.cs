using System.Text.RegularExpressions;

namespace Docs.Tests;

/// <summary>Links between pages work where the repository is read.</summary>
public partial class LinkTests
{
    public static TheoryData<string> Pages => [.. Repository.Pages("")];

    [Theory]
    [MemberData(nameof(Pages))]
    public void Links_of_a_page_lead_to_files_and_headings_that_are_there(string page)
    {
        foreach (var target in Link().Matches(Prose(page)).Select(match => match.Groups[1].Value))
        {
            if (Outside().IsMatch(target))
            {
                continue;
            }

            var parts = target.Split('#', 2);
            var folder = page.Contains('/') ? page[..page.LastIndexOf('/')] : "";
            var file = parts[0].Length == 0 ? page : Path.Combine(folder, parts[0]);
            var there = Path.Combine(Repository.Top, file);
            Assert.True(File.Exists(there), $"{page}: {target}");
            if (parts is [_, var anchor])
            {
                Assert.Contains(anchor, Anchors(file));
            }
        }
    }

    [Fact]
    public void The_pages_are_found_and_have_links()
    {
        var pages = Repository.Pages("").ToList();
        Assert.Contains("README.md", pages);
        Assert.Contains("DEVELOPERS.md", pages);
        Assert.Contains("samples/DroneTube/README.md", pages);
        Assert.True(pages.Sum(page => Link().Count(Prose(page))) > 60);
    }

    // As most readers of Markdown name headings.
    private static IEnumerable<string> Anchors(string page) =>
        Heading()
            .Matches(Prose(page))
            .Select(match => NoWord().Replace(match.Groups[1].Value.Trim().ToLowerInvariant(), ""))
            .Select(text => text.Replace(' ', '-'));

    // Without code.
    private static string Prose(string page) =>
        Code().Replace(File.ReadAllText(Path.Combine(Repository.Top, page)).ReplaceLineEndings("\n"), "");

    [GeneratedRegex(@"(?<=\])\(([^)\s]+)\)")]
    private static partial Regex Link();

    [GeneratedRegex("^(https?:|mailto:)")]
    private static partial Regex Outside();

    [GeneratedRegex("^#+ (.+)$", RegexOptions.Multiline)]
    private static partial Regex Heading();

    [GeneratedRegex(@"[^\w\- ]")]
    private static partial Regex NoWord();

    [GeneratedRegex("^```.*?^```|^    .*?$|`[^`\n]+`", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Code();
}
