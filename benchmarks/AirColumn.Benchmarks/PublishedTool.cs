using System.Diagnostics;
using System.Runtime.InteropServices;

namespace AirColumn.Benchmarks;

/// <summary>ColumnTool published for a while: as it is built, and compiled ahead for this machine.</summary>
internal sealed class PublishedTool : IDisposable
{
    /// <summary>Publishes it; it takes minutes.</summary>
    public PublishedTool(string top)
    {
        var project = Path.Combine(top, "samples", "ColumnTool");
        var (built, ahead) = (Path.Combine(Folder, "built"), Path.Combine(Folder, "ahead"));
        Built = Succeeds("dotnet", "publish", project, "-c", "Release", "-o", built)
            ? Path.Combine(built, "ColumnTool.dll")
            : null;
        // The compiler refuses some machines by name; the set that the most have is next.
        Ahead =
            PublishesAhead("native") || PublishesAhead("x86-64-v3")
                ? Path.Combine(ahead, "ColumnTool")
                : null;

        bool PublishesAhead(string instructions) =>
            Succeeds(
                "dotnet",
                "publish",
                project,
                "-c",
                "Release",
                "-r",
                RuntimeInformation.RuntimeIdentifier,
                "-p:PublishAot=true",
                $"-p:IlcInstructionSet={instructions}",
                "-o",
                ahead
            );
    }

    /// <summary>A folder of its own.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("column-tool-").FullName;

    /// <summary>The library that dotnet runs; null if it could not be published.</summary>
    public string? Built { get; }

    /// <summary>The program compiled ahead; null if it could not be.</summary>
    public string? Ahead { get; }

    public void Dispose() => Directory.Delete(Folder, true);

    /// <summary>Whether a program ends well.</summary>
    public static bool Succeeds(string program, params string[] arguments)
    {
        using var process = Process.Start(
            new ProcessStartInfo(program, arguments)
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
        var error = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        _ = error.GetAwaiter().GetResult();
        return process.ExitCode == 0;
    }
}
