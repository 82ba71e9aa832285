using System.CommandLine;
using System.Globalization;
using AirColumn.Documents;
using AirColumn.Studies;
using Shared;
using Shared.Studies;

namespace ColumnTool.CommandLine;

/// <summary>study: a share of a study document into a folder, part by part.</summary>
internal static class StudyCommand
{
    private const int LargestPart = 1_000_000;

    public static Command Create()
    {
        var file = new Argument<string>("FILE")
        {
            Description = "The study document (docs/studies.md); - reads it from the standard input.",
        };
        var shard = Options.Parsed<Shard?>(
            "--shard",
            "The share to compute, such as 3/8 for the third of eight. [default: the whole study]",
            text => Shard.Parse(text)
        );
        var folder = new Option<string?>("--out")
        {
            Description = "The folder for the parts; several shares may write into one.",
        };
        var parquet = new Option<bool>("--parquet")
        {
            Description = "Write each part as Apache Parquet too.",
        };
        var part = Options.WholeNumber(
            "--part",
            "The number of items in a part: the most that is lost if a machine dies. [default: 1000]",
            1,
            LargestPart
        );
        var resume = new Option<bool>("--resume")
        {
            Description = "Continue with what is in the folder: whole parts are kept, others are computed.",
        };
        var jobs = Jobs.Create();
        var command = new Command(
            "study",
            "Computes a share of a study document into a folder, part by part; a part is written whole or not at all. An item that cannot be computed has a row with the reason."
        )
        {
            file,
            shard,
            folder,
            parquet,
            part,
            resume,
            jobs,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(folder) is { Length: > 0 } named
                ? named
                : throw new BadInputException(
                    "Name the folder for the parts with --out, such as --out parts."
                );
            var study = ReadStudy(parsed.GetRequiredValue(file));
            var run = new StudyRun(
                PartFolder.Begin(path, study),
                parsed.GetValue(shard) ?? Shard.Whole,
                parsed.GetValue(part) ?? StudyRun.UsualPartSize,
                parsed.GetValue(parquet)
            );
            Run(parsed, run, path, parsed.GetValue(resume), Jobs.Of(parsed, jobs));
        });
        return command;
    }

    private static void Run(ParseResult parsed, StudyRun run, string path, bool resumes, int jobs)
    {
        var (toDo, damaged) = run.Left(resumes);
        ConsoleProgram.Warn(parsed, [.. damaged.Select(one => $"{one}; it is computed again.")]);
        var error = parsed.InvocationConfiguration.Error;
        var line = new ProgressLine(error, !Console.IsErrorRedirected, run.Items, run.Kept);
        try
        {
            run.Compute(toDo, jobs, _ => line.Next(), CancellationToken.None);
        }
        catch (FailureException problem)
        {
            throw new FailureException(
                $"{problem.Message} {run.Kept} of {run.Items} items are kept in '{path}'; make room or give leave to write there, then go on with the same command and --resume."
            );
        }
        finally
        {
            line.End();
        }

        if (run.Errors > 0)
        {
            ConsoleProgram.Warn(
                parsed,
                [$"{run.Errors} of {run.Items} items could not be computed in full; their rows say why."]
            );
        }

        Answer.Write(
            parsed,
            output =>
                output.Write(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{run.Kept} of {run.Items} items are in '{path}', {line.Done} of them computed now{(line.Done > 0 ? $", {line.Rate:0.#}/s" : "")}.\n"
                    )
                )
        );
    }

    private static Study ReadStudy(string path)
    {
        try
        {
            return InputFile.Read(
                path,
                stream =>
                {
                    using var bytes = new MemoryStream();
                    stream.CopyTo(bytes);
                    return Study.Parse(bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
                }
            );
        }
        catch (ColumnDocumentException problem)
        {
            throw new BadInputException($"{path}: {problem.Message}", DocumentError);
        }
    }

    // As of other verbs: docs/embedding.md lists the exit codes.
    private const int DocumentError = 4;
}
