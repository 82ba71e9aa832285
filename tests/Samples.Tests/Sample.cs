using System.Diagnostics;
using System.Reflection;
using System.Text;

namespace Samples.Tests;

/// <summary>A sample program that was built with these tests, run as a process of its own.</summary>
internal static class Sample
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    /// <summary>Runs ColumnTool.</summary>
    /// <param name="input">Its standard input.</param>
    /// <param name="arguments">Its arguments, one text each.</param>
    public static Outcome ColumnTool(string input, params string[] arguments) =>
        Run("ColumnTool", input, new Dictionary<string, string>(), arguments);

    /// <summary>Runs ColumnTool as on a machine in another country.</summary>
    public static Outcome ColumnToolIn(string culture, string input, params string[] arguments) =>
        Run(
            "ColumnTool",
            input,
            new Dictionary<string, string> { ["LANG"] = culture, ["LC_ALL"] = culture },
            arguments
        );

    /// <summary>Runs DroneTube as on a machine whose language has a decimal comma.</summary>
    public static Outcome DroneTube(params string[] arguments) =>
        Run(
            "DroneTube",
            "",
            new Dictionary<string, string> { ["LANG"] = "de_DE.UTF-8", ["LC_ALL"] = "de_DE.UTF-8" },
            arguments
        );

    private static Outcome Run(
        string name,
        string input,
        Dictionary<string, string> environment,
        string[] arguments
    )
    {
        var program = typeof(Sample)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(data => data.Key == name)
            .Value!;
        var utf8 = new UTF8Encoding(false);
        var start = new ProcessStartInfo("dotnet", ["exec", program, .. arguments])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = utf8,
            StandardOutputEncoding = utf8,
            StandardErrorEncoding = utf8,
        };
        foreach (var (key, value) in environment)
        {
            start.Environment[key] = value;
        }

        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        try
        {
            process.StandardInput.Write(input);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It ended without reading its input, as it may.
        }

        if (!process.WaitForExit(Patience))
        {
            process.Kill();
            Assert.Fail($"{name} {string.Join(' ', arguments)} did not end within {Patience}.");
        }

        return new Outcome(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
    }
}
