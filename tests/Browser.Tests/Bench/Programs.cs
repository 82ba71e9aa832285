extern alias columntool;
extern alias dronetube;
using System.Reflection;
using System.Text;

namespace Browser.Tests.Bench;

/// <summary>The programs that answer the same questions as the page, run within this process.</summary>
internal static class Programs
{
    public static string Configuration { get; } =
        typeof(Programs)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(data => data.Key == "Configuration")
            .Value!;

    /// <summary>What DroneTube prints.</summary>
    public static string DroneTube(params string[] arguments) =>
        Said(
            (output, error) =>
                dronetube::Shared.ConsoleProgram.Run(
                    dronetube::DroneTube.Verbs.Root(),
                    arguments,
                    output,
                    error
                )
        );

    /// <summary>What ColumnTool prints.</summary>
    public static string ColumnTool(params string[] arguments) =>
        Said(
            (output, error) =>
                columntool::Shared.ConsoleProgram.Run(
                    columntool::ColumnTool.CommandLine.Root.Create(),
                    arguments,
                    output,
                    error
                )
        );

    private static string Said(Func<Stream, Stream, int> run)
    {
        using var output = new MemoryStream();
        using var error = new MemoryStream();
        var code = run(output, error);
        Assert.True(code == 0, Encoding.UTF8.GetString(error.ToArray()));
        return Encoding.UTF8.GetString(output.ToArray());
    }
}
