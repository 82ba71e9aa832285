using System.CommandLine;
using AirColumn;
using AirColumn.Recordings;
using AirColumn.Workshop.Measurements;
using AirColumn.Workshop.Tubes;
using Shared;
using Shared.Listening;
using UnitsNet;

namespace DroneTube;

/// <summary>The verb 'listen': a recording of the tube as it is, and what follows from it.</summary>
internal static class ListenCommand
{
    public static Command Create()
    {
        var file = new TubeFile();
        var room = new RoomOptions();
        var units = UnitsOption.Create();
        var note = TubeFile.Note();
        var cut = TubeFile.Cut();
        var recording = new Option<string>("--recording")
        {
            Description = "The drone, held steadily for a few seconds: a WAV file.",
            Required = true,
        };
        var history = new Option<string?>("--history")
        {
            Description =
                "The file for this tube's measurements. [default: beside the parts file, ending in -heard.json]",
        };
        var forget = new Option<bool>("--forget")
        {
            Description = "Neither use nor keep earlier measurements.",
        };
        var joints = new JointOptions();
        var json = TableCommand.JsonOption();
        var command = new Command("listen", "Finds the note in a recording, and how far to trim.")
        {
            file.One,
            note,
            cut,
            recording,
            history,
            forget,
            json,
        };
        foreach (var option in joints.All.Concat(room.All).Concat(file.Options).Append(units))
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            units.Apply(parsed);
            var kept = History(
                parsed.GetRequiredValue(file.One),
                parsed.GetValue(history),
                parsed.GetValue(forget)
            );
            var assembly = file.Read(parsed).Assembly;
            var (air, length) = (room.Air(parsed), parsed.GetRequiredValue(cut)!.Value);
            var tuning = room.Tuning(parsed);
            var path = parsed.GetRequiredValue(recording);
            var before = kept?.Read() ?? MeasurementHistory.Empty;
            var (state, stopsShort) = (joints.State(parsed), joints.Measured(parsed, assembly));
            var column = CutTube.Column(joints.Heard(parsed, assembly), length, air);
            var token = TimeLimitOption.Token(parsed);
            var take = Heard(parsed, path, column);
            var drone = Drone(take, column, path);
            var after = before.With(
                new TubeMeasurement(
                    DateTimeOffset.Now,
                    length,
                    drone.Fundamental,
                    drone.StandardUncertaintyCents,
                    air,
                    Name(path)
                )
                {
                    Joints = state,
                    StopsShort = stopsShort,
                }
            );
            using var draft = Begin(kept, after, out var notKept);
            var heard = new HeardTube(
                path,
                take,
                drone,
                column,
                tuning,
                after.Taken.Count - 1,
                after.Taken.Count,
                draft is null ? null : kept?.Path
            )
            {
                Advice = Advice(
                    assembly,
                    tuning.FrequencyOf(parsed.GetRequiredValue(note)!.Value),
                    length,
                    air,
                    after,
                    kept?.Path,
                    token
                ),
                Expected = Expected(assembly, length, air, after, kept?.Path, token),
                IsDry = state == JointState.Dry && assembly.Dry is not null,
            };
            var text = parsed.GetValue(json) ? heard.Json() : heard.Text();
            ConsoleProgram.Warn(
                parsed,
                [
                    .. assembly.Remarks.Select(remark => remark.Text),
                    .. TubeListener.Doubts(take, drone),
                    .. notKept,
                ]
            );
            Answer.Write(parsed, output => output.Write(text));
            ConsoleProgram.Warn(parsed, NotKept(() => draft?.Keep(overwrite: true)));
        });
        return command;
    }

    // The answer is worth more than its record: where that cannot be kept, it is said.
    private static DraftFile? Begin(
        HistoryFile? kept,
        MeasurementHistory after,
        out IReadOnlyCollection<string> notKept
    )
    {
        DraftFile? draft = null;
        notKept = NotKept(() => draft = kept?.Begin(after));
        return draft;
    }

    private static IReadOnlyCollection<string> NotKept(Action keep)
    {
        try
        {
            keep();
            return [];
        }
        catch (FailureException problem)
        {
            return [$"This measurement is not kept: {problem.Message} Name another file with --history."];
        }
    }

    private static HistoryFile? History(string parts, string? named, bool forget) =>
        (forget, named, parts) switch
        {
            (true, null, _) => null,
            (true, _, _) => throw new BadInputException(
                "--forget and --history are given; leave one of them out."
            ),
            (_, "", _) => throw new BadInputException("--history is empty; name a file."),
            (_, { } path, _) => new HistoryFile(path),
            (_, _, "-") => throw new BadInputException(
                "The parts come from the standard input, so there is no name for the file of measurements; give --history FILE or --forget."
            ),
            _ => new HistoryFile(FileNames.Beside(parts, "heard.json")),
        };

    private static Take Heard(ParseResult parsed, string path, Column column)
    {
        var progress = new Progress(parsed, 100);
        var token = TimeLimitOption.Token(parsed);
        var options = TubeListener.OptionsFor(column, token);
        return SoundFile.Read(path, recording => Take.Of(recording, options, progress, token));
    }

    private static SoundedNote Drone(Take take, Column column, string path) =>
        take.Drone is null
            ? throw new FailureException($"{path}: {take.Reason}")
            : TubeListener.Drone(take, column, path, out var problem) ?? throw new BadInputException(problem);

    private static TrimAdvice Advice(
        TubeAssembly assembly,
        Frequency target,
        Length cut,
        AirColumn.Air air,
        MeasurementHistory history,
        string? path,
        CancellationToken token
    )
    {
        try
        {
            return TrimAdvice.For(assembly, target, cut, air, history.Taken, null, token);
        }
        catch (ArgumentException problem)
        {
            throw new BadInputException(
                problem.ParamName == "heard"
                    ? $"{path}: {OneLine.Of(problem)} Mend it, or name another file with --history."
                    : OneLine.Of(problem)
            );
        }
    }

    // From what was known before this recording.
    private static TrimAdvice Expected(
        TubeAssembly assembly,
        Length cut,
        AirColumn.Air air,
        MeasurementHistory after,
        string? path,
        CancellationToken token
    ) => Advice(assembly, after.Taken[^1].Heard, cut, air, After(after, after.Taken.Count - 1), path, token);

    private static MeasurementHistory After(MeasurementHistory history, int count) =>
        history.Taken.Take(count).Aggregate(MeasurementHistory.Empty, (kept, one) => kept.With(one));

    private static string Name(string path)
    {
        using var stream = File.OpenRead(path);
        return TubeListener.NameOf(stream);
    }
}
