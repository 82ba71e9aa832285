using System.CommandLine;
using System.Text;
using System.Text.Json;
using ColumnTool.Answers;
using ColumnTool.Lines;
using ColumnTool.Questions;
using ColumnTool.Verbs;
using Shared;

namespace ColumnTool.CommandLine;

/// <summary>sweep: the resonances of many documents, each as soon as it is there.</summary>
internal static class SweepCommand
{
    public static Command Create()
    {
        var verb = AllVerbs.Find("resonances")!;
        var files = new Argument<string[]>("FILE")
        {
            Description = "Column documents.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var list = new Option<string?>("--list")
        {
            Description =
                "A file with more names of documents, one per line; - reads the list from the standard input.",
        };
        var command = new Command(
            "sweep",
            "Resonances of many columns as CSV. The rows of each document come as soon as they are ready, so documents come in any order. A document that cannot be answered is named on the error stream; the others are answered."
        )
        {
            files,
            list,
        };
        var given = new GivenOptions(command, verb.Parameters);
        var jobs = Jobs.Create();
        var json = new Option<bool>("--json")
        {
            Description = "Print a line of JSON for each document, answered or not, as the verb lines does.",
        };
        command.Add(jobs);
        command.Add(json);
        command.Add(new TimeLimitOption(Advice.Expensive));
        command.SetAction(parsed =>
        {
            var named = parsed.GetValue(files) ?? [];
            if (named.Length == 0 && parsed.GetValue(list) is null)
            {
                throw new BadInputException("Name column documents, or a file that lists them with --list.");
            }

            try
            {
                var sweep = new Sweep(parsed, verb, given.Values(parsed), parsed.GetValue(json));
                return sweep.Run(named, parsed.GetValue(list), Jobs.Of(parsed, jobs));
            }
            catch (Problem problem)
            {
                throw new BadInputException(problem.Line, problem.ExitCode);
            }
            catch (UnwritableException problem)
            {
                throw new FailureException(problem.Message);
            }
        });
        return command;
    }

    private sealed class Sweep(
        ParseResult parsed,
        Verb verb,
        IReadOnlyList<(Parameter, object)> values,
        bool isJson
    )
    {
        private readonly TimeLimitOption limit = TimeLimitOption.Of(parsed)!;
        private readonly ColumnSource source = new();
        private readonly Lock writing = new();
        private readonly TextWriter output = parsed.InvocationConfiguration.Output;
        private readonly TextWriter error = parsed.InvocationConfiguration.Error;
        private int code;

        public int Run(string[] files, string? list, int jobs)
        {
            // Options that cannot be are said once, before any document.
            Tunings.Of(new Arguments(values, _ => null!, true, default));
            if (!isJson)
            {
                WriteOut($"file,resonance,{string.Join(',', verb.CsvHeader)}\n");
            }

            // Each document has its time; the whole has all there is.
            limit.Running?.Answers();
            using var crew = new Crew<string>(jobs, Answer);
            foreach (var file in files)
            {
                crew.Add(file, 2 * file.Length);
            }

            if (list is not null)
            {
                ColumnSource.File(
                    list,
                    stream =>
                    {
                        using var names = new StreamReader(stream, new UTF8Encoding(false));
                        while (names.ReadLine() is { } name)
                        {
                            if (name.Trim() is { Length: > 0 } file)
                            {
                                crew.Add(file, 2 * file.Length);
                            }
                        }

                        return true;
                    }
                );
            }

            crew.Finish();
            return code;
        }

        // Each has all of the time: one that needs more must not take that of the others.
        private void Answer(string file, int number)
        {
            // Whatever one document does, the others are answered.
#pragma warning disable CA1031
            try
            {
                using var time = new CancellationTokenSource(limit.Limit(parsed));
                var arguments = new Arguments(values, asked => source.OfFile(file, asked), true, time.Token);
                Write(file, verb.Ask(arguments));
            }
            catch (OperationCanceledException)
            {
                Write(file, new Problem(ProblemKind.Time, limit.IsOver(parsed), file));
            }
            catch (Exception problem) when (problem is not UnwritableException)
            {
                Write(file, Problem.Of(problem, file));
            }
#pragma warning restore CA1031
        }

        private void Write(string file, VerbAnswer answer)
        {
            if (isJson)
            {
                WriteLine(line => line.Of(Id(file), verb.Name, answer.WriteMembers));
                return;
            }

            var name = Csv.Quoted(file);
            var rows = new StringBuilder();
            var i = 0;
            foreach (var row in answer.CsvLines())
            {
                rows.Append(name).Append(',').Append(++i).Append(',').Append(row);
            }

            lock (writing)
            {
                WriteOut(rows.ToString());
                foreach (var warning in answer.Warnings)
                {
                    error.WriteLine($"warning: {OneLine.Of($"{file}: {warning}")}");
                }
            }
        }

        private void Write(string file, Problem problem)
        {
            lock (writing)
            {
                code = ConsoleProgram.Failure;
                if (!isJson)
                {
                    error.WriteLine($"error: {OneLine.Of(problem.Line)}");
                    return;
                }
            }

            WriteLine(line => line.Of(Id(file), problem));
        }

        private void WriteLine(Func<AnswerLine, ReadOnlyMemory<byte>> make)
        {
            using var line = new AnswerLine();
            var text = Encoding.UTF8.GetString(make(line).Span);
            lock (writing)
            {
                WriteOut(text);
            }
        }

        private void WriteOut(string text)
        {
            try
            {
                output.Write(text);
                output.Flush();
            }
            catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
            {
                throw new UnwritableException($"The output cannot be written: {problem.Message}");
            }
        }

        private static string Id(string file) => $"\"{JsonEncodedText.Encode(file)}\"";
    }

    // Not an IOException: while the list is read, those are the list's.
    private sealed class UnwritableException(string message) : Exception(message);
}
