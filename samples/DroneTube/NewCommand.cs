using System.CommandLine;
using System.Text;
using AirColumn.Workshop.Questions;
using Shared;

namespace DroneTube;

/// <summary>The verb 'new': questions one after the other, and a parts file from their answers.</summary>
internal static class NewCommand
{
    public static Command Create()
    {
        var file = new TubeFile();
        var output = new OutputFile(
            "--out",
            "The parts file to write. [default: named after the tube; - is the standard output]",
            ".json"
        );
        var command = new Command("new", "Asks for the parts of a tube and writes its parts file.")
        {
            output.Name,
            output.Force,
        };
        foreach (var option in file.Options)
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var named = parsed.GetValue(output.Name);
            if (named is not (null or "-"))
            {
                output.Checked(parsed, named);
            }

            var answered = Ask(parsed, TubeQuestions.Start(file.Catalogue(parsed)));
            var (text, path) = (answered.PartsFile!, named ?? FreeName(answered.Name));
            if (path == "-")
            {
                Answer.Write(parsed, to => to.Write(text));
                return;
            }

            try
            {
                output.Write(parsed, path, stream => stream.Write(Encoding.UTF8.GetBytes(text)));
            }
            catch (FailureException)
            {
                // Nobody answers all of that twice.
                Answer.Write(parsed, to => to.Write(text));
                throw;
            }

            Answer.Write(
                parsed,
                to =>
                    to.Write(
                        $"The parts file is {path}. For a build sheet:\nDroneTube sheet {(path.Contains(' ', StringComparison.Ordinal) ? $"\"{path}\"" : path)} --note D2\n"
                    )
            );
        });
        return command;
    }

    private static TubeQuestions Ask(ParseResult parsed, TubeQuestions questions)
    {
        var seen = parsed.InvocationConfiguration.Error;
        var isTyped = !Console.IsInputRedirected;
        // A console knows how its keyboard writes; a file is UTF-8.
        using var input = isTyped ? Console.In : new StreamReader(StandardInput.Open(), Encoding.UTF8);
        seen.WriteLine("An empty line takes the answer in [brackets]; < goes back to the question before.");
        while (questions.Next is { } question)
        {
            seen.Write($"{question} ");
            seen.Flush();
            var line = input.ReadLine();
            seen.Write(isTyped ? "" : "\n");
            questions = line?.Trim() switch
            {
                null => throw new BadInputException(
                    $"There is no answer to '{question.Text}': the standard input is closed or at its end. Nothing is written. Run it in a terminal, or give it a line for each question."
                ),
                "<" => questions.Back(),
                _ => With(line, question),
            };
        }

        return questions;

        TubeQuestions With(string line, Question question)
        {
            try
            {
                return questions.With(line);
            }
            catch (FormatException problem) when (isTyped)
            {
                seen.WriteLine(OneLine.Of(problem));
                return questions;
            }
            catch (FormatException problem)
            {
                // Further lines would answer other questions than they were meant for.
                throw new BadInputException(
                    $"Line {questions.Answers.Count + 1}, '{line.Trim()}', to '{question.Text}': {OneLine.Of(problem)} Nothing is written."
                );
            }
        }
    }

    // In the folder where it runs: the name in letters that any disk takes, and a number where that is taken.
    private static string FreeName(string name)
    {
        var letters = string.Concat(
            name.Trim().ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : '-')
        );
        var stem = string.Join('-', letters.Split('-', StringSplitOptions.RemoveEmptyEntries));
        stem = stem.Length == 0 ? "tube" : stem[..Math.Min(stem.Length, 60)];
        return Enumerable
            .Range(1, int.MaxValue)
            .Select(number => number == 1 ? $"{stem}.json" : Show.Text($"{stem}-{number}.json"))
            .First(path => !Path.Exists(path));
    }
}
