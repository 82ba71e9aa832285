using System.CommandLine;
using System.Globalization;
using System.Text;
using AirColumn;
using AirColumn.Workshop.Tubes;
using Shared;

namespace DroneTube;

/// <summary>The verb 'compare': several tubes on one note, side by side.</summary>
internal static class CompareCommand
{
    public static Command Create()
    {
        var file = new TubeFile();
        var room = new RoomOptions();
        var units = UnitsOption.Create();
        var note = TubeFile.Note();
        var json = TableCommand.JsonOption();
        var command = new Command(
            "compare",
            "Compares several tubes on one note: length, overblown notes, indicators of ease and loudness, cost."
        )
        {
            file.Several,
            note,
            json,
        };
        foreach (var option in room.All.Concat(file.Options).Append(units))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            units.Apply(parsed);
            var pitch = parsed.GetRequiredValue(note)!.Value;
            var tubes = file.ReadAll(parsed)
                .Select(
                    (tube, i) =>
                        (
                            Name: tube.Name.Length > 0
                                ? tube.Name
                                : Path.GetFileNameWithoutExtension(parsed.GetRequiredValue(file.Several)[i]),
                            Build: Planned.BuildIfAny(tube, pitch, room, parsed)
                        )
                )
                .ToList();
            var text = parsed.GetValue(json)
                ? Json(tubes, TimeLimitOption.Token(parsed))
                : Table(tubes, TimeLimitOption.Token(parsed));
            ConsoleProgram.Warn(parsed, Planned.Warnings(tubes.Select(tube => tube.Build)));
            Answer.Write(parsed, output => output.Write(text));
        });
        return command;
    }

    private static string Table(List<(string Name, TubeBuild Build)> tubes, CancellationToken token)
    {
        var lines = new StringBuilder();
        foreach (var (name, build) in tubes)
        {
            lines.Row(name);
            if (!build.IsSolved)
            {
                lines.Paragraph(build.ExplanationIn(Show.Units), 2, 2);
                continue;
            }

            Item(lines, "cut on the note", Show.Both(build.Exact.Cut));
            Item(lines, "cut first", build.FirstLength.In(Show.Units));
            Item(lines, "length in all", Show.Both(build.Exact.Tube.Bore.Length));
            Item(
                lines,
                "overblown",
                string.Join(
                    ", ",
                    build.Overblown.Select(o =>
                        $"{o.Nearest.Pitch} {Show.Cents(o.Nearest.Cents)} ({o.Interval})"
                    )
                )
            );
            Item(
                lines,
                "ease",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"first peak {Decibels(build.Exact.Column.FirstPeakHeight(token)):0.0} dB over ρc/S, Q {build.Resonances![0].QualityFactor:0}: higher speaks more easily"
                )
            );
            Item(
                lines,
                "loudness",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"mean |Z| from 1 to 2 kHz {build.Exact.Column.MeanImpedance(token) / 1e6:0.00} MPa·s/m³: players ranked lower values better"
                )
            );
            Item(
                lines,
                "cost",
                build.Assembly.Price is { } price
                    ? price.ToString("0.00", CultureInfo.InvariantCulture)
                    : "not known: a part has no price"
            );
        }

        lines.Paragraph(
            "Ease and loudness are indicators only: published tests found players' ranking to fall with |Z| between 1 and 2 kHz; lips and room are not in them."
        );
        return lines.ToString();
    }

    private static void Item(StringBuilder lines, string what, string text) =>
        lines.Paragraph($"{what}: {text}", 2, 4);

    private static double Decibels(double ratio) => 20 * Math.Log10(ratio);

    private static string Json(List<(string Name, TubeBuild Build)> tubes, CancellationToken token) =>
        JsonText.Of(json =>
        {
            json.WriteStartArray("tubes");
            foreach (var (name, build) in tubes)
            {
                json.WriteStartObject();
                json.WriteString("name", name);
                BuildJson.Write(json, build);
                if (build.IsSolved)
                {
                    json.Number("firstPeakOverCharacteristic", build.Exact.Column.FirstPeakHeight(token));
                    json.Number("firstPeakQ", build.Resonances![0].QualityFactor);
                    json.Number("meanImpedance1To2kHz", build.Exact.Column.MeanImpedance(token));
                    json.Number("price", build.Assembly.Price ?? double.NaN);
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
        });
}
