using System.Xml.Linq;

namespace Docs.Tests;

/// <summary>The citation names the version that is built.</summary>
public class CitationTests
{
    [Fact]
    public void Its_version_is_that_of_the_packages()
    {
        var version = XDocument
            .Load(Repository.File("Directory.Build.props"))
            .Descendants("Version")
            .Single()
            .Value;
        Assert.Contains(
            $"version: {version}",
            File.ReadAllLines(Repository.File("docs/citation.cff")),
            StringComparer.Ordinal
        );
        var page = File.ReadAllText(Repository.File("docs/research/cite.md"));
        Assert.Contains($"(version {version})", page, StringComparison.Ordinal);
        Assert.Contains($"version = {{{version}}}", page, StringComparison.Ordinal);
    }
}
