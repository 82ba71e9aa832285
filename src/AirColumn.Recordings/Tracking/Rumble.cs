namespace AirColumn.Recordings.Tracking;

/// <summary>Takes wind, handling and an offset out of a sound: what is slower than any note.</summary>
internal static class Rumble
{
    /// <summary>
    /// The sound less its mean over <paramref name="width"/> samples around each, twice: a fifth of what is looked for is down by 40 dB,
    /// times stay what they were.
    /// </summary>
    public static double[] Removed(double[] sound, int width)
    {
        var once = Once(sound, width / 2);
        return Once(once, width / 2);
    }

    private static double[] Once(double[] sound, int half)
    {
        var sums = new double[sound.Length + 1];
        for (var i = 0; i < sound.Length; i++)
        {
            sums[i + 1] = sums[i] + sound[i];
        }

        var left = new double[sound.Length];
        for (var i = 0; i < sound.Length; i++)
        {
            var (from, to) = (Math.Max(0, i - half), Math.Min(sound.Length, i + half + 1));
            left[i] = sound[i] - (sums[to] - sums[from]) / (to - from);
        }

        return left;
    }
}
