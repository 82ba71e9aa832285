using System.CommandLine;
using System.Text;
using AirColumn;
using AirColumn.Documents;
using AirColumn.Workshop.Tubes;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>The verb 'column': a parts file in, the column document of the tube out, for every other program.</summary>
internal static class ColumnCommand
{
    public static Command Create()
    {
        var file = new TubeFile();
        var room = new RoomOptions();
        var note = TubeFile.Note();
        var cut = TubeFile.Cut();
        (note.Required, cut.Required) = (false, false);
        var output = new OutputFile(
            "--out",
            "The file to write, as JSON. [default: the standard output]",
            ".json"
        );
        var command = new Command(
            "column",
            "Writes the tube as a column document for ColumnTool, studies and other programs, with the open pipe cut for a note or to a length you give."
        )
        {
            file.One,
            note,
            cut,
            output.Name,
            output.Force,
        };
        foreach (var option in room.All.Concat(file.Options))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(output.Name) is { } named and not "-"
                ? output.Checked(parsed, named, parsed.GetRequiredValue(file.One))
                : "-";
            var (parts, air) = (file.Read(parsed), room.Air(parsed));
            var tube = Tube(
                parts.Assembly,
                parsed.GetValue(note),
                parsed.GetValue(cut),
                room.Tuning(parsed),
                air
            );
            var column = tube.ColumnIn(air);
            var json = new ColumnDocument(
                column.Bore,
                column.AirProfile,
                column.Options,
                parts.Name
            ).ToJson();
            if (path == "-")
            {
                Answer.Write(parsed, text => text.WriteLine(json));
                return;
            }

            output.Write(parsed, path, stream => stream.Write(Encoding.UTF8.GetBytes(json)));
            Answer.Write(
                parsed,
                text =>
                {
                    text.WriteLine($"The column document is {path}. Its sections, from the blown end:");
                    foreach (var (section, part) in tube.SectionParts.Index())
                    {
                        text.WriteLine(
                            part == tube.Assembly.FreePipe
                                ? $"  {section + 1}  {part.Name}, the open pipe"
                                : $"  {section + 1}  {part.Name}"
                        );
                    }
                }
            );
        });
        return command;
    }

    private static AssembledTube Tube(TubeAssembly assembly, Pitch? note, Length? cut, Tuning tuning, Air air)
    {
        try
        {
            return (note, cut) switch
            {
                ({ } drone, null) => OnNote(TubeBuilder.Exact(assembly, drone, tuning, air)),
                (null, { } length) => assembly.Assemble(length),
                _ => throw new BadInputException(
                    "Give either --note, the note to cut the open pipe for, or --cut, the length of the open pipe."
                ),
            };
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(OneLine.Of(problem));
        }
    }

    private static AssembledTube OnNote(ExactCut cut) =>
        cut.Exact?.Tube ?? throw new FailureException(cut.ExplanationIn(Show.Units));
}
