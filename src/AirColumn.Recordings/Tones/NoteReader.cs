using AirColumn.Recordings.Tracking;
using UnitsNet;

namespace AirColumn.Recordings.Tones;

/// <summary>Measures one held note.</summary>
internal sealed class NoteReader(
    Recording recording,
    int channel,
    LowRate sound,
    IReadOnlyList<PitchFrame> frames,
    IReadOnlyList<double> resonances,
    CancellationToken cancellationToken
)
{
    // Longer is no surer, since players wander, and needs memory.
    private const double Longest = 20;

    // Harmonics over noise, as power: two notes at once, or a noise that hums, have less.
    private const double LeastToNoise = 1;

    /// <summary>The note; null where it is too short after all, or no periodic sound.</summary>
    public SoundedNote? Read(in SteadyStretch stretch)
    {
        var part = Steadiest(stretch);
        var from = frames[part.From].Seconds;
        var seconds = frames[part.To - 1].Seconds - from;
        var start = (long)(from * sound.Rate);
        var samples = sound.Read(start, (int)(seconds * sound.Rate));
        var offset = samples.Average();
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] -= offset;
        }

        // Before the octave is sure: frames that were taken for another one.
        double PitchAt(double t) => Smoothed(part, from + t);
        cancellationToken.ThrowIfCancellationRequested();
        var octave = Octave.Of(samples, sound.Rate, part.Hertz, PitchAt, resonances);
        cancellationToken.ThrowIfCancellationRequested();
        var hertz = octave.Factor * part.Hertz;
        if (PhaseTrack.Of(samples, sound.Rate, hertz, t => octave.Factor * PitchAt(t)) is not { } track)
        {
            return null;
        }

        if (track.ToNoise < LeastToNoise)
        {
            return null;
        }

        cancellationToken.ThrowIfCancellationRequested();
        var mean = MeanPitch.Of(track);
        var cents = 1200 / Math.Log(2) / mean.Hertz;
        var whole = frames[stretch.To - 1].Seconds - frames[stretch.From].Seconds + FrameTrack.Hop;
        Frequency[] others = [.. octave.Others.Select(one => Frequency.FromHertz(one * mean.Hertz))];
        return new SoundedNote
        {
            From = Duration.FromSeconds(frames[stretch.From].Seconds - FrameTrack.Hop / 2),
            Duration = Duration.FromSeconds(whole),
            Fundamental = Frequency.FromHertz(mean.Hertz),
            Alternatives = others,
            Warnings = [.. NoteDoubts.Of(mean, track, octave, others)],
            StandardUncertaintyCents = cents * mean.Uncertainty,
            DriftCentsPerSecond = stretch == part ? cents * mean.Drift : DriftOf(stretch),
            SpreadCents = cents * mean.Spread,
            HarmonicsToNoiseDecibels = Decibels(track.ToNoise),
            Partials = Partials(track, mean.Hertz),
            Bands = Spectrum.Bands(
                recording,
                channel,
                (long)(from * recording.RateHertz),
                (long)(seconds * recording.RateHertz)
            ),
            Pitch = Points(track, from),
        };
    }

    private static double Decibels(double ratio) => 10 * Math.Log10(Math.Clamp(ratio, 1e-20, 1e20));

    // The part of the longest length whose frames stray least.
    private SteadyStretch Steadiest(SteadyStretch stretch)
    {
        var length = (int)(Longest / FrameTrack.Hop);
        if (stretch.Count <= length)
        {
            return stretch;
        }

        var (best, least) = (stretch.From, double.PositiveInfinity);
        for (var from = stretch.From; from + length <= stretch.To; from += 20)
        {
            var pitches = Enumerable.Range(from, length).Select(i => Near(i, stretch.Hertz)).ToList();
            var mean = pitches.Average();
            var stray = pitches.Sum(p => (p - mean) * (p - mean));
            if (stray < least)
            {
                (best, least) = (from, stray);
            }
        }

        return stretch with
        {
            From = best,
            To = best + length,
        };
    }

    // A frame of another octave, or of none, is taken as the note on the whole.
    private double Near(int i, double hertz)
    {
        var own = frames[i].Hertz;
        return own > 0 && Math.Abs(Math.Log2(own / hertz)) < 0.06 ? own : hertz;
    }

    // Frames joined by straight lines.
    private double Smoothed(in SteadyStretch part, double seconds)
    {
        var x = (seconds - frames[0].Seconds) / FrameTrack.Hop;
        var i = Math.Clamp((int)x, part.From, part.To - 2);
        var t = Math.Clamp(x - i, 0, 1);
        return (1 - t) * Near(i, part.Hertz) + t * Near(i + 1, part.Hertz);
    }

    // Least squares through the frames of a note that is too long to be measured whole.
    private double DriftOf(in SteadyStretch stretch)
    {
        var (middle, xx, xy) = ((stretch.Count - 1) / 2.0, 0.0, 0.0);
        for (var i = 0; i < stretch.Count; i++)
        {
            var x = (i - middle) * FrameTrack.Hop;
            xx += x * x;
            xy += x * 1200 * Math.Log2(Near(stretch.From + i, stretch.Hertz) / stretch.Hertz);
        }

        return xy / xx;
    }

    private static List<NotePartial> Partials(PhaseTrack track, double hertz)
    {
        var strongest = track.Power.Max();
        return
        [
            .. Enumerable
                .Range(0, track.Power.Length)
                .Where(h => track.Power[h] > track.Noise[h] && track.Power[h] > 1e-10 * strongest)
                .Select(h => new NotePartial(
                    h + 1,
                    Frequency.FromHertz((h + 1) * hertz + track.Apart[h]),
                    Decibels(track.Power[h] / strongest),
                    Decibels(track.Power[h] / Math.Max(track.Noise[h], 1e-20 * strongest))
                )),
        ];
    }

    private static List<PitchPoint> Points(PhaseTrack track, double from)
    {
        var points = new List<PitchPoint>();
        for (var m = 1; m < track.Nodes; m++)
        {
            points.Add(
                new PitchPoint(
                    Duration.FromSeconds(from + track.FirstSeconds + (m - 0.5) * track.Step),
                    Frequency.FromHertz((track.Turns[m] - track.Turns[m - 1]) / track.Step)
                )
            );
        }

        return points;
    }
}
