using System.CommandLine;
using System.Text;
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
        var output = new OutputFile(
            "--out",
            "The file to write, as HTML; a browser prints it, also to PDF. [default: beside the parts file, with the note in its name; - is the standard output]",
            ".html"
        );
        var command = new Command(
            "sheet",
            "Writes a build sheet with the cuts, a drawing, each step with its picture, the trim table and cautions. Read it on a phone or print it."
        )
        {
            file.One,
            note,
            output.Name,
            output.Force,
        };
        foreach (var option in room.All.Concat(file.Options).Append(units))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var shown = units.Apply(parsed);
            var pitch = parsed.GetRequiredValue(note)!.Value;
            var parts = parsed.GetRequiredValue(file.One);
            var path = FileNames.ForPage(parsed, output, parts, FileNames.Of(pitch));
            var tube = file.Read(parsed);
            var build = Planned.Build(tube, pitch, room, parsed);
            var title = BuildSheet.Title(tube.Name, build.Note);
            var page = BuildSheet.Html(build, title, shown, TimeLimitOption.Token(parsed));
            if (path == "-")
            {
                Answer.Write(parsed, text => text.Write(page));
                return;
            }

            // What to cut is said before the file is written, which may fail.
            Answer.Write(parsed, text => text.Write(Summary(build)));
            output.Write(parsed, path, stream => stream.Write(Encoding.UTF8.GetBytes(page)));
            Answer.Write(
                parsed,
                text =>
                    text.WriteLine(
                        $"The build sheet is {path}. Open it in a browser; to print it or make a PDF, print from there."
                    )
            );
        });
        return command;
    }

    private static string Summary(TubeBuild build) =>
        $"{build.ExplanationIn(Show.Units)}\nCut {build.FirstLength!.In(Show.Units)} first, then play and trim.\n";
}
