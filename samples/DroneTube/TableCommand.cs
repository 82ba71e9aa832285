using System.CommandLine;
using System.Globalization;
using System.Text;
using AirColumn;
using AirColumn.Workshop;
using AirColumn.Workshop.Tubes;
using Shared;

namespace DroneTube;

/// <summary>The verb 'table': the cuts for all notes of a range.</summary>
internal static class TableCommand
{
    private const int MostNotes = 60;

    public static Command Create()
    {
        var file = new TubeFile();
        var room = new RoomOptions();
        var units = UnitsOption.Create();
        var from = Options.Parsed<Pitch?>(
            "--from",
            "The lowest note. [default: B1]",
            text => DroneNote.Parse(text)
        );
        var to = Options.Parsed<Pitch?>(
            "--to",
            "The highest note. [default: F2]",
            text => DroneNote.Parse(text)
        );
        var json = JsonOption();
        var command = new Command("table", "Finds how long to cut the open pipe for each note of a range.")
        {
            file.One,
            from,
            to,
            json,
        };
        foreach (var option in room.All.Concat(file.Options).Append(units))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            units.Apply(parsed);
            var (low, high) = (
                parsed.GetValue(from) ?? Pitch.Parse("B1"),
                parsed.GetValue(to) ?? Pitch.Parse("F2")
            );
            if (high.Number < low.Number || high.Number - low.Number >= MostNotes)
            {
                throw new BadInputException(
                    $"--from is {low} and --to {high}; --to must be as high or higher, by less than {MostNotes} semitones."
                );
            }

            var tube = file.Read(parsed);
            var builds = new List<TubeBuild>();
            var progress = new Progress(parsed, high.Number - low.Number + 1);
            for (var number = low.Number; number <= high.Number; number++)
            {
                builds.Add(Planned.BuildIfAny(tube, Pitch.FromNumber(number), room, parsed));
                progress.Next();
            }

            var text = parsed.GetValue(json) ? Json(builds) : Table(builds);
            ConsoleProgram.Warn(parsed, Planned.Warnings(builds));
            Answer.Write(parsed, output => output.Write(text));
        });
        return command;
    }

    public static Option<bool> JsonOption() =>
        new("--json") { Description = "Write JSON, for other programs." };

    private static string Table(List<TubeBuild> builds)
    {
        var lines = new StringBuilder();
        lines.Row("note         Hz  on the note             cut first               first overblown");
        foreach (var build in builds)
        {
            if (!build.IsSolved)
            {
                lines.Row($"{build.Note, -5} {build.ExplanationIn(Show.Units)}");
                continue;
            }

            var overblown = build.Overblown is [var second, ..]
                ? $"{second.Nearest.Pitch} ({second.Interval})"
                : "";
            lines.Row(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{build.Note, -5}{build.Tuning.FrequencyOf(build.Note).Hertz, 10:0.00}  {Show.Both(build.Exact.Cut), -24}{build.FirstLength.In(Show.Units), -24}{overblown}"
                )
            );
        }

        lines.Care();
        return lines.ToString();
    }

    private static string Json(List<TubeBuild> builds) =>
        JsonText.Of(json =>
        {
            json.WriteStartArray("notes");
            foreach (var build in builds)
            {
                json.WriteStartObject();
                BuildJson.Write(json, build);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });
}
