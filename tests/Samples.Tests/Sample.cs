extern alias columntool;
using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using System.Text;
using Shared;

namespace Samples.Tests;

/// <summary>A sample program that was built with these tests.</summary>
internal static class Sample
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    /// <summary>How these tests and the programs were built.</summary>
    public static string Configuration =>
        typeof(Sample).Assembly.GetCustomAttribute<AssemblyConfigurationAttribute>()!.Configuration;

    /// <summary>Runs ColumnTool within this process.</summary>
    /// <param name="input">Its standard input.</param>
    /// <param name="arguments">Its arguments, one text each.</param>
    public static Outcome ColumnTool(string input, params string[] arguments) =>
        ColumnToolIn("de-DE", input, arguments);

    /// <summary>The same on a thread of another country.</summary>
    public static Outcome ColumnToolIn(string culture, string input, params string[] arguments)
    {
        // It answers straight into the output of its process.
        if (arguments is ["lines", ..] && !arguments.Contains("--help"))
        {
            return ColumnToolProcess(input, arguments);
        }

        return Within(
            culture,
            arguments,
            (output, error) =>
            {
                columntool::Shared.StandardInput.Give(new MemoryStream(Encoding.UTF8.GetBytes(input)));
                return columntool::Shared.ConsoleProgram.Run(
                    columntool::ColumnTool.CommandLine.Root.Create(),
                    arguments,
                    output,
                    error
                );
            }
        );
    }

    /// <summary>What ColumnTool answers to lines, as its verb of that name, within this process.</summary>
    public static string Lines(string requests, int jobs = 2)
    {
        using var output = new MemoryStream();
        using var input = new MemoryStream(Encoding.UTF8.GetBytes(requests));
        using (
            var server = new columntool::ColumnTool.Lines.LineServer(
                output,
                new columntool::ColumnTool.Lines.LineServerOptions(jobs, 120, true)
            )
        )
        {
            server.Run(input);
        }

        return Encoding.UTF8.GetString(output.ToArray());
    }

    /// <summary>Runs ColumnTool as a process of its own, on a machine whose language has a decimal comma.</summary>
    public static Outcome ColumnToolProcess(string input, params string[] arguments) =>
        Run("ColumnTool", input, Country("de_DE.UTF-8"), arguments);

    /// <summary>Runs ColumnTool without an output.</summary>
    public static Outcome ColumnToolWithClosedOutput(params string[] arguments) =>
        Run(
            new ProcessStartInfo(
                "sh",
                ["-c", "exec dotnet exec \"$0\" \"$@\" >&-", Program("ColumnTool"), .. arguments]
            ),
            "",
            []
        );

    /// <summary>Runs ColumnTool with settings of the runtime, such as which vectors it may use.</summary>
    public static Outcome ColumnToolWith(
        Dictionary<string, string> settings,
        string input,
        params string[] arguments
    ) => Run("ColumnTool", input, settings, arguments);

    /// <summary>Runs DroneTube as on a machine whose language has a decimal comma, as a process of its own.</summary>
    public static Outcome DroneTubeProcess(params string[] arguments) =>
        Run("DroneTube", "", Country("de_DE.UTF-8"), arguments);

    /// <summary>Runs DroneTube within this process, and gives it answers.</summary>
    public static Outcome DroneTubeAsking(string input, params string[] arguments) =>
        Within(
            "de-DE",
            arguments,
            (output, error) =>
            {
                StandardInput.Give(new MemoryStream(Encoding.UTF8.GetBytes(input)));
                return ConsoleProgram.Run(global::DroneTube.Verbs.Root(), arguments, output, error);
            }
        );

    /// <summary>Runs DroneTube without an input.</summary>
    public static Outcome DroneTubeWithClosedInput(params string[] arguments) =>
        WithClosedInput("DroneTube", arguments);

    /// <summary>Runs ColumnTool without an input.</summary>
    public static Outcome ColumnToolWithClosedInput(params string[] arguments) =>
        WithClosedInput("ColumnTool", arguments);

    /// <summary>Starts ColumnTool, to be spoken with.</summary>
    public static Process ColumnToolStarted(params string[] arguments) =>
        Process.Start(
            Redirected(new ProcessStartInfo("dotnet", ["exec", Program("ColumnTool"), .. arguments]))
        )!;

    /// <summary>Runs another program that is given the command that starts ColumnTool behind its arguments.</summary>
    public static Outcome WithColumnTool(string program, params string[] arguments) =>
        Run(new ProcessStartInfo(program, [.. arguments, "dotnet", "exec", Program("ColumnTool")]), "", []);

    private static Outcome WithClosedInput(string program, string[] arguments) =>
        Run(
            new ProcessStartInfo(
                "sh",
                ["-c", "exec dotnet exec \"$0\" \"$@\" <&-", Program(program), .. arguments]
            ),
            "",
            []
        );

    /// <summary>The same within this process: faster, since it is compiled but once.</summary>
    public static Outcome DroneTube(params string[] arguments) => DroneTubeAsking("", arguments);

    private static Outcome Within(string culture, string[] arguments, Func<Stream, Stream, int> run)
    {
        // Not disposed of: a run that hangs may write into them later.
        var (output, error) = (new MemoryStream(), new MemoryStream());
        var exitCode = 0;
        Exception? thrown = null;
        var thread = new Thread(() =>
        {
            try
            {
                exitCode = run(output, error);
            }
            catch (Exception problem)
            {
                thrown = problem;
            }
        })
        {
            CurrentCulture = CultureInfo.GetCultureInfo(culture),
            IsBackground = true,
        };
        thread.Start();
        if (!thread.Join(Patience))
        {
            Assert.Fail($"{string.Join(' ', arguments)} did not end within {Patience}.");
        }

        Assert.Null(thrown);
        return new Outcome(exitCode, Text(output), Text(error));

        static string Text(MemoryStream stream) => Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>Whether a program was built to have the cultures of all countries, and not just the invariant one.</summary>
    public static bool HasCultures(string name)
    {
        var settings = File.ReadAllText(Path.ChangeExtension(Program(name), ".runtimeconfig.json"));
        return !settings.Contains("System.Globalization.Invariant", StringComparison.Ordinal);
    }

    // Without the last one, a machine that has no data of cultures could pass for one in any country.
    private static Dictionary<string, string> Country(string culture) =>
        new()
        {
            ["LANG"] = culture,
            ["LC_ALL"] = culture,
            ["DOTNET_SYSTEM_GLOBALIZATION_INVARIANT"] = "0",
        };

    private static string Program(string name) =>
        typeof(Sample)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(data => data.Key == name)
            .Value!;

    private static Outcome Run(
        string name,
        string input,
        Dictionary<string, string> environment,
        string[] arguments
    ) => Run(new ProcessStartInfo("dotnet", ["exec", Program(name), .. arguments]), input, environment);

    private static ProcessStartInfo Redirected(ProcessStartInfo start)
    {
        var utf8 = new UTF8Encoding(false);
        start.RedirectStandardInput = true;
        start.RedirectStandardOutput = true;
        start.RedirectStandardError = true;
        start.StandardInputEncoding = utf8;
        start.StandardOutputEncoding = utf8;
        start.StandardErrorEncoding = utf8;
        return start;
    }

    private static Outcome Run(ProcessStartInfo start, string input, Dictionary<string, string> environment)
    {
        foreach (var (key, value) in environment)
        {
            start.Environment[key] = value;
        }

        using var process = Process.Start(Redirected(start))!;
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
            Assert.Fail($"{string.Join(' ', start.ArgumentList)} did not end within {Patience}.");
        }

        return new Outcome(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
    }
}
