namespace AirColumn.Recordings.Responses;

/// <summary>Tells a tone that is held from a resonance that noise drives: the power of the one is even, that of the other comes and goes.</summary>
internal static class HeldTone
{
    // Of the power of narrow noise the standard deviation is its mean; a tone that breathes and trembles has far less.
    private const double Even = 0.35;
    private const int LeastLooks = 6;
    private const int Periods = 4;

    /// <summary>Whether a sound holds a tone where a mode was found.</summary>
    public static bool Is(double[] sound, double rate, double hertz, double q)
    {
        // As far apart as the mode remembers.
        var apart = Math.Max(Periods, q / Math.PI) / hertz * rate;
        var (window, powers) = ((int)(Periods / hertz * rate), new List<double>());
        for (var from = 0.0; from + window <= sound.Length; from += apart)
        {
            var (re, im) = (0.0, 0.0);
            for (var i = 0; i < window; i++)
            {
                var (sin, cos) = Math.SinCos(2 * Math.PI * hertz * i / rate);
                var weighed = sound[(int)from + i] * (1 - Math.Cos(2 * Math.PI * (i + 0.5) / window));
                (re, im) = (re + weighed * cos, im + weighed * sin);
            }

            powers.Add(re * re + im * im);
        }

        var mean = powers.Count > 0 ? powers.Average() : 0;
        return powers.Count >= LeastLooks
            && Math.Sqrt(powers.Average(p => (p - mean) * (p - mean))) < Even * mean;
    }
}
