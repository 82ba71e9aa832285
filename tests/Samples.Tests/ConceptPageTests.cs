using System.Text.RegularExpressions;

namespace Samples.Tests;

/// <summary>The pages for makers and for researchers show what ColumnTool prints, and documents that lie beside them.</summary>
public partial class ConceptPageTests
{
    private const string Command = "dotnet run --project samples/ColumnTool -- ";

    private static readonly string[] Folders = ["concepts", "research"];

    public static TheoryData<string, string> Shown
    {
        get
        {
            var shown = new TheoryData<string, string>();
            foreach (var text in Pages())
            {
                var blocks = text.Split("```\n");
                for (var i = 0; i + 2 < blocks.Length; i++)
                {
                    if (blocks[i].StartsWith(Command, StringComparison.Ordinal))
                    {
                        shown.Add(blocks[i][Command.Length..].TrimEnd(), blocks[i + 2]);
                    }
                }
            }

            return shown;
        }
    }

    [Theory]
    [MemberData(nameof(Shown))]
    public void A_command_prints_what_the_page_shows(string command, string output)
    {
        var arguments = Argument()
            .Matches(command)
            .Select(match => match.Value.Trim('"'))
            .Select(argument =>
                argument.StartsWith("docs/", StringComparison.Ordinal)
                    ? Path.Combine(ShownPage.Top, argument)
                    : argument
            );
        Assert.Equal(output, Sample.ColumnTool("", [.. arguments]).Succeeded());
    }

    [Fact]
    public void No_command_is_overlooked() =>
        Assert.Equal(Pages().Sum(page => page.Split("\ndotnet run ").Length - 1), Shown.Count);

    [Fact]
    public void The_document_on_the_page_is_the_one_beside_it()
    {
        var folder = Path.Combine(ShownPage.Top, "docs", "concepts");
        var page = File.ReadAllText(Path.Combine(folder, "bore-document.md")).ReplaceLineEndings("\n");
        Assert.Equal(
            File.ReadAllText(Path.Combine(folder, "closed-tube.json")).ReplaceLineEndings("\n"),
            page.Split("```json\n")[1].Split("```")[0]
        );
    }

    private static IEnumerable<string> Pages() =>
        Folders
            .SelectMany(folder => Directory.GetFiles(Path.Combine(ShownPage.Top, "docs", folder), "*.md"))
            .Order(StringComparer.Ordinal)
            .Select(file => File.ReadAllText(file).ReplaceLineEndings("\n"));

    [GeneratedRegex("\"[^\"]*\"|[^ ]+")]
    private static partial Regex Argument();
}
