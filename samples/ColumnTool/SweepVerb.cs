using System.CommandLine;
using System.Globalization;
using AirColumn.Acoustics;
using AirColumn.Pitches;
using AirColumn.Resonances;
using Shared;

namespace ColumnTool;

/// <summary>sweep FILE…: the resonances of many documents, a row each, written as they are found, on all cores.</summary>
internal static class SweepVerb
{
    private const string Header = "file,resonance,frequency_hz,magnitude,q,pitch,cents";
    private const int UsualCount = 8;

    public static Command Create()
    {
        var files = new Argument<string[]>("FILE")
        {
            Description = "Column documents.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var list = new Option<string?>("--list")
        {
            Description = "A file that names more of them, one a line; - reads it from the standard input.",
        };
        var count = Options.WholeNumber("--count", $"How many of each; {UsualCount} if left out.", 1, 10_000);
        var reference = ReferenceOption.Create();
        var verb = new Command(
            "sweep",
            "Resonances of many columns as CSV, the rows of each as soon as they are there, in any order of documents. One that cannot be answered is named on the error stream; the others are answered."
        )
        {
            files,
            list,
            count,
            reference,
        };
        verb.SetAction(
            (parsed, cancellation) =>
            {
                var names = Names(parsed.GetValue(files) ?? [], parsed.GetValue(list));
                var tuning = ReferenceOption.Tuning(parsed, reference);
                var most = parsed.GetValue(count) ?? UsualCount;
                return Task.FromResult(Sweep(parsed, names, most, tuning, cancellation));
            }
        );
        return verb;
    }

    private static IEnumerable<string> Names(string[] files, string? list)
    {
        if (files.Length == 0 && list is null)
        {
            throw new BadInputException("Name column documents, or a file that lists them with --list.");
        }

        return list is null
            ? files
            : files.Concat(
                InputFile
                    .Read(list, stream => new StreamReader(stream).ReadToEnd())
                    .Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            );
    }

    private static int Sweep(
        ParseResult parsed,
        IEnumerable<string> names,
        int count,
        Tuning tuning,
        CancellationToken cancellation
    )
    {
        var (output, error) = (parsed.InvocationConfiguration.Output, parsed.InvocationConfiguration.Error);
        var limit = TimeLimitOption.Of(parsed)!;
        output.WriteLine(Header);
        var code = 0;
        foreach (var swept in Batch.Map(names, Resonances, cancellationToken: cancellation))
        {
            if (swept.Error is { } problem)
            {
                var (what, exit) = Told(swept.Question, problem);
                error.WriteLine($"error: {OneLine.Of(what)}");
                code = code == ConsoleProgram.Failure ? code : exit;
                continue;
            }

            output.Write(Rows(swept.Question, swept.Answer, tuning));
            output.Flush();
            foreach (var warning in swept.Answer.Warnings)
            {
                error.WriteLine($"warning: {OneLine.Of($"{swept.Question}: {warning}")}");
            }
        }

        return code;

        // Each has all of the time: one that needs more must not take that of the others.
        ResonanceList Resonances(string name, CancellationToken cancellationToken)
        {
            using var time = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
            time.CancelAfter(limit.Limit(parsed));
            return ColumnFile.Read(name).FirstResonances(count, time.Token);
        }

        (string What, int ExitCode) Told(string name, Exception problem) =>
            problem switch
            {
                BadInputException => (problem.Message, ConsoleProgram.BadInput),
                OperationCanceledException => ($"{name}: {limit.IsOver(parsed)}", ConsoleProgram.BadInput),
                _ => ($"{name}: {problem.GetType().Name}: {problem.Message}", ConsoleProgram.Failure),
            };
    }

    private static string Rows(string name, ResonanceList resonances, Tuning tuning) =>
        string.Concat(
            resonances.Select(
                (resonance, i) =>
                {
                    var reading = ResonancesVerb.Reading(resonance, tuning);
                    return string.Create(
                        CultureInfo.InvariantCulture,
                        $"{Quoted(name)},{i + 1},{resonance.Frequency.Hertz:R},{ResonancesVerb.Magnitude(resonance):R},{resonance.QualityFactor:R},{reading?.Pitch},{reading?.Cents:R}\n"
                    );
                }
            )
        );

    private static string Quoted(string text) =>
        text.AsSpan().ContainsAny(",\"\r\n") ? $"\"{text.Replace("\"", "\"\"")}\"" : text;
}
