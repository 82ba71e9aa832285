using AirColumn.Recordings.Tracking;

namespace AirColumn.Recordings.Tests;

/// <summary>Which notes are long enough, in frames made by hand.</summary>
public class SteadyStretchesTests
{
    private const double Hop = 0.05;
    private const double Frame = 0.12;

    // A note between silences lasts from where its first frame begins to where its last one ends, to a step more. Both of these frames may reach
    // beyond it and are left out; four others are needed.
    [Draws(quick: 200, inLong: 2000)]
    internal void Every_note_that_is_long_enough_is_found(int seed)
    {
        var random = new Random(seed);
        // Never a whole number of steps from what a note shows.
        var least = Hop * random.Next(2, 50) + 0.03;
        var frames = new List<PitchFrame>();
        var expected = new List<SteadyStretch>();
        void Add(int count, double hertz, double level)
        {
            for (var i = 0; i < count; i++)
            {
                frames.Add(new PitchFrame(Hop * frames.Count, level, hertz, level > 0 ? 0.95 : 0));
            }
        }

        for (var note = 0; note < 6; note++)
        {
            Add(random.Next(6, 40), 0, 0);
            var (count, hertz) = (random.Next(1, 60), 60 + 200 * random.NextDouble());
            var (begin, end) = (Hop * frames.Count - Frame / 2, Hop * (frames.Count + count - 1) + Frame / 2);
            if (end - begin + Hop >= least && count >= 6)
            {
                expected.Add(new SteadyStretch(frames.Count + 1, frames.Count + count - 1, hertz));
            }

            Add(count, hertz, 0.1 + 0.2 * random.NextDouble());
        }

        Add(random.Next(0, 10), 0, 0);
        Assert.Equal(expected, new SteadyStretches(frames, least, Frame).Find());
    }
}
