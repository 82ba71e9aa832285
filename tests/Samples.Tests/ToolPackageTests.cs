using System.Diagnostics;

namespace Samples.Tests;

/// <summary>ColumnTool as a .NET tool: packed as it is built, installed and asked.</summary>
public sealed class ToolPackageTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("column-tool-").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    [Trait(Amount.Trait, Amount.Long)]
    public void It_is_installed_and_answers()
    {
        var packages = Path.Combine(folder, "packages");
        Run(
            "dotnet",
            "pack",
            Path.Combine(ShownPage.Top, "samples", "ColumnTool"),
            "--no-build",
            "-c",
            Sample.Configuration,
            "-o",
            packages
        );
        Run(
            "dotnet",
            "tool",
            "install",
            "AirColumn.ColumnTool",
            "--tool-path",
            folder,
            "--source",
            packages,
            "--no-cache"
        );
        string[] question = ["air", "--temperature", "20 °C", "--json"];
        Assert.Equal(
            Sample.ColumnTool("", question).Succeeded(),
            Run(Path.Combine(folder, "columntool"), question)
        );
    }

    private string Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
            WorkingDirectory = folder,
        };
        // A package of this version that was installed before stays out of it.
        start.Environment["NUGET_PACKAGES"] = Path.Combine(folder, "unpacked");
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, output);
        return output;
    }
}
