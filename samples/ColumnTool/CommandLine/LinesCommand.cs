using System.CommandLine;
using ColumnTool.Lines;
using Shared;

namespace ColumnTool.CommandLine;

/// <summary>lines: many questions to one process, a line of JSON each.</summary>
internal static class LinesCommand
{
    private const double UsualLimit = 120;

    public static Command Create()
    {
        var jobs = Jobs.Create();
        var limit = Options.Number(
            "--time-limit",
            "The seconds that a question may take if it has no time limit of its own. [default: 120]",
            0.1,
            1e6,
            "s"
        );
        var noFiles = new Option<bool>("--no-files")
        {
            Description = "Refuse requests that name files: each request must contain its document.",
        };
        var command = new Command(
            "lines",
            "Answers questions from the standard input, one JSON object per line, and writes one line for each answer. Answers come as soon as they are ready, in any order: docs/json-lines.md."
        )
        {
            jobs,
            limit,
            noFiles,
        };
        command.SetAction(parsed =>
        {
            if (StandardInput.IsClosed)
            {
                throw new BadInputException(StandardInput.SaysClosed, 3);
            }

            using var input = StandardInput.Open();
            using var output = Console.OpenStandardOutput();
            using var server = new LineServer(
                output,
                new LineServerOptions(
                    Jobs.Of(parsed, jobs),
                    parsed.GetValue(limit) ?? UsualLimit,
                    !parsed.GetValue(noFiles)
                )
            );
            server.Run(input);
        });
        return command;
    }
}

/// <summary>The option that says how many questions are answered at once.</summary>
internal static class Jobs
{
    public static Option<int?> Create() =>
        Options.WholeNumber("--jobs", "The number answered at once. [default: one for each core]", 1, 256);

    public static int Of(ParseResult parsed, Option<int?> option) =>
        parsed.GetValue(option) ?? Math.Min(Environment.ProcessorCount, 256);
}
