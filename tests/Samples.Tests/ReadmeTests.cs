using System.Diagnostics;
using System.Reflection;

namespace Samples.Tests;

/// <summary>The first page shows code that runs and what it prints.</summary>
public class ReadmeTests
{
    private static readonly string Top = typeof(ReadmeTests)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(data => data.Key == "Top")
        .Value!;

    private static readonly string Script = Path.Combine(Top, "samples", "Scripts", "first-resonance.cs");

    private static readonly string[] Page = File.ReadAllText(Path.Combine(Top, "README.md"))
        .ReplaceLineEndings("\n")
        .Split("```");

    [Fact]
    public void Code_on_the_first_page_is_the_script() =>
        Assert.Contains(
            Block("csharp\n"),
            File.ReadAllText(Script).ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );

    [Fact]
    public async Task Script_prints_what_the_first_page_shows()
    {
        var start = new ProcessStartInfo("dotnet", ["run", "-c", "Release", Script])
        {
            RedirectStandardOutput = true,
        };
        using var process = Process.Start(start)!;
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();

        Assert.Equal(0, process.ExitCode);
        Assert.Contains($"\n{output.ReplaceLineEndings("\n")}", Page, StringComparer.Ordinal);
    }

    private static string Block(string language) =>
        Page.Single(part => part.StartsWith(language, StringComparison.Ordinal))[language.Length..];
}
