using System.CommandLine;
using System.Text;
using AirColumn;
using AirColumn.Documents;
using AirColumn.Workshop;
using AirColumn.Workshop.Cutting;
using AirColumn.Workshop.Tubes;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>The verb 'cuts': every pipe of a set of tubes from lengths of stock.</summary>
internal static class CutsCommand
{
    public static Command Create()
    {
        var file = new TubeFile();
        var room = new RoomOptions();
        var units = UnitsOption.Create();
        var notes = Options.Parsed<Pitch[][]?>(
            "--notes",
            "The notes, one tube each, such as C2,D2,D2. For several parts files give one list for all, or one for each: \"C2,D2; E2\".",
            text =>
                [
                    .. text.Split(';')
                        .Select(list => list.Split(',').Select(note => DroneNote.Parse(note)).ToArray()),
                ]
        );
        notes.Required = true;
        var stock = Options.Parsed<StockLengths?>(
            "--stock",
            "Length in which pipe is sold, such as \"10 ft\"; where kinds differ, \"10 ft, pvc-40 2 = 2 m\".",
            text => StockLengths.Parse(text)
        );
        stock.Required = true;
        var kerf = Options.Parsed<Length?>(
            "--kerf",
            "The width of the saw cut. [default: 3 mm]",
            text => QuantityText.ParseLength(text)
        );
        var json = TableCommand.JsonOption();
        var command = new Command(
            "cuts",
            "Plans which pipes to saw from which length of stock, for one tube or a set, and how many lengths to buy."
        )
        {
            file.Several,
            notes,
            stock,
            kerf,
            json,
        };
        foreach (var option in room.All.Concat(file.Options).Append(units))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var shown = units.Apply(parsed);
            var tubes = Tubes(file.ReadAll(parsed), parsed.GetRequiredValue(notes)!, room, parsed);
            var lengths = parsed.GetRequiredValue(stock)!;
            var plans = new List<(string Pipe, StockCutPlan Plan)>();
            try
            {
                var kinds = StockCuts.PiecesOf(tubes);
                lengths.RequireKnown([.. kinds.Select(kind => kind.Name)]);
                plans.AddRange(
                    kinds.Select(kind =>
                        (
                            kind.Name,
                            StockCuts.Plan(
                                kind.Pieces,
                                lengths.Of(kind.Name),
                                parsed.GetValue(kerf) ?? Length.FromMillimeters(3),
                                shown,
                                TimeLimitOption.Token(parsed)
                            )
                        )
                    )
                );
            }
            catch (ArgumentException problem)
            {
                throw new BadInputException(
                    problem.ParamName is "stock" or "kerf"
                        ? OneLine.Of(problem, $"--{problem.ParamName}")
                        : OneLine.Of(problem)
                );
            }

            var text = parsed.GetValue(json) ? Json(plans) : Table(plans);
            ConsoleProgram.Warn(parsed, Planned.Warnings(tubes.Select(tube => tube.Build)));
            Answer.Write(parsed, output => output.Write(text));
        });
        return command;
    }

    // Every file on every note of its list; a tube that is wanted twice is planned once.
    private static List<(string Name, TubeBuild Build)> Tubes(
        IReadOnlyList<PartsFile> files,
        Pitch[][] notes,
        RoomOptions room,
        ParseResult parsed
    )
    {
        if (notes.Length != 1 && notes.Length != files.Count)
        {
            throw new BadInputException(
                $"--notes has {notes.Length} lists for {files.Count} parts files; give one list for all, or one for each, with ; between."
            );
        }

        var wanted = files
            .SelectMany((file, i) => notes[notes.Length == 1 ? 0 : i].Select(note => (file, i, note)))
            .ToList();
        var progress = new Progress(parsed, wanted.Count);
        var built = new Dictionary<(int File, Pitch Note), TubeBuild>();
        var tubes = new List<(string, TubeBuild)>();
        foreach (var (file, i, note) in wanted)
        {
            if (!built.TryGetValue((i, note), out var build))
            {
                build = Planned.Build(file, note, room, parsed);
                built[(i, note)] = build;
            }

            tubes.Add((files.Count == 1 ? $"{note}" : $"{NameOf(file, i)} {note}", build));
            progress.Next();
        }

        return tubes;
    }

    private static string NameOf(PartsFile file, int index) =>
        file.Name.Length > 0 ? file.Name : $"tube {index + 1}";

    private static string Table(List<(string Pipe, StockCutPlan Plan)> plans)
    {
        var lines = new StringBuilder();
        foreach (var (pipe, plan) in plans)
        {
            var sentences = plan.Describe();
            lines.Paragraph($"{pipe}: {sentences[0]}", 0, 2);
            foreach (var bar in sentences.Skip(1))
            {
                lines.Paragraph(bar, 2, 4);
            }
        }

        lines.Care();
        return lines.ToString();
    }

    private static string Json(List<(string Pipe, StockCutPlan Plan)> plans) =>
        JsonText.Of(json =>
        {
            json.WriteStartArray("pipes");
            foreach (var (pipe, plan) in plans)
            {
                json.WriteStartObject();
                json.WriteString("pipe", pipe);
                json.Number("stockMetres", plan.Stock.Meters);
                json.Number("kerfMetres", plan.Kerf.Meters);
                json.Number("leftOverMetres", plan.LeftOver.Meters);
                json.Number("sawnMetres", plan.Sawn.Meters);
                json.WriteBoolean("provenFewest", plan.IsProvenLeast);
                json.WriteNumber("leastPossible", plan.LeastPossible);
                json.WriteStartArray("lengths");
                foreach (var bar in plan.Bars)
                {
                    json.WriteStartObject();
                    json.WriteStartArray("pieces");
                    foreach (var piece in bar.Pieces)
                    {
                        json.WriteStartObject();
                        json.WriteString("piece", piece.Name);
                        json.Number("cutMetres", piece.Length.Millimetres.Meters);
                        json.WriteString("cutInches", piece.Length.Inches.ToString());
                        json.WriteEndObject();
                    }

                    json.WriteEndArray();
                    json.Number("leftOverMetres", bar.LeftOver.Meters);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });
}
