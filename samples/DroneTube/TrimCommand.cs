using System.CommandLine;
using System.Globalization;
using System.Text;
using AirColumn.Acoustics;
using AirColumn.Design;
using AirColumn.Documents;
using AirColumn.Pitches;
using AirColumn.Resonances;
using AirColumn.Workshop.Tubes;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>The verb 'trim': the pipe as it is cut now and the note that was heard in, how far to trim out.</summary>
internal static class TrimCommand
{
    // How far one player's note varies from one take to the next, cents: a choice.
    private const double OneTake = 5;

    // Farther from the resonance it is another note, or another tube, cents.
    private const double FarthestHeard = 150;

    public static Command Create()
    {
        var file = new TubeFile();
        var room = new RoomOptions();
        var units = UnitsOption.Create();
        var note = TubeFile.Note();
        var cut = Options.Parsed<Length?>(
            "--cut",
            "How long the open pipe is now, such as \"1180 mm\" or \"46 1/2 in\".",
            text => new AddedPart("any", QuantityText.ParseLength(text), Length.FromMillimeters(30)).Adds
        );
        cut.Required = true;
        var heard = Options.Parsed<Frequency?>(
            "--heard",
            "The drone as it was measured, such as \"71.3 Hz\"; without it the usual guess of what lips add is used.",
            text =>
                Options.Hertz(text) is { Hertz: > 0 } frequency
                    ? frequency
                    : throw new FormatException(
                        $"'{text}' is not a frequency above 0; write such as \"71.3 Hz\"."
                    )
        );
        var json = TableCommand.JsonOption();
        var command = new Command("trim", "How far to trim the open pipe, from what the tube sounds now.")
        {
            file.One,
            note,
            cut,
            heard,
            json,
        };
        foreach (var option in room.All.Concat(file.Options).Append(units))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            units.Apply(parsed);
            var assembly = file.Read(parsed).Assembly;
            var warnings = TubeBuilder.Unconfirmed(assembly);
            var (correction, table, hidden) = Trim(
                assembly,
                room.Tuning(parsed).FrequencyOf(parsed.GetRequiredValue(note)!.Value),
                parsed.GetRequiredValue(cut)!.Value,
                parsed.GetValue(heard),
                room.Air(parsed)
            );
            ConsoleProgram.Warn(parsed, warnings);
            var text = parsed.GetValue(json)
                ? Json(correction, table, hidden)
                : Table(correction, table, hidden);
            Answer.Write(parsed, output => output.Write(text));
        });
        return command;
    }

    private static (PlayingCorrection Correction, TrimTable Table, Length Hidden) Trim(
        TubeAssembly assembly,
        Frequency target,
        Length cut,
        Frequency? heard,
        AirColumn.Gases.Air air
    )
    {
        try
        {
            if (assembly.FreePipe is null)
            {
                throw new BadInputException(
                    "All pipes of the parts file have a length; leave the one to trim open."
                );
            }

            var tube = assembly.Assemble(cut);
            var column = new Column(tube.Bore, air);
            var tolerances = TubeBuilder.Tolerances(tube, air, new BuildOptions());
            var correction = PlayingCorrection.LipsInRoomAir;
            if (heard is { } frequency && column.FirstResonances(1) is [var first])
            {
                // What was heard holds what the player adds and what this tube is off by; both stay when it is cut on.
                var cents = Cents.Between(first.Frequency, frequency);
                var tubeCents = column.Budgets([first], tolerances)[0].StandardDeviationCents;
                correction =
                    Math.Abs(cents) <= FarthestHeard
                        ? new PlayingCorrection(
                            correction.MeanCents,
                            double.Hypot(correction.StandardDeviationCents, tubeCents)
                        ).After([cents], OneTake)
                        : throw new BadInputException(
                            Show.Text(
                                $"--heard is {frequency.Hertz:0.##} Hz, {Math.Abs(cents):0} cents from the first resonance of this tube, {first.Frequency.Hertz:0.##} Hz; "
                            ) + "that is not its drone. Check the note, the cut and the parts."
                        );
            }

            return (
                correction,
                TrimTable.For(
                    column,
                    new TrimQuestion(tube.SectionParts.ToList().IndexOf(assembly.FreePipe), target)
                    {
                        Step = Length.FromMillimeters(2),
                        Correction = correction,
                        // What was heard was heard on this very tube: that is in the correction.
                        Tolerances = heard is null ? tolerances : [],
                    }
                ),
                Length.FromMillimeters(tube.FreeCut!.Hidden.Millimeters)
            );
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(OneLine.Of(problem));
        }
    }

    private static string Table(PlayingCorrection correction, TrimTable table, Length hidden)
    {
        var lines = new StringBuilder();
        lines.Row($"Played note less resonance: {correction}");
        lines.Paragraph(table.Explanation);
        if (table.SafeCut is { } safe)
        {
            lines.Row($"The pipe is then {Show.Both(safe.Length + hidden)} long.");
        }

        lines.Row("cut off in all          pipe then               note expected");
        foreach (var row in table.Rows)
        {
            lines.Row(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Show.Both(row.Cut), -24}{Show.Both(row.Length + hidden), -24}{row.Note.Hertz:0.00} Hz, {Show.Cents(row.Cents)} ± {row.PlusMinusCents:0}"
                )
            );
        }

        lines.Care();
        return lines.ToString();
    }

    private static string Json(PlayingCorrection correction, TrimTable table, Length hidden) =>
        JsonText.Of(json =>
        {
            json.Number("correctionCents", correction.MeanCents);
            json.Number("correctionStandardDeviationCents", correction.StandardDeviationCents);
            json.WriteString("explanation", table.Explanation);
            json.Number("safeCutMetres", table.SafeCut?.Cut.Meters ?? double.NaN);
            json.Number(
                "safePipeMetres",
                table.SafeCut is { } safe ? (safe.Length + hidden).Meters : double.NaN
            );
            json.WriteStartArray("rows");
            foreach (var row in table.Rows)
            {
                json.WriteStartObject();
                json.Number("cutOffMetres", row.Cut.Meters);
                json.Number("pipeMetres", (row.Length + hidden).Meters);
                json.Number("noteHz", row.Note.Hertz);
                json.Number("cents", row.Cents);
                json.Number("plusMinusCents", row.PlusMinusCents);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });
}
