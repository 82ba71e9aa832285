using System.Numerics;
using AirColumn.Recordings.Tracking;

namespace AirColumn.Recordings.Tones;

/// <summary>The pitch of a held note as the phase of its fundamental over time, from the phases of all its harmonics.</summary>
/// <remarks>
/// <para>
/// Sound driven by lips repeats itself: its partials are harmonics of one frequency. Each is brought down to zero frequency by the phase
/// that is known so far, with windows of whole periods, four or more, in whose spectra the neighbours vanish, and what its phase still turns by, from
/// window to window, corrects that phase (flanagan1966 for the turning phase as frequency). Harmonics are joined with the weight
/// that each has for a periodic signal in coloured noise, h²·power/noise power: quinn1991 shows that to be efficient. The noise is measured between the
/// harmonics, where the windows have zeros for both neighbours.
/// </para>
/// <para>Missing or weak harmonics, the first too, only lose weight. Nothing is unwrapped: the increments stay far below half a turn.</para>
/// </remarks>
internal sealed class PhaseTrack
{
    /// <summary>Corrections after which nothing changes any more.</summary>
    private const int ToTheEnd = 4;

    private const int LeastPeriods = 4;
    private const double LeastWindow = 0.03; // seconds
    private const int MostHarmonics = 60;

    // Power over noise, in a window, from which a harmonic is heard.
    private const double LeastRatio = 8;

    // Of the power of the middle window: below it the note has broken off.
    private const double GapShare = 0.01;
    private const double MostGapShare = 0.2;
    private const double AboveNoise = 2;

    // Of the strongest harmonic's power: what a first guess is corrected by.
    private const double StrongShare = 0.1;

    private readonly double[] sound;
    private readonly double rate;
    private readonly int half; // of a window, samples
    private readonly int hop;
    private readonly double[] window;
    private readonly double[] turns; // of the fundamental at each node
    private readonly int harmonics;
    private readonly double noiseBetweenHarmonics;

    private PhaseTrack(
        double[] sound,
        double rate,
        double hertz,
        Func<double, double> hertzAt,
        bool isForPhases
    )
    {
        (this.sound, this.rate) = (sound, rate);
        var periods = Math.Max(LeastPeriods, (int)Math.Ceiling(LeastWindow * hertz));
        // The noise of a Hann window is 1.5 of its bins wide, and so many bins lie between two harmonics.
        noiseBetweenHarmonics = periods / 1.5;
        half = (int)Math.Round(periods * rate / hertz / 2);
        // Phases must not turn far from one window to the next; powers only need all of the sound, and what
        // lies beside a harmonic to turn by less than half.
        hop = isForPhases ? (int)Math.Round(Math.Clamp(4 / hertz, 0.004, 0.025) * rate) : half / 2;
        window = Hann(half);
        harmonics = Math.Clamp((int)(LowRate.Partials / (1.03 * hertz)), 1, MostHarmonics);
        Nodes = Math.Max(0, (sound.Length - 2 * half - 1) / hop + 1);
        turns = new double[Nodes];
        for (var m = 1; m < Nodes; m++)
        {
            turns[m] = turns[m - 1] + hertzAt((half + (m - 0.5) * hop) / rate) * hop / rate;
        }
    }

    /// <summary>Windows along the sound.</summary>
    public int Nodes { get; }

    /// <summary>From one window to the next, s.</summary>
    public double Step => hop / rate;

    /// <summary>How many windows on one begins that overlaps by half.</summary>
    public int NodesInHalfWindow => Math.Max(1, (int)Math.Round((double)half / hop));

    /// <summary>The middle of the first window, s from the first sample.</summary>
    public double FirstSeconds => half / rate;

    /// <summary>Turns of the fundamental at each window.</summary>
    public ReadOnlySpan<double> Turns => turns;

    /// <summary>Mean power of each harmonic, from the first; a sine wave of amplitude 1 has ½.</summary>
    public double[] Power { get; private set; } = [];

    /// <summary>Mean power of the noise in the window of each harmonic.</summary>
    public double[] Noise { get; private set; } = [];

    /// <summary>
    /// Power of each harmonic in the middle one of all windows: what a knock or a gap adds to a few is not in it.
    /// </summary>
    public double[] SteadyPower { get; private set; } = [];

    /// <summary>Mean power halfway to the neighbours, with what knocks and gaps leave there.</summary>
    public double[] Unsteadiness { get; private set; } = [];

    /// <summary>Frequency over the whole track, Hz.</summary>
    public double MeanHertz => (turns[^1] - turns[0]) / ((Nodes - 1) * Step);

    /// <summary>Power of all harmonics over that of the noise between them; rumble below the fundamental is not counted.</summary>
    public double ToNoise =>
        Power.Sum() / Math.Max(1e-300, noiseBetweenHarmonics * Noise.Skip(harmonics > 1 ? 1 : 0).Sum());

    /// <summary>By how much each harmonic's own phase turns beside the fundamental's, Hz.</summary>
    public double[] Apart { get; private set; } = [];

    /// <summary>Each harmonic's share of what the phase was joined from; 1 in all, or 0 where nothing was heard.</summary>
    public double[] Shares { get; private set; } = [];

    /// <summary>For each harmonic, from window to window, what its phase turns beside the joined one, over its number: turns.</summary>
    public double[][] Strays { get; private set; } = [];

    /// <summary>Of the steps to each window, those where the note had broken off.</summary>
    public bool[] Gaps { get; private set; } = [];

    /// <summary>How alike the noise of two windows is that are so many steps apart: 1 at 0, 0 where they do not overlap.</summary>
    public double Overlap(int steps)
    {
        var apart = steps * hop;
        return apart >= window.Length
            ? 0
            : DotProduct.Of(window.AsSpan(apart), window.AsSpan(0, window.Length - apart))
                / DotProduct.Of(window, window);
    }

    /// <summary>Follows a note; null where the sound is shorter than three windows.</summary>
    /// <param name="sound">The samples.</param>
    /// <param name="rate">Samples per second.</param>
    /// <param name="hertz">The pitch on the whole, Hz.</param>
    /// <param name="hertzAt">The pitch at so many seconds from the first sample, to about 1 %.</param>
    /// <param name="passes">How often it is corrected: a few times for powers, <see cref="ToTheEnd"/> for phases.</param>
    public static PhaseTrack? Of(
        double[] sound,
        double rate,
        double hertz,
        Func<double, double> hertzAt,
        int passes = ToTheEnd
    )
    {
        var track = new PhaseTrack(sound, rate, hertz, hertzAt, passes == ToTheEnd);
        if (track.Nodes < 5)
        {
            return null;
        }

        for (var pass = 0; pass < passes; pass++)
        {
            track.Correct(pass == 0);
        }

        return track;
    }

    private static double[] Hann(int half)
    {
        var window = new double[2 * half + 1];
        var sum = 0.0;
        for (var i = 0; i < window.Length; i++)
        {
            window[i] = 0.5 + 0.5 * Math.Cos(Math.PI * (i - half) / half);
            sum += window[i];
        }

        for (var i = 0; i < window.Length; i++)
        {
            window[i] /= sum;
        }

        return window;
    }

    private void Correct(bool first)
    {
        var (on, between) = Demodulate();
        Power = new double[harmonics];
        Noise = new double[harmonics];
        SteadyPower = new double[harmonics];
        Unsteadiness = new double[harmonics];
        Apart = new double[harmonics];
        var weights = new double[harmonics];
        for (var h = 0; h < harmonics; h++)
        {
            // |b|² of a sine wave of amplitude A is A²/4: half of it is at the negative frequency.
            Noise[h] = 2 * (MedianPower(between, h) + MedianPower(between, h + 1)) / 2;
            Power[h] = Math.Max(0, 2 * MeanPower(on, h) - Noise[h]);
            SteadyPower[h] = Math.Max(0, 2 * Math.Log(2) * MedianPower(on, h) - Noise[h]);
            Unsteadiness[h] = MeanPower(between, h) + MeanPower(between, h + 1);
        }

        // Noise alone has power by chance, and its phases turn at random.
        var floor = 1e-12 * Power.Max() + 1e-300;
        var ratios = Power.Select((power, h) => power / (Noise[h] + floor)).ToArray();
        var least = Math.Min(LeastRatio, ratios.Max() / 2);
        for (var h = 0; h < harmonics; h++)
        {
            weights[h] = ratios[h] >= least ? (h + 1.0) * (h + 1) * ratios[h] : 0;
        }

        if (first)
        {
            KeepSafe(weights);
        }

        var own = TurnsOf(on);
        WeighByWhatIsLeft(own, weights, first);
        Gaps = BrokenOff(on, weights);
        Join(own, weights);
    }

    // A first guess may be off by so much that high harmonics turn too far to be trusted, and that a hum, which is weaker than the note,
    // seems to be one: two strong and low ones remain.
    private void KeepSafe(double[] weights)
    {
        var strong = StrongShare * Power.Max();
        var kept = 0;
        for (var h = 0; h < harmonics; h++)
        {
            if (Power[h] < strong || kept++ >= 2)
            {
                weights[h] = 0;
            }
        }
    }

    // For each harmonic the turns of its phase from window to window, over its number: what the fundamental's is off by.
    private double[][] TurnsOf((double Re, double Im)[][] on)
    {
        var own = new double[harmonics][];
        for (var h = 0; h < harmonics; h++)
        {
            own[h] = new double[Nodes];
            for (var m = 1; m < Nodes; m++)
            {
                var (a, b) = (on[h][m], on[h][m - 1]);
                own[h][m] =
                    Math.Atan2(a.Im * b.Re - a.Re * b.Im, a.Re * b.Re + a.Im * b.Im)
                    / (2 * Math.PI * (h + 1));
            }
        }

        return own;
    }

    // A harmonic whose phase turns about more than its noise explains, hum beside it say, loses weight to match.
    private void WeighByWhatIsLeft(double[][] own, double[] weights, bool first)
    {
        var joined = Joined(own, weights);
        for (var h = 0; h < harmonics; h++)
        {
            var left = 0.0;
            for (var m = 1; m < Nodes; m++)
            {
                var difference = own[h][m] - joined[m];
                left += difference * difference;
                Apart[h] += (h + 1) * difference / Step;
            }

            left = left / (Nodes - 1) * (2 * Math.PI) * (2 * Math.PI);
            Apart[h] /= Nodes - 1;
            if (!first && left > 0)
            {
                weights[h] = Math.Min(weights[h], 1 / left);
            }
        }
    }

    private double[] Joined(double[][] own, double[] weights)
    {
        var total = weights.Sum();
        var joined = new double[Nodes];
        for (var m = 1; m < Nodes && total > 0; m++)
        {
            for (var h = 0; h < harmonics; h++)
            {
                joined[m] += weights[h] / total * own[h][m];
            }
        }

        return joined;
    }

    // Where a note breaks off its phase is that of noise: windows that fall far below the others, and their neighbours. Harmonics count as
    // they do for the pitch, so that rumble under a breath is no note.
    private bool[] BrokenOff((double Re, double Im)[][] on, double[] weights)
    {
        var (power, noise, total) = (new double[Nodes], 0.0, weights.Sum());
        for (var h = 0; h < harmonics; h++)
        {
            if (weights[h] > 0)
            {
                var share = weights[h] / total;
                noise += share * Noise[h] / Power[h];
                for (var m = 0; m < Nodes; m++)
                {
                    var (re, im) = on[h][m];
                    power[m] += share * (re * re + im * im) / Power[h];
                }
            }
        }

        var least =
            Math.Clamp(AboveNoise * noise, GapShare, MostGapShare) * power.Order().ElementAt(Nodes / 2);
        var gaps = new bool[Nodes];
        for (var m = 1; m < Nodes; m++)
        {
            gaps[m] = power[m] < least || power[m - 1] < least;
        }

        // What breaks off everywhere is not taken for a note with gaps.
        return gaps.Count(gap => gap) == Nodes - 1 ? new bool[Nodes] : gaps;
    }

    private void Join(double[][] own, double[] weights)
    {
        var joined = Joined(own, weights);
        var total = weights.Sum();
        Shares = [.. weights.Select(weight => total > 0 ? weight / total : 0)];
        Strays = [.. own.Select(turned => turned.Zip(joined, (its, all) => its - all).ToArray())];
        if (Gaps.Contains(true))
        {
            // Across a gap the pitch goes on as it does elsewhere.
            var kept = joined.Where((_, m) => m > 0 && !Gaps[m]).Order().ToArray();
            for (var m = 1; m < Nodes; m++)
            {
                joined[m] = Gaps[m] ? kept[kept.Length / 2] : joined[m];
            }
        }

        var sum = 0.0;
        for (var m = 1; m < Nodes; m++)
        {
            sum += joined[m];
            turns[m] += sum;
        }
    }

    // Each harmonic, and each place halfway below it and above the last, at zero frequency.
    private ((double Re, double Im)[][] On, (double Re, double Im)[][] Between) Demodulate()
    {
        var on = Empty(harmonics);
        var between = Empty(harmonics + 1);
        var (cos, sin) = (new double[sound.Length], new double[sound.Length]);
        for (var i = 0; i < sound.Length; i++)
        {
            // In half turns, whose even powers are the harmonics.
            (sin[i], cos[i]) = Math.SinCos(-Math.PI * TurnsAt(i));
        }

        var (re, im) = (sound.ToArray(), new double[sound.Length]);
        for (var k = 1; k <= 2 * harmonics + 1; k++)
        {
            Turn(re, im, cos, sin);
            var sums = k % 2 == 0 ? on[k / 2 - 1] : between[k / 2];
            for (var m = 0; m < Nodes; m++)
            {
                sums[m] = (
                    DotProduct.Of(window, re.AsSpan(m * hop, window.Length)),
                    DotProduct.Of(window, im.AsSpan(m * hop, window.Length))
                );
            }
        }

        return (on, between);
    }

    private static void Turn(double[] re, double[] im, double[] cos, double[] sin)
    {
        var i = 0;
        for (; i <= re.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            var (a, b) = (new Vector<double>(re, i), new Vector<double>(im, i));
            var (c, s) = (new Vector<double>(cos, i), new Vector<double>(sin, i));
            (a * c - b * s).CopyTo(re, i);
            (a * s + b * c).CopyTo(im, i);
        }

        for (; i < re.Length; i++)
        {
            (re[i], im[i]) = (re[i] * cos[i] - im[i] * sin[i], re[i] * sin[i] + im[i] * cos[i]);
        }
    }

    private (double Re, double Im)[][] Empty(int count)
    {
        var all = new (double Re, double Im)[count][];
        for (var i = 0; i < count; i++)
        {
            all[i] = new (double Re, double Im)[Nodes];
        }

        return all;
    }

    // A parabola through three nodes: the pitch changes within a window too.
    private double TurnsAt(int sample)
    {
        var x = (double)(sample - half) / hop;
        var m = Math.Clamp((int)Math.Round(x), 1, Nodes - 2);
        var t = x - m;
        var (a, b, c) = (turns[m - 1], turns[m], turns[m + 1]);
        return b + t * ((c - a) / 2 + t * (a - 2 * b + c) / 2);
    }

    private static double MeanPower((double Re, double Im)[][] all, int h) =>
        all[h].Average(b => b.Re * b.Re + b.Im * b.Im);

    // The mean of what is spread as the square of noise, from its median: a note's own breaks do not count.
    private static double MedianPower((double Re, double Im)[][] all, int h) =>
        all[h].Select(b => b.Re * b.Re + b.Im * b.Im).Order().ElementAt(all[h].Length / 2) / Math.Log(2);
}
