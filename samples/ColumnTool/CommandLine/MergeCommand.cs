using System.CommandLine;
using System.Globalization;
using System.Text;
using Shared;
using Shared.Studies;

namespace ColumnTool.CommandLine;

/// <summary>merge: the parts of a study as one file.</summary>
internal static class MergeCommand
{
    public static Command Create()
    {
        var folders = new Argument<string[]>("DIR")
        {
            Description = "Folders that study has written into.",
            Arity = ArgumentArity.OneOrMore,
        };
        var file = new OutputFile(
            "--out",
            "The file to write, ending in .csv or .parquet. Its provenance is written next to it, in a file of the same name with .json added.",
            [.. RowFormat.All.Select(format => format.Extension)]
        );
        var command = new Command(
            "merge",
            "Puts the parts of a study together in one file, if every item is there exactly once and all parts are of one study and one version. The same study gives the same bytes, however it was divided."
        )
        {
            folders,
            file.Name,
            file.Force,
        };
        command.SetAction(parsed =>
        {
            var path = file.Checked(
                parsed,
                parsed.GetValue(file.Name)
                    ?? throw new BadInputException(
                        "Name the file to write with --out, such as --out study.csv."
                    )
            );
            var format = RowFormat.All.Single(one =>
                path.EndsWith(one.Extension, StringComparison.OrdinalIgnoreCase)
            );
            var merge = new StudyMerge(parsed.GetValue(folders) ?? []);
            if (merge.By.Count > 1)
            {
                ConsoleProgram.Warn(
                    parsed,
                    [
                        $"The parts were computed by {merge.By.Count} kinds of machines, whose last digits may differ; the manifest names them.",
                    ]
                );
            }

            file.Write(parsed, path, stream => merge.Write(stream, format));
            using (var written = File.OpenRead(path))
            {
                var manifest = merge.Manifest(Path.GetFileName(path), written);
                using var beside = DraftFile.Begin(
                    $"{path}.json",
                    stream => stream.Write(Encoding.UTF8.GetBytes(manifest))
                );
                beside.Keep(true);
            }

            Answer.Write(
                parsed,
                output =>
                    output.Write(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{merge.Study.Count} items of {merge.Parts} parts are in '{path}', {merge.Errors} of them with an error.\n"
                        )
                    )
            );
        });
        return command;
    }
}
