using AirColumn.Recordings;
using AirColumn.Recordings.Previews;
using AirColumn.Workshop;
using AirColumn.Workshop.Stock;
using AirColumn.Workshop.Tubes;
using Shared;
using UnitsNet;

namespace BenchPage.Engine;

/// <summary>What a tube might sound like, drone and first overblown note, as loud as any other.</summary>
internal static class Previewing
{
    private const double Pause = 0.4; // seconds
    private const double Loudness = 0.12; // effective value, of full scale; the loudest samples of a rich drone are then below it

    public static (PreviewAnswer Answer, byte[] Sound) Of(BenchState state)
    {
        try
        {
            var assembly = PartsFile.Read(state.Parts, Catalogue.Standard).Assembly;
            var cut = TubeBuilder.Exact(
                assembly,
                DroneNote.Parse(state.Note),
                Room.Tuning(state),
                Room.Air(state)
            );
            if (!cut.IsSolved)
            {
                return (new PreviewAnswer { Error = cut.ExplanationIn(Room.Units(state)) }, []);
            }

            var samples = new List<double>();
            var remarks = new List<string>();
            var rate = new PreviewOptions().SampleRate;
            foreach (var register in (int[])[1, 2])
            {
                var preview = DronePreview.Of(
                    cut.Exact.Column,
                    new PreviewOptions { Register = register, Duration = Duration.FromSeconds(2) }
                );
                if (preview.Status != PreviewStatus.Speaks)
                {
                    remarks.Add(preview.Remark);
                    continue;
                }

                samples.AddRange(Levelled(preview));
                samples.AddRange(new double[(int)(Pause * rate)]);
            }

            using var wave = new MemoryStream();
            if (samples.Count > 0)
            {
                WaveFile.Write16(wave, samples.ToArray(), Frequency.FromHertz(rate));
            }

            return (
                new PreviewAnswer
                {
                    Error = samples.Count == 0 ? string.Join(' ', remarks) : "",
                    Cut = LengthText.Tape(cut.Exact.Cut, Room.Units(state)),
                    Remarks = remarks,
                },
                wave.ToArray()
            );
        }
        catch (Exception problem) when (problem is FormatException or ArgumentException)
        {
            return (new PreviewAnswer { Error = OneLine.Of(problem) }, []);
        }
    }

    // By the effective value where the note is steady, so that no shape seems better because it is louder.
    private static IEnumerable<double> Levelled(PreviewSound preview)
    {
        var samples = preview.Samples.ToArray();
        var from = (int)(preview.SteadyFrom.Seconds * preview.SampleRate);
        var to = Math.Min(samples.Length, (int)(preview.SteadyTo.Seconds * preview.SampleRate));
        var steady = samples.AsSpan(from, Math.Max(1, to - from)).ToArray();
        var level = Math.Sqrt(steady.Average(sample => sample * sample));
        return samples.Select(sample => Math.Clamp(sample * Loudness / level, -1, 1));
    }
}
