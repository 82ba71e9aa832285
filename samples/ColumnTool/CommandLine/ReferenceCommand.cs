using System.CommandLine;
using ColumnTool.Answers;
using ColumnTool.Questions;
using ColumnTool.Verbs;
using Shared;

namespace ColumnTool.CommandLine;

/// <summary>reference: the page of all verbs, from what they are made of.</summary>
internal static class ReferenceCommand
{
    private static readonly (string Name, string Meaning, string Otherwise) TimeLimit = (
        "time-limit",
        "seconds, 0.1 to 1 000 000; a longer computation is cancelled",
        "120"
    );

    public static Command Create(RootCommand root)
    {
        var command = new Command(
            "reference",
            "Prints the options and the answer of every verb, as Markdown."
        );
        command.SetAction(parsed => Answer.Write(parsed, output => Write(output, root)));
        return command;
    }

    private static void Write(TextWriter page, RootCommand root)
    {
        page.Write(
            """
            # The verbs of ColumnTool

            Written by `dotnet run -c Release --project samples/ColumnTool -- reference`, from the table of verbs that the command line and
            [lines of JSON](json-lines.md) are made of; a test compares them. The rules that hold for all verbs are in
            [AirColumn in other programs](embedding.md). Sections, holes, points and resonances are counted from 1.

            """.ReplaceLineEndings("\n")
        );
        page.Write(
            "\nBesides the fields below, the JSON of every answer about a column has its provenance:\n\n| JSON field | unit | meaning |\n|---|---|---|\n"
        );
        WriteRows(page, Provenances.Rows(true));
        foreach (var verb in AllVerbs.List)
        {
            Describe(page, verb);
        }

        foreach (var command in root.Subcommands.Where(one => AllVerbs.Find(one.Name) is null))
        {
            page.Write($"\n## `{command.Name}`\n\n{command.Description}\n");
            var options = command.Options.OrderBy(option => option is TimeLimitOption).ToList();
            if (options.Count > 0)
            {
                page.Write("\n| option | meaning |\n|---|---|\n");
                foreach (var option in options)
                {
                    page.Write($"| `{option.Name}` | {Cell(option.Description ?? "")} |\n");
                }
            }
        }
    }

    private static void Describe(TextWriter page, Verb verb)
    {
        page.Write($"\n## `{verb.Name}`{(verb.IsAboutColumn ? " FILE" : "")}\n\n{verb.Summary}\n");
        page.Write("\n| option | in JSON | meaning | default |\n|---|---|---|---|\n");
        foreach (var parameter in verb.Parameters)
        {
            Row(parameter.Name, parameter.Meaning, parameter.Otherwise);
        }

        if (verb.IsAboutColumn)
        {
            Row(TimeLimit.Name, TimeLimit.Meaning, TimeLimit.Otherwise);
        }

        page.Write("\n| JSON field | unit | meaning |\n|---|---|---|\n");
        WriteRows(page, verb.Fields.SelectMany(field => field.Rows()));

        page.Write("| `warnings[]` | text | cautions to read before relying on the answer |\n");
        if (!verb.IsAboutColumn)
        {
            WriteRows(page, Provenances.Rows(false));
        }

        if (verb.IsCsv)
        {
            page.Write($"\nCSV: `{string.Join(',', verb.CsvHeader)}`, in the same units.\n");
        }

        void Row(string name, string meaning, string otherwise) =>
            page.Write($"| `--{name}` | `{Words.Camel(name)}` | {Cell(meaning)} | {Cell(otherwise)} |\n");
    }

    private static void WriteRows(
        TextWriter page,
        IEnumerable<(string Path, string Unit, string Meaning)> rows
    )
    {
        foreach (var (path, unit, meaning) in rows)
        {
            page.Write($"| `{path}` | {unit} | {Cell(meaning)} |\n");
        }
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
