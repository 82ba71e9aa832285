using System.CommandLine;
using System.Globalization;
using System.Text;
using AirColumn.Documents;
using AirColumn.Pitches;
using AirColumn.Workshop.Cutting;
using AirColumn.Workshop.Tubes;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>The verb 'cuts': tubes on several notes from lengths of stock.</summary>
internal static class CutsCommand
{
    public static Command Create()
    {
        var file = new TubeFile();
        var room = new RoomOptions();
        var units = UnitsOption.Create();
        var notes = Options.Parsed<Pitch[]?>(
            "--notes",
            "The notes, one tube each, such as C2,D2,D2.",
            text => [.. text.Split(',').Select(note => Pitch.Parse(note.Trim()))]
        );
        notes.Required = true;
        var stock = Size("--stock", "Length of one piece of stock, such as \"10 ft\" or \"3 m\".");
        stock.Required = true;
        var kerf = Size("--kerf", "What the saw takes with each cut. [default: 3 mm]");
        var json = TableCommand.JsonOption();
        var command = new Command(
            "cuts",
            "Which first cuts of the open pipe, for several tubes, to saw from which length of stock."
        )
        {
            file.One,
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
            units.Apply(parsed);
            var tube = file.Read(parsed);
            var built = new Dictionary<Pitch, Length>();
            var builds = new List<TubeBuild>();
            var pieces = new List<CutPiece>();
            var wanted = parsed.GetRequiredValue(notes)!;
            var progress = new Progress(parsed, wanted.Length);
            foreach (var note in wanted)
            {
                if (!built.TryGetValue(note, out var cut))
                {
                    var build = Planned.Build(tube, note, room, parsed);
                    builds.Add(build);
                    cut = build.FirstCut!.Cut;
                    built[note] = cut;
                }

                pieces.Add(new CutPiece(note.ToString(), cut));
                progress.Next();
            }

            StockCutPlan plan;
            try
            {
                plan = StockCuts.Plan(
                    pieces,
                    parsed.GetRequiredValue(stock)!.Value,
                    parsed.GetValue(kerf) ?? Length.FromMillimeters(3)
                );
            }
            catch (ArgumentException problem)
            {
                throw new BadInputException(OneLine.Of(problem));
            }

            ConsoleProgram.Warn(parsed, Planned.Warnings(builds));
            var text = parsed.GetValue(json) ? Json(plan) : Table(plan);
            Answer.Write(parsed, output => output.Write(text));
        });
        return command;
    }

    private static Option<Length?> Size(string name, string description) =>
        Options.Parsed<Length?>(name, description, text => QuantityText.ParseLength(text));

    private static string Table(StockCutPlan plan)
    {
        var lines = new StringBuilder();
        var left = Length.FromMillimeters(plan.Bars.Sum(bar => bar.LeftOver.Millimeters));
        lines.Paragraph(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Buy {plan.Bars.Count} {(plan.Bars.Count == 1 ? "length" : "lengths")} of {Show.Stock(plan.Stock)} ({(plan.IsProvenLeast ? "minimum" : "may not be the minimum")}). Offcut {Show.Both(left)}, {Show.Both(plan.Waste - left)} lost to the saw."
            )
        );
        for (var i = 0; i < plan.Bars.Count; i++)
        {
            var bar = plan.Bars[i];
            lines.Paragraph(
                string.Create(CultureInfo.InvariantCulture, $"{i + 1}: ")
                    + string.Join(", ", bar.Pieces.Select(piece => $"{piece.Name} {Show.Both(piece.Length)}"))
                    + $"; {Show.Both(bar.LeftOver)} left",
                2,
                4
            );
        }

        lines.Care();
        return lines.ToString();
    }

    private static string Json(StockCutPlan plan) =>
        JsonText.Of(json =>
        {
            json.Number("stockMetres", plan.Stock.Meters);
            json.Number("kerfMetres", plan.Kerf.Meters);
            json.Number("wasteMetres", plan.Waste.Meters);
            json.WriteBoolean("provenFewest", plan.IsProvenLeast);
            json.WriteStartArray("lengths");
            foreach (var bar in plan.Bars)
            {
                json.WriteStartObject();
                json.WriteStartArray("pieces");
                foreach (var piece in bar.Pieces)
                {
                    json.WriteStartObject();
                    json.WriteString("note", piece.Name);
                    json.Number("cutMetres", piece.Length.Meters);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.Number("leftOverMetres", bar.LeftOver.Meters);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });
}
