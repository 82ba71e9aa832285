using System.CommandLine;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tubes;
using Shared;

namespace DroneTube;

/// <summary>The verb 'sheet': a parts file and a note in, a build sheet for the bench out.</summary>
internal static class SheetCommand
{
    public static Command Create()
    {
        var file = new TubeFile();
        var room = new RoomOptions();
        var units = UnitsOption.Create();
        var note = TubeFile.Note();
        var output = new Option<string?>("--out")
        {
            Description =
                "Where to write it: HTML, or PDF if the name ends so. [default: the name of the parts file with .html; - is the standard output]",
        };
        var command = new Command(
            "sheet",
            "A build sheet: drawing, cut list, fit-up, trim table, cautions; to print or to read on a phone."
        )
        {
            file.One,
            note,
            output,
        };
        foreach (var option in room.All.Concat(file.Options).Append(units))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var shown = units.Apply(parsed);
            var tube = file.Read(parsed);
            var build = Planned.Build(tube, parsed.GetRequiredValue(note)!.Value, room, parsed);
            var title = tube.Name.Length > 0 ? $"{tube.Name} on {build.Note}" : "";
            var path = parsed.GetValue(output) ?? PathOf(parsed.GetRequiredValue(file.One));
            if (path.Length == 0)
            {
                throw new BadInputException("--out is empty; name a file, or - for the standard output.");
            }

            var parts = parsed.GetRequiredValue(file.One);
            if (path != "-" && parts != "-" && Path.GetFullPath(path) == Path.GetFullPath(parts))
            {
                throw new BadInputException(
                    $"--out would be the parts file itself, '{parts}'; name another file."
                );
            }

            if (path == "-")
            {
                Answer.Write(parsed, text => text.Write(BuildSheet.Html(build, title, shown)));
                return;
            }

            try
            {
                if (path.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase))
                {
                    File.WriteAllBytes(path, BuildSheet.Pdf(build, title, shown));
                }
                else
                {
                    File.WriteAllText(path, BuildSheet.Html(build, title, shown));
                }
            }
            catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
            {
                throw new FailureException($"'{path}' cannot be written: {problem.Message}");
            }

            Answer.Write(parsed, text => text.Write(Summary(build, path)));
        });
        return command;
    }

    private static string PathOf(string parts) => parts == "-" ? "-" : Path.ChangeExtension(parts, ".html");

    private static string Summary(TubeBuild build, string path) =>
        $"{build.Explanation}\n"
        + $"Cut {Show.Both(build.FirstCut!.Cut)} first, then play and trim.\n"
        + $"The build sheet is {path}.\n";
}
