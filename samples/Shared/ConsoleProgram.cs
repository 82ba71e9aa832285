using System.CommandLine;
using System.CommandLine.Invocation;
using System.Globalization;
using System.Text;
using AirColumn.Documents;

namespace Shared;

/// <summary>
/// Runs a command line: errors in one or two lines on the error stream, exit code 0, 1 for a failure, 2 for bad input.
/// </summary>
/// <remarks>
/// Bad input is only what a parser or a <see cref="BadInputException"/> calls so: an exception that nobody expected is a
/// fault of the program, and must not look like one of the user. A verb computes everything first and writes to
/// <c>InvocationConfiguration.Output</c> last, so that a failed run
/// writes nothing. Both streams are UTF-8 with '\n' on every system.
/// </remarks>
internal static class ConsoleProgram
{
    /// <summary>The exit code of a question without an answer, and of a fault.</summary>
    public const int Failure = 1;

    /// <summary>The exit code of bad input.</summary>
    public const int BadInput = 2;

    private const int MostWarnings = 20;

    // Its own name, whatever the file is called that runs it.
    private static readonly string program = typeof(ConsoleProgram).Assembly.GetName().Name!;

    public static int Run(RootCommand root, string[] arguments) =>
        Run(
            root,
            arguments,
            Console.OpenStandardOutput(),
            Console.OpenStandardError(),
            !Console.IsErrorRedirected
        );

    /// <summary>The same into streams of the caller, which it closes.</summary>
    /// <param name="root">The command line.</param>
    /// <param name="arguments">What was written there.</param>
    /// <param name="to">For answers.</param>
    /// <param name="errors">For what else there is to say.</param>
    /// <param name="isSeen">Whether somebody waits there, who is shown how far it is.</param>
    public static int Run(RootCommand root, string[] arguments, Stream to, Stream errors, bool isSeen = false)
    {
        using var output = Utf8(to);
        using var error = Utf8(errors);
        try
        {
            // An argument beginning with '@' is text like any other, not the name of a file with more arguments.
            var parsed = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (WhatIsWrong(root, parsed, arguments) is { } wrong)
            {
                error.WriteLine($"error: {OneLine.Of(wrong)}");
                error.WriteLine($"'{Names(root, parsed)} --help' lists what is possible.");
                return BadInput;
            }

            var code = Invoke(parsed, output, error, isSeen);
            output.Flush();
            return code;
        }
        catch (BadInputException problem)
        {
            error.WriteLine($"error: {OneLine.Of(problem)}");
            return problem.ExitCode;
        }
        catch (OperationCanceledException)
        {
            error.WriteLine("error: Stopped before the end.");
            return Failure;
        }
        // A program's last resort: a sentence instead of a stack trace.
#pragma warning disable CA1031
        catch (Exception problem)
        {
            var kind = problem is FailureException or IOException ? "" : $"{problem.GetType().Name}: ";
            error.WriteLine($"error: {kind}{OneLine.Of(problem)}");
            return Failure;
        }
#pragma warning restore CA1031
    }

    private static int Invoke(ParseResult parsed, TextWriter output, TextWriter error, bool isSeen)
    {
        if (TimeLimitOption.Of(parsed) is not { } limit)
        {
            return parsed.Invoke(Into(output, error));
        }

        using var watch = new Watch(limit.Limit(parsed), error, isSeen);
        limit.Running = watch;
        var (answers, errors) = (new FirstWrite(output, watch.Answers), new FirstWrite(error, watch.Answers));
        return watch.TryRun(() => parsed.Invoke(Into(answers, errors)), out var code)
            ? code
            : throw new FailureException(limit.IsOver(parsed));
    }

    private static InvocationConfiguration Into(TextWriter output, TextWriter error) =>
        new()
        {
            Output = output,
            Error = error,
            EnableDefaultExceptionHandler = false,
        };

    /// <summary>Prints what the user should know of an answer.</summary>
    public static void Warn(ParseResult parsed, IReadOnlyCollection<string> warnings)
    {
        var error = parsed.InvocationConfiguration.Error;
        foreach (var warning in warnings.Take(MostWarnings))
        {
            error.WriteLine($"warning: {OneLine.Of(warning)}");
        }

        if (warnings.Count > MostWarnings)
        {
            error.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"warning: there are {warnings.Count - MostWarnings} more."
                )
            );
        }
    }

    private static string? WhatIsWrong(RootCommand root, ParseResult parsed, string[] arguments)
    {
        var command = parsed.CommandResult.Command;
        var isRun = parsed.Action == command.Action;
        if (!isRun && parsed.Action is not ParseErrorAction)
        {
            return null;
        }

        if (command != root && Slips.In(parsed, arguments, Names(root, parsed)) is { } slip)
        {
            return slip;
        }

        if (isRun)
        {
            return null;
        }

        var verbs = string.Join(", ", command.Subcommands.Select(subcommand => subcommand.Name));
        var (verb, are) = command.Subcommands.Count == 1 ? ("verb", "is") : ("verbs", "are");
        return (verbs.Length > 0, parsed.UnmatchedTokens) switch
        {
            (true, []) => $"Say what to do; the {verb} of {program} {are} {verbs}.",
            (true, [var first, ..]) => Nearest.IfNear(first, command.Subcommands.Select(one => one.Name))
                is { } meant
                ? $"'{first}' is not a verb of {program}; did you mean '{meant}'?"
                : $"'{first}' is not a verb of {program}; its {verb} {are} {verbs}.",
            (false, [var first, ..]) =>
                $"'{first}' is not an option of {Names(root, parsed)} or is one argument too many.",
            _ => parsed.Errors[0].Message,
        };
    }

    private static string Names(RootCommand root, ParseResult parsed)
    {
        var verb = parsed.CommandResult.Command;
        return verb == root ? program : $"{program} {verb.Name}";
    }

    private static StreamWriter Utf8(Stream stream) =>
        new(stream, new UTF8Encoding(false)) { NewLine = "\n" };
}
