using System.Text.RegularExpressions;

namespace Docs.Tests;

/// <summary>What readers stumbled over once is not written again: in programs, pages, scripts and notebooks.</summary>
public partial class PlainWordsTests
{
    private static readonly string[] Kinds = [".cs", ".md", ".ipynb"];

    private static readonly string[] Folders = ["src", "samples", "docs"];

    [Fact]
    public void Nobody_has_to_read_a_sentence_twice()
    {
        var files = Folders
            .SelectMany(folder =>
                Directory.EnumerateFiles(Repository.File(folder), "*", SearchOption.AllDirectories)
            )
            .Where(file => Kinds.Contains(Path.GetExtension(file)))
            .Where(file => !BuiltOrUnpacked().IsMatch(file))
            .Append(Repository.File("README.md"))
            .Append(Repository.File("DEVELOPERS.md"))
            .ToList();
        Assert.True(files.Count > 100);
        Assert.Empty(
            files.SelectMany(file =>
                Stumbles()
                    .Matches(File.ReadAllText(file))
                    .Select(match => $"{Path.GetRelativePath(Repository.Top, file)}: {match.Value}")
            )
        );
    }

    [GeneratedRegex(@"[/\\](bin|obj|artifacts|\.unpacked|\.packages)[/\\]")]
    private static partial Regex BuiltOrUnpacked();

    [GeneratedRegex(
        @"\bMind:|\btimes of \d|\btimes of (twenty|forty)|\bis sure to\b|What changes what|"
            + @"fewest there can be|""a good guess""|give or take|uncleaned|nothing is known of it|\boff at most\b|it stands out \{|"
            + @"values are examples|\(an example\)|for the resonance on the note|"
            + @"loses its footing|to be had as|read as ever|some tenths|, where the `using` lines are|given up otherwise"
    )]
    private static partial Regex Stumbles();
}
