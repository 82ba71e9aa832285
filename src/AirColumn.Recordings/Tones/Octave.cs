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

    /// <summary>The factor by which the pitch must be multiplied: 1, 2, 3, ½ or ⅓.</summary>
    public static double Factor(double[] sound, double rate, double hertz, Func<double, double> hertzAt)
    {
        var part = sound.Length <= Enough * rate ? sound : sound[..(int)(Enough * rate)];
        foreach (var divisor in (int[])[2, 3])
        {
            if (
                hertz / divisor >= Lowest
                && PhaseTrack.Of(part, rate, hertz / divisor, t => hertzAt(t) / divisor, Passes) is { } lower
                && AreHeard(
                    lower,
                    divisor,
                    // Nothing but the note itself speaks for a period longer than it seems.
                    (track, h) =>
                        Math.Abs(track.Apart[h - 1]) < InStep
                        && !IsMains(h * hertz / divisor + track.Apart[h - 1])
                )
            )
            {
                return 1.0 / divisor;
            }
        }

        if (PhaseTrack.Of(part, rate, hertz, hertzAt, Passes) is { } track)
        {
            foreach (var factor in (int[])[3, 2])
            {
                if (track.Power.Length >= factor && !AreHeard(track, factor, (_, _) => true))
                {
                    return factor;
                }
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
            all += track.Power[h];
            if ((h + 1) % number != 0 && track.Power[h] >= AboveNoise * track.Noise[h] && isOwn(track, h + 1))
            {
                between += track.Power[h];
            }
        }

        return between > LeastShare * all;
    }
}
