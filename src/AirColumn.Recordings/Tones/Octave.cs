namespace AirColumn.Recordings.Tones;

/// <summary>
/// Whether what looked like one period is: a sound that nearly repeats within its period, one whose period was found twice, or two notes
/// that repeat together.
/// </summary>
internal static class Octave
{
    // Lines that no ear would hear beside the note, of the power of all.
    private const double LeastShare = 1e-3;

    // Of the power of noise in their windows.
    private const double AboveNoise = 4;

    // Partials of one periodic sound keep step; what hums along does not, Hz.
    private const double InStep = 0.5;

    // No lips are as slow, Hz.
    private const double Lowest = 25;

    private static readonly double[] Mains = [50, 60];

    private const double Enough = 2; // seconds to listen to
    private const int Passes = 2;

    /// <summary>What the pitch must be multiplied by: 1 to 6 over a product of twos and threes; and what else it may be.</summary>
    /// <param name="sound">The samples.</param>
    /// <param name="rate">Samples per second.</param>
    /// <param name="hertz">The pitch on the whole, Hz.</param>
    /// <param name="hertzAt">The pitch at so many seconds from the first sample.</param>
    /// <param name="resonances">Of the tube, Hz, where they are known.</param>
    public static OctaveChoice Of(
        double[] sound,
        double rate,
        double hertz,
        Func<double, double> hertzAt,
        IReadOnlyList<double> resonances
    )
    {
        // Of the middle, where the note is at home.
        var count = Math.Min(sound.Length, (int)(Enough * rate));
        var first = (sound.Length - count) / 2;
        var part = sound[first..(first + count)];
        double PitchAt(double t) => hertzAt(t + first / rate);

        var lower = 1;
        var track = PhaseTrack.Of(part, rate, hertz, PitchAt, Passes);
        while (Longer(part, rate, hertz, PitchAt, lower) is var (divisor, longer))
        {
            lower *= divisor;
            track = longer;
        }

        if (track is null)
        {
            return OctaveChoice.Sure;
        }

        var comb = new Comb([
            .. Enumerable
                .Range(0, track.Power.Length)
                .Select(h => IsHeard(track, h, lower) ? Math.Sqrt(track.SteadyPower[h]) : 0),
        ]);
        var (number, others, isTwoNotes) =
            resonances.Count == 0 ? comb.Choose() : comb.Choose(hertz / lower, resonances);
        return new OctaveChoice(
            (double)number / lower,
            [.. others.Select(other => (double)other / number)],
            isTwoNotes
        );
    }

    // The track of a period that is 2, 3 or 4 times as long still; null where none is.
    private static (int Divisor, PhaseTrack Track)? Longer(
        double[] part,
        double rate,
        double hertz,
        Func<double, double> hertzAt,
        int lower
    )
    {
        foreach (var divisor in (int[])[2, 3, 4])
        {
            var all = lower * divisor;
            if (
                hertz / all >= Lowest
                && PhaseTrack.Of(part, rate, hertz / all, t => hertzAt(t) / all, Passes) is { } track
                // Not drawn away by something else, such as a hum.
                && Math.Abs(track.MeanHertz * all / hertz - 1) < 0.005
                && AreHeard(track, divisor)
            )
            {
                return (divisor, track);
            }
        }

        return null;
    }

    // Whether harmonics that are not multiples of a number are there.
    private static bool AreHeard(PhaseTrack track, int number)
    {
        var (between, all) = (0.0, 0.0);
        for (var h = 0; h < track.Power.Length; h++)
        {
            all += track.SteadyPower[h];
            between += (h + 1) % number != 0 && IsHeard(track, h, number) ? track.SteadyPower[h] : 0;
        }

        return between > LeastShare * all;
    }

    // Nothing but the note itself speaks for a period longer than it seems.
    private static bool IsHeard(PhaseTrack track, int h, int number) =>
        track.SteadyPower[h] >= AboveNoise * track.Unsteadiness[h]
        && (
            (h + 1) % number == 0
            || (Math.Abs(track.Apart[h]) < InStep && !IsMains((h + 1) * track.MeanHertz + track.Apart[h]))
        );

    // Power stations keep to a few thousandths, and what they hum has died out at a kilohertz.
    private static bool IsMains(double hertz) =>
        hertz < 1000
        && Mains.Any(mains => Math.Abs(hertz - mains * Math.Round(hertz / mains)) < 0.3 + 0.003 * hertz);
}
