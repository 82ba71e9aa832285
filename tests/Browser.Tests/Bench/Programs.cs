using System.Diagnostics;
using System.Reflection;

namespace Browser.Tests.Bench;

/// <summary>DroneTube as it was built with these tests.</summary>
internal static class Programs
{
    public static string Configuration { get; } =
        typeof(Programs)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(data => data.Key == "Configuration")
            .Value!;

    /// <summary>What it prints.</summary>
    public static async Task<string> DroneTube(params string[] arguments)
    {
        var program = Path.Combine(
            Sheet.Top,
            "samples",
            "DroneTube",
            "bin",
            Configuration,
            "net10.0",
            "DroneTube.dll"
        );
        using var process = Process.Start(
            new ProcessStartInfo("dotnet", [program, .. arguments]) { RedirectStandardOutput = true }
        )!;
        var said = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, said);
        return said;
    }
}
