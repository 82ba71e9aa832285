using AirColumn.Recordings.Previews;

namespace AirColumn.Recordings.Tests.Previews;

public class SteadyNoteTests
{
    private const double Rate = 48_000;

    // Straight lines between samples: at 700 samples a period a moment is off by 1e-6 of it at most, and the fit averages.
    [Fact]
    public void The_frequency_of_a_steady_note_is_exact()
    {
        var opening = Signal(t =>
            1 + Math.Sin(2 * Math.PI * 65.37 * t) + 0.2 * Math.Cos(4 * Math.PI * 65.37 * t)
        );
        var note = SteadyNote.Of(opening, opening, Rate);

        Tubes.Within(1e-4, Tubes.Cents(65.37, note.Hertz));
        Tubes.Within(1e-3, note.DriftCents);
        Tubes.Within(1e-4, note.Jitter);
        Tubes.Within(0.02, note.Growth - 1);
        // Power of a sine of amplitude 1 and one of 0.2.
        Tubes.Within(0.01, note.Pressure - Math.Sqrt((1 + 0.04) / 2));
    }

    // Phase 2π(60t + 0.05t²): 60.05 Hz in the middle of a second, half a second apart 0.05 Hz, that is 1.44 cents.
    [Fact]
    public void A_gliding_note_shows_its_drift()
    {
        var opening = Signal(t => Math.Sin(2 * Math.PI * (60 * t + 0.05 * t * t)));

        Tubes.Within(0.03, SteadyNote.Of(opening, opening, Rate).DriftCents - Tubes.Cents(60.025, 60.075));
    }

    // Every other period longer by a fiftieth: the moments lie a hundredth to either side of the line.
    [Fact]
    public void A_note_of_two_lengths_shows_its_jitter()
    {
        var opening = Signal(t =>
            Math.Sin(2 * Math.PI * 60 * t + 2 * Math.PI * 0.01 * Math.Sin(2 * Math.PI * 30 * t + 1))
        );

        Assert.InRange(SteadyNote.Of(opening, opening, Rate).Jitter, 0.005, 0.015);
    }

    [Fact]
    public void Stillness_has_no_frequency()
    {
        var opening = Signal(_ => 0.001);

        Assert.Equal(0, SteadyNote.Of(opening, opening, Rate).Hertz);
    }

    private static double[] Signal(Func<double, double> value) =>
        [.. Enumerable.Range(0, (int)Rate).Select(i => value(i / Rate))];
}
