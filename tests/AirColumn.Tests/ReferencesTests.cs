using System.Reflection;
using System.Text.RegularExpressions;

namespace AirColumn.Tests;

/// <summary>Every source that the code, the tests or the documents cite stands in the bibliography.</summary>
public partial class ReferencesTests
{
    private static string Top =>
        typeof(ReferencesTests)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(a => a.Key == "Top")
            .Value!;

    private static string[] Folders { get; } = ["src", "tests", "docs"];

    [Fact]
    public void Cited_sources_are_in_the_bibliography()
    {
        var known = Entry()
            .Matches(File.ReadAllText(Path.Combine(Top, "docs", "references.bib")))
            .Select(m => m.Groups[1].Value)
            .ToHashSet();
        var cited = Folders
            .SelectMany(folder =>
                Directory.EnumerateFiles(Path.Combine(Top, folder), "*.*", SearchOption.AllDirectories)
            )
            .Where(file => Path.GetExtension(file) is ".cs" or ".md" && !BuildOutput().IsMatch(file))
            .SelectMany(file => Key().Matches(File.ReadAllText(file)).Select(match => match.Value))
            .ToHashSet();

        Assert.True(cited.Count > 15, "The pattern found no citations.");
        Assert.Empty(cited.Except(known));
    }

    [GeneratedRegex(@"^@\w+\{([^,]+),", RegexOptions.Multiline)]
    private static partial Regex Entry();

    [GeneratedRegex(@"(?<![\w-])[a-z]{3,}(?:18|19|20)\d\d(?![\w-])")]
    private static partial Regex Key();

    [GeneratedRegex(@"[\\/](bin|obj)[\\/]")]
    private static partial Regex BuildOutput();
}
