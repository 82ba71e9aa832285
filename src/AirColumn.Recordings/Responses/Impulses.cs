namespace AirColumn.Recordings.Responses;

/// <summary>Finds the taps in a sound and where each has died away.</summary>
internal static class Impulses
{
    private const double Step = 0.004; // seconds of one level

    // Levels over the one before and against the loudest, as powers.
    private const double Rise = 4;
    private const double OfLoudest = 0.03;

    // Taps nearer than this are one, s.
    private const double Apart = 0.15;

    /// <summary>From and to, in samples, of each tap's ringing.</summary>
    public static IReadOnlyList<(int From, int To)> In(double[] sound, double rate, double skipSeconds)
    {
        var step = Math.Max(1, (int)(Step * rate));
        var power = new double[sound.Length / step];
        for (var i = 0; i < power.Length; i++)
        {
            power[i] = DotProduct.Of(sound.AsSpan(i * step, step), sound.AsSpan(i * step, step));
        }

        if (power.Length < 3 || power.Max() == 0)
        {
            return [];
        }

        var quiet = power.Order().ElementAt(power.Length / 10);
        var starts = Starts(power, (int)(Apart / Step));
        var skip = (int)(skipSeconds * rate);
        var found = new List<(int From, int To)>();
        for (var k = 0; k < starts.Count; k++)
        {
            var end = k + 1 < starts.Count ? starts[k + 1] - 1 : power.Length;
            var at = starts[k];
            // Until it is hardly louder than what is there before and after.
            while (at < end && power[at] > 4 * quiet)
            {
                at++;
            }

            found.Add((starts[k] * step + skip, at * step));
        }

        return found;
    }

    // The loudest level of each rise.
    private static List<int> Starts(double[] power, int apart)
    {
        var loudest = power.Max();
        var starts = new List<int>();
        for (var i = 0; i < power.Length; i++)
        {
            var before = i == 0 ? 0 : power[i - 1];
            if (power[i] < OfLoudest * loudest || power[i] < Rise * before)
            {
                continue;
            }

            var peak = i;
            while (peak + 1 < power.Length && power[peak + 1] > power[peak])
            {
                peak++;
            }

            if (starts.Count == 0 || peak - starts[^1] >= apart)
            {
                starts.Add(peak);
            }
        }

        return starts;
    }
}
