namespace AirColumn.Recordings.Tones;

/// <summary>
/// Whether what looked like one period is: a sound that nearly repeats within its period, or one whose period was found twice.
/// </summary>
internal static class Octave
{
    // Partials that no ear would take as the pitch's, of the power of all.
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

    /// <summary>The factor by which the pitch must be multiplied: 1, 2, 3, or one over a product of twos and threes.</summary>
    public static double Factor(double[] sound, double rate, double hertz, Func<double, double> hertzAt)
    {
        var part = sound.Length <= Enough * rate ? sound : sound[..(int)(Enough * rate)];
        var lower = 1;
        while (Longer(part, rate, hertz, hertzAt, lower) is > 1 and var divisor)
        {
            lower *= divisor;
        }

        if (lower > 1 || PhaseTrack.Of(part, rate, hertz, hertzAt, Passes) is not { } track)
        {
            return 1.0 / lower;
        }

        foreach (var factor in (int[])[3, 2])
        {
            if (track.Power.Length >= factor && !AreHeard(track, factor, (_, _) => true))
            {
                return factor;
            }
        }

        return 1;
    }

    // 2, 3 or 4 where the period is so much longer still; 1 where it is not.
    private static int Longer(
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
                && AreHeard(
                    track,
                    divisor,
                    // Nothing but the note itself speaks for a period longer than it seems.
                    (track, h) =>
                        Math.Abs(track.Apart[h - 1]) < InStep
                        && !IsMains(h * track.MeanHertz + track.Apart[h - 1])
                )
            )
            {
                return divisor;
            }
        }

        return 1;
    }

    // Power stations keep to a few thousandths, and what they hum has died out at a kilohertz.
    private static bool IsMains(double hertz) =>
        hertz < 1000
        && Mains.Any(mains => Math.Abs(hertz - mains * Math.Round(hertz / mains)) < 0.3 + 0.003 * hertz);

    // Whether harmonics that are not multiples of a number are there.
    private static bool AreHeard(PhaseTrack track, int number, Func<PhaseTrack, int, bool> isOwn)
    {
        var (between, all) = (0.0, 0.0);
        for (var h = 0; h < track.Power.Length; h++)
        {
            all += track.SteadyPower[h];
            if (
                (h + 1) % number != 0
                && track.SteadyPower[h] >= AboveNoise * track.Unsteadiness[h]
                && isOwn(track, h + 1)
            )
            {
                between += track.SteadyPower[h];
            }
        }

        return between > LeastShare * all;
    }
}
