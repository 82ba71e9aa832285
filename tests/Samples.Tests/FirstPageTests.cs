using System.Text.RegularExpressions;

namespace Samples.Tests;

/// <summary>Each door of the first page shows a command and the beginning of what it prints.</summary>
public partial class FirstPageTests
{
    private static readonly string[] Blocks = File.ReadAllText(Path.Combine(ShownPage.Top, "README.md"))
        .ReplaceLineEndings("\n")
        .Split("```\n");

    [Fact]
    public void The_plan_begins_as_the_first_page_shows()
    {
        var (arguments, shown) = Shown("dotnet run -c Release --project samples/DroneTube -- plan ", 2);
        Assert.True(shown.Split('\n').Length > 15);
        Assert.StartsWith(
            shown,
            Sample.DroneTube(["plan", .. arguments]).Succeeded(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_uncertainties_are_those_on_the_first_page()
    {
        var (arguments, shown) = Shown(
            "dotnet run -c Release --project samples/ColumnTool -- uncertainty docs/",
            2
        );
        arguments[0] = Path.Combine(ShownPage.Top, "docs", arguments[0]);
        Assert.Equal(shown, Sample.ColumnTool("", ["uncertainty", .. arguments]).Succeeded());
    }

    /// <summary>The arguments of a command and a block after it.</summary>
    private static (string[] Arguments, string Shown) Shown(string command, int after)
    {
        var at = Array.FindIndex(Blocks, block => block.StartsWith(command, StringComparison.Ordinal));
        Assert.True(at >= 0, command);
        var arguments = Argument()
            .Matches(Blocks[at][command.Length..])
            .Select(match => match.Value.Trim('"'));
        return ([.. arguments], Blocks[at + after]);
    }

    [GeneratedRegex("\"[^\"]*\"|[^\\s]+")]
    private static partial Regex Argument();
}
