using System.Globalization;
using AirColumn;
using AirColumn.Documents;
using AirColumn.Recordings;
using AirColumn.Workshop;
using AirColumn.Workshop.Measurements;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using Shared;
using Shared.Listening;
using UnitsNet;

namespace BenchPage.Engine;

/// <summary>A tube that is cut and was heard: what to do next.</summary>
internal static class Listening
{
    /// <summary>From a recording, WAV.</summary>
    public static ListenAnswer Recording(BenchState state, byte[] sound, IProgress<double> progress) =>
        Answer(state, (heard, joints) => Measured(state, heard, joints, sound, progress));

    /// <summary>From what a tuner shows.</summary>
    public static ListenAnswer Typed(BenchState state, string reading) =>
        Answer(
            state,
            (heard, joints) =>
            {
                var note = HeardNote.Parse(reading, Room.Tuning(state));
                return (
                    new TubeMeasurement(DateTimeOffset.UtcNow, heard.Cut, note, 0, Room.Air(state))
                    {
                        Joints = joints,
                    },
                    new ListenAnswer { Heard = Hertz(note), Nearest = Reading(state, note) }
                );
            }
        );

    private static ListenAnswer Answer(
        BenchState state,
        Func<Tube, JointState, (TubeMeasurement One, ListenAnswer Said)> measure
    )
    {
        try
        {
            var assembly = PartsFile.Read(state.Parts, Catalogue.Standard).Assembly;
            var joints = state.Joints == "home" ? JointState.Home : JointState.Dry;
            var cut = QuantityText.ParseLength(state.CutNow);
            var column = AssemblyAsHeard.Of(assembly, joints).Assemble(cut).ColumnIn(Room.Air(state));
            var (one, said) = measure(new Tube(column, cut), joints);
            if (said.Error.Length > 0)
            {
                return said;
            }

            var before =
                state.Heard.Length > 0 ? MeasurementHistory.Read(state.Heard) : MeasurementHistory.Empty;
            var after = before.With(one);
            var advice = TrimAdvice.For(
                assembly,
                Room.Tuning(state).FrequencyOf(DroneNote.Parse(state.Note)),
                cut,
                Room.Air(state),
                after.Taken
            );
            return Advised(said, advice, Room.Units(state)) with
            {
                History = after.Write(),
                Count = after.Taken.Count,
            };
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException or RecordingException)
        {
            return new ListenAnswer { Error = OneLine.Of(problem) };
        }
    }

    private static (TubeMeasurement, ListenAnswer) Measured(
        BenchState state,
        Tube tube,
        JointState joints,
        byte[] sound,
        IProgress<double> progress
    )
    {
        using var stream = new MemoryStream(sound);
        var name = TubeListener.NameOf(stream);
        stream.Position = 0;
        using var recording = AirColumn.Recordings.Recording.Open(stream);
        var take = Take.Of(recording, TubeListener.OptionsFor(tube.Column), progress);
        if (take.Drone is null)
        {
            return (null!, new ListenAnswer { Error = take.Reason ?? "" });
        }

        if (
            TubeListener.Drone(take, tube.Column, Words.PageWords.Recording, out var problem) is not { } drone
        )
        {
            return (null!, new ListenAnswer { Error = problem });
        }

        return (
            new TubeMeasurement(
                DateTimeOffset.UtcNow,
                tube.Cut,
                drone.Fundamental,
                drone.StandardUncertaintyCents,
                Room.Air(state),
                name
            )
            {
                Joints = joints,
            },
            new ListenAnswer
            {
                Heard = Hertz(drone.Fundamental),
                // A clock may be off by 50 parts in a million: a note is known no better than 0.1 cent.
                PlusMinus = string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Math.Max(0.1, drone.PlusMinusCents):0.0#}"
                ),
                Nearest = drone.Nearest(Room.Tuning(state)).ToString(),
                Warnings = [.. TubeListener.Doubts(take, drone)],
            }
        );
    }

    private static ListenAnswer Advised(ListenAnswer said, TrimAdvice advice, LengthUnits units) =>
        said with
        {
            Difference = string.Create(
                CultureInfo.InvariantCulture,
                $"{advice.DifferencesCents[^1]:+0.0;-0.0;0.0}"
            ),
            Verdict = advice.VerdictIn(units),
            DryNote = advice.DryNoteIn(units) ?? "",
            PipeThen = advice.SafePipe is { } pipe ? LengthText.AtLeast(pipe, units) : "",
            NewPipe = advice.Lengthening?.Pipe is { } longer ? LengthText.Tape(longer, units) : "",
            Beyond = advice.Lengthening?.Beyond is { } beyond ? LengthText.Tape(beyond, units) : "",
            Ring = advice.Lengthening is { RingInside: { } ring } by
                ? Words.PageWords.Ring(LengthText.Tape(by.RingLength, units), LengthText.Tape(ring, units))
                : "",
            Rows =
            [
                .. advice.Lengthening is null
                    ? advice.Table.Rows.Select(row => new TrimRow(
                        LengthText.AtMost(row.Cut, units),
                        LengthText.AtLeast(
                            Length.FromMillimeters(row.Length.Millimeters + advice.Hidden.Millimeters),
                            units
                        ),
                        Hertz(row.Note),
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{row.Cents:+0.0;-0.0;0.0} ±{row.PlusMinusCents:0}"
                        )
                    ))
                    : [],
            ],
        };

    private static string Reading(BenchState state, Frequency note) =>
        Room.Tuning(state).Nearest(note).ToString();

    private static string Hertz(Frequency frequency) =>
        string.Create(CultureInfo.InvariantCulture, $"{frequency.Hertz:0.00} Hz");

    private sealed record Tube(Column Column, Length Cut);
}
