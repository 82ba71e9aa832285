using System.CommandLine;
using ColumnTool.Questions;
using Shared;

namespace ColumnTool.CommandLine;

/// <summary>A kind of question as a verb of the command line.</summary>
internal static class VerbCommand
{
    public static Command Create(Verb verb)
    {
        var command = new Command(verb.Name, verb.Summary);
        Argument<string>? file = null;
        if (verb.IsAboutColumn)
        {
            file = new Argument<string>("FILE")
            {
                Description = "The column document; - reads it from the standard input.",
            };
            command.Add(file);
        }

        var given = new GivenOptions(command, verb.Parameters);
        var json = new Option<bool>("--json")
        {
            Description = verb.IsCsv ? "Print JSON instead of CSV." : "Print JSON instead of a table.",
        };
        command.Add(json);
        if (verb.IsAboutColumn)
        {
            command.Add(new TimeLimitOption(Advice.Expensive));
        }

        command.SetAction(parsed =>
            Run(() =>
            {
                var source = new ColumnSource();
                var arguments = given.Arguments(
                    parsed,
                    asked => source.OfFile(parsed.GetRequiredValue(file!), asked),
                    TimeLimitOption.Token(parsed)
                );
                var answer = verb.Ask(arguments);
                var text = parsed.GetValue(json) ? JsonText.Of(answer.WriteMembers) : answer.Text();
                ConsoleProgram.Warn(parsed, answer.Warnings);
                Answer.Write(parsed, output => output.Write(text));
            })
        );
        return command;
    }

    // A problem ends the program with its exit code; a fault is none of the user's, and looks like one.
    private static void Run(Action action)
    {
        try
        {
            action();
        }
        catch (Exception thrown) when (thrown is not (OperationCanceledException or FailureException))
        {
            var problem = Problem.Of(thrown);
            throw problem.Kind switch
            {
                ProblemKind.Fault => thrown,
                _ when problem.ExitCode == ConsoleProgram.Failure => new FailureException(problem.Line),
                _ => new BadInputException(problem.Line, problem.ExitCode),
            };
        }
    }
}
