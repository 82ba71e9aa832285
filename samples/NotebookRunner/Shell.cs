using System.Diagnostics;

namespace NotebookRunner;

/// <summary>Runs a program to its end.</summary>
public static class Shell
{
    /// <summary>Runs dotnet with arguments in a folder.</summary>
    /// <returns>What it printed.</returns>
    /// <exception cref="InvalidOperationException">It failed; the message holds what it said.</exception>
    public static string Dotnet(string folder, params ReadOnlySpan<string> arguments) =>
        Run("dotnet", folder, arguments);

    /// <summary>Runs a program with arguments in a folder.</summary>
    /// <returns>What it printed.</returns>
    /// <exception cref="InvalidOperationException">It failed; the message holds what it said.</exception>
    public static string Run(string program, string folder, params ReadOnlySpan<string> arguments)
    {
        var start = new ProcessStartInfo(program)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        // What the build that runs us has set is not meant for the one below us.
        foreach (
            var name in start
                .Environment.Keys.Where(k => k.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase))
                .ToList()
        )
        {
            start.Environment.Remove(name);
        }

        // Pages and notebooks show what is printed where numbers have a decimal point.
        start.Environment["LC_ALL"] = "C.UTF-8";
        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        // The compiler that is running already is much faster than one that begins.
        start.Environment["UseSharedCompilation"] = "true";
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException(
                $"{program} {string.Join(' ', start.ArgumentList)} ended with {process.ExitCode}.\n{output}\n{error.Result}"
            );
        }

        return output;
    }
}
