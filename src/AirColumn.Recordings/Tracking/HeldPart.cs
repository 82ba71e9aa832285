namespace AirColumn.Recordings.Tracking;

/// <summary>Finds where, in frames that follow on each other, a pitch is held and does not travel.</summary>
internal static class HeldPart
{
    // Within so many cents in all a player wanders, vibrato not counted; farther is another note or a glide.
    public const double Range = 50;

    // An end of a note that leaves its middle by more is a glide into or out of it, cents.
    private const double OfMiddle = 20;

    // Frames to either side that are smoothed over: two turns of a vibrato.
    private const int Around = 4;

    // No player drifts as fast without meaning to, cents in a second, and so straight: the share that a line explains.
    private const double Drift = 15;
    private const double Straight = 0.8;
    private const double GlideRange = 20;

    /// <summary>Cents of each frame, without vibrato and without frames of another octave; a frame without pitch has NaN.</summary>
    public static double[] Smoothed(ReadOnlySpan<double> cents)
    {
        var medians = new double[cents.Length];
        var around = new List<double>();
        for (var i = 0; i < cents.Length; i++)
        {
            around.Clear();
            foreach (var one in Near(cents, i, Around))
            {
                if (!double.IsNaN(one))
                {
                    around.Add(one);
                }
            }

            around.Sort();
            medians[i] =
                around.Count > 0 ? (around[(around.Count - 1) / 2] + around[around.Count / 2]) / 2
                : i > 0 ? medians[i - 1]
                : 0;
        }

        var smoothed = new double[cents.Length];
        for (var i = 0; i < cents.Length; i++)
        {
            var near = Near(medians, i, Around / 2);
            var sum = 0.0;
            foreach (var one in near)
            {
                sum += one;
            }

            smoothed[i] = sum / near.Length;
        }

        return smoothed;
    }

    /// <summary>The longest part of smoothed cents that stays within the range of one note.</summary>
    public static (int From, int To) Longest(ReadOnlySpan<double> smoothed)
    {
        // Indices of falling highest and rising lowest values of the part that ends here.
        var (highest, lowest) = (new LinkedList<int>(), new LinkedList<int>());
        var (best, from) = ((From: 0, To: 0), 0);
        for (var i = 0; i < smoothed.Length; i++)
        {
            while (highest.Last is { } last && smoothed[last.Value] <= smoothed[i])
            {
                highest.RemoveLast();
            }

            while (lowest.Last is { } last && smoothed[last.Value] >= smoothed[i])
            {
                lowest.RemoveLast();
            }

            highest.AddLast(i);
            lowest.AddLast(i);
            while (smoothed[highest.First!.Value] - smoothed[lowest.First!.Value] > Range)
            {
                from++;
                if (highest.First.Value < from)
                {
                    highest.RemoveFirst();
                }

                if (lowest.First.Value < from)
                {
                    lowest.RemoveFirst();
                }
            }

            if (i + 1 - from > best.To - best.From)
            {
                best = (from, i + 1);
            }
        }

        return best;
    }

    /// <summary>A part of smoothed cents without its ends where these are a glide into it or out of it.</summary>
    public static (int From, int To) AtHome(ReadOnlySpan<double> smoothed, int from, int to)
    {
        var sorted = smoothed[from..to].ToArray();
        Array.Sort(sorted);
        var middle = sorted[sorted.Length / 2];
        while (Math.Abs(smoothed[from] - middle) > OfMiddle)
        {
            from++;
        }

        while (Math.Abs(smoothed[to - 1] - middle) > OfMiddle)
        {
            to--;
        }

        return (from, to);
    }

    /// <summary>The cents in a second by which smoothed cents glide; null where they are held or wander. Beside a glide less is one too.</summary>
    public static double? Glide(ReadOnlySpan<double> smoothed, double step, bool isBesideGlide)
    {
        var (middle, mean, xx, xy, yy) = ((smoothed.Length - 1) / 2.0, 0.0, 0.0, 0.0, 0.0);
        foreach (var one in smoothed)
        {
            mean += one / smoothed.Length;
        }

        for (var i = 0; i < smoothed.Length; i++)
        {
            var (x, y) = ((i - middle) * step, smoothed[i] - mean);
            xx += x * x;
            xy += x * y;
            yy += y * y;
        }

        var slope = xx > 0 ? xy / xx : 0;
        return
            Math.Abs(slope) >= Drift
            && (isBesideGlide || Math.Abs(slope) * step * smoothed.Length >= GlideRange)
            && xy * xy / xx >= Straight * yy
            ? slope
            : null;
    }

    private static ReadOnlySpan<double> Near(ReadOnlySpan<double> values, int i, int around) =>
        values[Math.Max(0, i - around)..Math.Min(values.Length, i + around + 1)];
}
