using System.CommandLine;
using System.Text;
using AirColumn;
using AirColumn.Workshop.Measurements;
using Shared;
using UnitsNet;

namespace DroneTube;

/// <summary>The verb 'trim': the pipe as it is cut now and the note that was heard in, how far to trim out.</summary>
internal static class TrimCommand
{
    public static Command Create()
    {
        var file = new TubeFile();
        var room = new RoomOptions();
        var units = UnitsOption.Create();
        var note = TubeFile.Note();
        var cut = TubeFile.Cut();
        var heard = Options.Parsed<string?>(
            "--heard",
            "The measured drone, such as \"71.3 Hz\" or a tuner's \"D2 -26 cents\"; without it the usual estimate for the lips is used.",
            text =>
            {
                // At whatever reference, which is known when all options are: what can be read at one can be at all.
                HeardNote.Parse(text, Tuning.Concert);
                return text;
            }
        );
        var joints = new JointOptions();
        var json = TableCommand.JsonOption();
        var command = new Command(
            "trim",
            "Finds how far to trim the open pipe, from the note that the tube sounds now."
        )
        {
            file.One,
            note,
            cut,
            heard,
            json,
        };
        foreach (var option in joints.All.Concat(room.All).Concat(file.Options).Append(units))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            units.Apply(parsed);
            var assembly = file.Read(parsed).Assembly;
            var warnings = assembly.Remarks.Select(remark => remark.Text).ToList();
            var (air, length) = (room.Air(parsed), parsed.GetRequiredValue(cut)!.Value);
            var (state, stopsShort) = (joints.State(parsed), joints.Measured(parsed, assembly));
            TrimAdvice advice;
            try
            {
                advice = TrimAdvice.For(
                    assembly,
                    room.Tuning(parsed).FrequencyOf(parsed.GetRequiredValue(note)!.Value),
                    length,
                    air,
                    parsed.GetValue(heard) is { } text
                        ?
                        [
                            Measurement(length, HeardNote.Parse(text, room.Tuning(parsed)), air) with
                            {
                                Joints = state,
                                StopsShort = stopsShort,
                            },
                        ]
                        : [],
                    cancellationToken: TimeLimitOption.Token(parsed)
                );
            }
            catch (ArgumentException problem)
            {
                throw new BadInputException(
                    problem.ParamName == "heard"
                        ? OneLine.Of(problem).Replace("taken[0]", "--heard", StringComparison.Ordinal)
                        : OneLine.Of(problem)
                );
            }

            ConsoleProgram.Warn(parsed, warnings);
            var answer = parsed.GetValue(json)
                ? JsonText.Of(json => AdviceText.Json(json, advice))
                : Table(advice);
            Answer.Write(parsed, output => output.Write(answer));
        });
        return command;
    }

    private static TubeMeasurement Measurement(Length cut, Frequency heard, Air air) =>
        new(DateTimeOffset.UnixEpoch, cut, heard, 0, air);

    private static string Table(TrimAdvice advice)
    {
        var lines = new StringBuilder();
        AdviceText.Write(lines, advice);
        lines.Care();
        return lines.ToString();
    }
}
