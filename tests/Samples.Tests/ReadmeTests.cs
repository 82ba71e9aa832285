namespace Samples.Tests;

/// <summary>The first page and the cookbook show code that runs and what it prints.</summary>
public class ReadmeTests
{
    private static readonly ShownPage First = new("README.md");

    public static TheoryData<string> Recipes =>
        [
            .. Directory
                .GetFiles(ShownPage.Scripts, "*.cs")
                .Select(file => Path.GetFileNameWithoutExtension(file))
                .Where(name => name != "first-resonance")
                .Order(StringComparer.Ordinal),
        ];

    [Fact]
    public void Code_on_the_first_page_is_the_script() => First.ShowsCodeOf("first-resonance.cs");

    [Fact]
    public Task The_command_prints_what_the_first_page_shows() => First.ShowsOutputOf("first-resonance.cs");

    // Every script but the first has its page in the cookbook.
    [Theory]
    [MemberData(nameof(Recipes))]
    public void A_recipe_shows_the_script_and_what_it_prints(string name)
    {
        var page = new ShownPage(Path.Combine("docs", "cookbook", $"{name}.md"));
        page.ShowsCodeOf($"{name}.cs");
        page.Shows(Script.Output($"{name}.cs"));
        // The library, or the one with pictures, which has it; and numbers that are the same in every country.
        Assert.Matches(
            @"\A#:project ../../src/(AirColumn|AirColumn\.Plots)/\1\.csproj\n#:property InvariantGlobalization=true\nusing ",
            Script.TextOf($"{name}.cs")
        );
    }

    [Theory]
    [Trait(Amount.Trait, Amount.Long)]
    [MemberData(nameof(Recipes))]
    public Task A_recipe_is_run_by_its_command(string name) =>
        new ShownPage(Path.Combine("docs", "cookbook", $"{name}.md")).ShowsOutputOf($"{name}.cs");

    [Fact]
    public void The_index_of_the_cookbook_names_every_page()
    {
        var folder = Path.Combine(ShownPage.Top, "docs", "cookbook");
        var index = File.ReadAllText(Path.Combine(folder, "README.md"));
        var pages = Directory
            .GetFiles(folder, "*.md")
            .Select(Path.GetFileName)
            .Where(name => name != "README.md");
        Assert.All(pages, page => Assert.Contains($"({page})", index, StringComparison.Ordinal));
    }
}
