using System.CommandLine;
using System.Text;
using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tubes;
using Shared;

namespace DroneTube;

/// <summary>The verb 'template': a part of a parts file in, a page to print at full size out.</summary>
internal static class TemplateCommand
{
    public static Command Create()
    {
        var file = new TubeFile();
        var units = UnitsOption.Create();
        var part = new Option<string>("--part")
        {
            Description =
                "The name of the part: a pipe for its saw line, a bend for its arc, a hole for all holes of its pipe measured from the same end.",
            Required = true,
        };
        var output = new OutputFile(
            "--out",
            "The file to write, as HTML. [default: beside the parts file, with the part in its name; - is the standard output]",
            ".html"
        );
        var command = new Command(
            "template",
            "Writes a page to print at full size, to wrap round a pipe or lay a bend on: a saw line, finger holes, an arc."
        )
        {
            file.One,
            part,
            output.Name,
            output.Force,
        };
        foreach (var option in file.Options.Append(units))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var shown = units.Apply(parsed);
            var name = parsed.GetRequiredValue(part);
            var parts = parsed.GetRequiredValue(file.One);
            var path = FileNames.ForPage(parsed, output, parts, $"{FileNames.Of(name)}-template");
            var assembly = file.Read(parsed).Assembly;
            var page = Page(assembly, PlaceOf(assembly, name), shown);
            if (path == "-")
            {
                Answer.Write(parsed, text => text.Write(page));
                return;
            }

            output.Write(parsed, path, stream => stream.Write(Encoding.UTF8.GetBytes(page)));
            Answer.Write(
                parsed,
                text =>
                    text.WriteLine(
                        $"The template is {path}. Open it in a browser and print it at 100 %, not fitted to the page; measure its line first."
                    )
            );
        });
        return command;
    }

    private static int PlaceOf(TubeAssembly assembly, string name)
    {
        var names = assembly.Parts.Select(part => part.Name).ToList();
        var place = names.FindIndex(other => string.Equals(other, name, StringComparison.OrdinalIgnoreCase));
        return place >= 0
            ? place
            : throw new BadInputException(
                $"--part is '{name}'; the parts file has no part of that name. It has {string.Join(", ", names.Select(other => $"'{other}'"))}."
            );
    }

    private static string Page(TubeAssembly assembly, int part, AirColumn.Workshop.LengthUnits units)
    {
        try
        {
            return Templates.Of(assembly, part, units);
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(OneLine.Of(problem));
        }
    }
}
