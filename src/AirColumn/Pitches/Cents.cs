using UnitsNet;

namespace AirColumn;

/// <summary>
/// Intervals in cents: 1200 to the octave, 100 to the equal-tempered semitone (A. J. Ellis in
/// helmholtz1885, Appendix XX).
/// </summary>
public static class Cents
{
    /// <summary>An octave.</summary>
    public const double Octave = 1200;

    /// <summary>A major tenth: an octave plus four equal-tempered semitones, 1600 cents.</summary>
    public const double MajorTenth = 1600;

    /// <summary>A twelfth: an octave plus seven equal-tempered semitones, 1900 cents. The third harmonic is 1.955 cents higher.</summary>
    public const double Twelfth = 1900;

    /// <summary>A thousand octaves: within them a frequency ratio is an ordinary double.</summary>
    internal const double Largest = 1_200_000;

    /// <summary>The interval 1200·log2(to/from), in cents; positive if it rises.</summary>
    /// <param name="from">The frequency to measure from; finite and above zero.</param>
    /// <param name="to">The frequency to measure to; finite and above zero.</param>
    /// <returns>The interval in cents.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is not finite and above zero.</exception>
    public static double Between(Frequency from, Frequency to) =>
        Between(
            Require.Positive(from.Hertz, "Hz", nameof(from)),
            Require.Positive(to.Hertz, "Hz", nameof(to))
        );

    /// <summary>The frequency ratio 2^(cents/1200) of an interval; above 1 if it rises.</summary>
    /// <param name="cents">The interval in cents, −1 200 000 to 1 200 000 (a thousand octaves).</param>
    /// <returns>The ratio.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The interval is outside that range.</exception>
    public static double ToRatio(double cents) =>
        Math.Pow(2, Require.InRange(cents, -Largest, Largest, "cents") / 1200);

    /// <summary>The same between frequencies in hertz that are known to be finite and above zero.</summary>
    internal static double Between(double fromHertz, double toHertz)
    {
        var ratio = toHertz / fromHertz;

        // The quotient is the accurate way for near frequencies; absurdly far ones would overflow it.
        return 1200 * (double.IsNormal(ratio) ? Math.Log2(ratio) : Math.Log2(toHertz) - Math.Log2(fromHertz));
    }
}
