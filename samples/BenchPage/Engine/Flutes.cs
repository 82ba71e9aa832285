using System.Globalization;
using AirColumn;
using AirColumn.Documents;
using AirColumn.Workshop;
using AirColumn.Workshop.Instruments;
using AirColumn.Workshop.Sheets;
using Shared;

namespace BenchPage.Engine;

/// <summary>Answers about pan pipes and flutes.</summary>
internal static class Flutes
{
    /// <summary>One pipe of a set, so that a set can be shown as it grows.</summary>
    public static PipeAnswer Pipe(BenchState state, int number)
    {
        try
        {
            var set = state.Pipes;
            var note = Scale
                .All.First(scale => scale.Name == set.Scale)
                .From(Pitch.Parse(set.Tonic), set.Count)[number];
            var units = Room.Units(state);
            var pipe = PanPipe.For(
                note,
                Room.Tuning(state),
                Room.Air(state),
                QuantityText.ParseLength(set.Inside),
                QuantityText.ParseLength(set.Plug)
            );
            return pipe.Solution.IsSolved
                ? new PipeAnswer(
                    "",
                    note.ToString(),
                    LengthText.Tape(pipe.Air, units),
                    LengthText.Tape(pipe.PlusMinus, units),
                    LengthText.Tape(pipe.Cut, units)
                )
                : new PipeAnswer(pipe.Solution.Explanation, note.ToString(), "", "", "");
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            return new PipeAnswer(OneLine.Of(problem), "", "", "", "");
        }
    }

    public static FluteAnswer Flute(BenchState state)
    {
        try
        {
            var asked = state.Flute;
            var (units, tuning) = (Room.Units(state), Room.Tuning(state));
            var flute = FingeredFlute.Major(
                Pitch.Parse(asked.Tonic),
                tuning,
                Room.Air(state),
                QuantityText.ParseLength(asked.Inside),
                QuantityText.ParseLength(asked.Outside),
                QuantityText.ParseLength(asked.Mouth),
                [.. asked.Holes.Split(';').Select(QuantityText.ParseLength)]
            );
            if (!flute.IsSolved)
            {
                return new FluteAnswer { Error = flute.Solution.Explanation };
            }

            // The note that opening a hole adds: the last hole's is the second of the scale.
            var notes = flute.Notes(tuning);
            return new FluteAnswer
            {
                Sounding = LengthText.Tape(flute.Sounding, units),
                Holes =
                [
                    .. flute.Holes.Select(hole => new HoleRow(
                        hole.Number.ToString(CultureInfo.InvariantCulture),
                        LengthText.Caliper(hole.Diameter, units),
                        LengthText.Tape(hole.FromEnd, units),
                        LengthText.Tape(hole.FromMouth, units),
                        hole.ToNext is { } next ? LengthText.Tape(next, units) : "",
                        notes[flute.Holes.Count - hole.Number + 1].Pitch.ToString()
                    )),
                ],
                Remarks = flute.Remarks(units),
                Template = Templates.Holes(flute, units),
            };
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            return new FluteAnswer { Error = OneLine.Of(problem) };
        }
    }
}
