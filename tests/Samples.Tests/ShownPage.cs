using System.Diagnostics;
using System.Reflection;

namespace Samples.Tests;

/// <summary>A page of the documentation that shows code and what it prints.</summary>
internal sealed class ShownPage(string path)
{
    public static readonly string Top = typeof(ShownPage)
        .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(data => data.Key == "Top")
        .Value!;

    private readonly string[] parts = Normal(Path.Combine(Top, path)).Split("```");

    /// <summary>The folder of the scripts.</summary>
    public static string Scripts => Path.Combine(Top, "samples", "Scripts");

    /// <summary>Its code is a script, all of it but the lines for the SDK at the top: a copy compiles.</summary>
    public void ShowsCodeOf(string script)
    {
        const string Language = "csharp\n";
        var code = parts.Single(part => part.StartsWith(Language, StringComparison.Ordinal));
        Assert.Equal(Script.CodeOf(script), code[Language.Length..]);
    }

    /// <summary>What a script prints stands on it, nothing more or less.</summary>
    public async Task ShowsOutputOf(string script)
    {
        var start = new ProcessStartInfo("dotnet", ["run", "-c", "Release", Path.Combine(Scripts, script)])
        {
            RedirectStandardOutput = true,
        };
        // The test command built the library without the analyzers; a run that asks for them compiles all of it again.
        start.Environment["RunAnalyzers"] = "false";
        start.Environment["UseSharedCompilation"] = "true";
        // Scripts say themselves that their numbers are of no country, but settings of the test command would count for more.
        start.Environment.Remove("DOTNET_SYSTEM_GLOBALIZATION_INVARIANT");
        using var process = Process.Start(start)!;
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();

        Assert.Equal(0, process.ExitCode);
        Shows(output.ReplaceLineEndings("\n"));
    }

    /// <summary>This output stands on it, nothing more or less.</summary>
    public void Shows(string output) => Assert.Contains($"\n{output}", parts, StringComparer.Ordinal);

    private static string Normal(string file) => File.ReadAllText(file).ReplaceLineEndings("\n");
}
