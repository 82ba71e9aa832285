namespace Docs.Tests;

/// <summary>The contents of the site, which names its pages.</summary>
public class ContentsTests
{
    [Fact]
    public void Every_page_is_in_its_contents()
    {
        var contents = string.Concat(
                File.ReadAllText(Repository.File("docs/contents/toc.yml")),
                File.ReadAllText(Repository.File("docs/contributors/toc.yml"))
            )
            .ReplaceLineEndings("\n");
        string[] pages =
        [
            .. Repository.Pages("docs").Select(page => $"../{page["docs/".Length..]}"),
            .. Repository.Pages("samples").Append("DEVELOPERS.md").Select(page => $"../../{page}"),
        ];
        Assert.All(pages, page => Assert.Contains($"href: {page}\n", contents, StringComparison.Ordinal));
    }
}
