namespace AirColumn.Recordings.Previews;

/// <summary>
/// The pressure in the mouth over the time of a note: there when the lips are let go, steady, softly released, then silence.
/// </summary>
internal readonly record struct Breath(int Samples, double SampleRate)
{
    private const double Release = 0.15; // s; these two are our choice
    private const double Silence = 0.05;
    private const double LongestSteady = 1;

    /// <summary>
    /// The samples to take the note from: before the release, a second or half of what lies before it.
    /// </summary>
    public Range Steady
    {
        get
        {
            var end = Samples - (int)((Release + Silence) * SampleRate);
            var length = Math.Min((int)(LongestSteady * SampleRate), end / 2);
            return (end - length)..end;
        }
    }

    /// <summary>Pressure at every sample, Pa.</summary>
    public double[] Of(double pascal)
    {
        var pressure = new double[Samples];
        for (var i = 0; i < Samples; i++)
        {
            pressure[i] = pascal * Slope(Left(i) / (Release * SampleRate));
        }

        return pressure;
    }

    /// <summary>What the last moments of the sound are multiplied by, so that it ends without a click.</summary>
    public double FadeAt(int sample) => Slope((Samples - 1 - sample) / (Silence * SampleRate));

    private double Left(int sample) => Samples - Silence * SampleRate - sample;

    // From 0 to 1 along half a cosine.
    private static double Slope(double x) => 0.5 - 0.5 * Math.Cos(Math.PI * Math.Clamp(x, 0, 1));
}
