using System.Numerics;
using UnitsNet;

namespace AirColumn.Recordings.Previews;

/// <summary>
/// Where a note begins: lips tuned to <see cref="LipHertz"/> and blown with <see cref="Pascal"/> just begin to sound at
/// <see cref="Hertz"/>. By linear stability analysis of the lips blown open and at rest (fletcher1993, silva2007, velut2017).
/// </summary>
/// <remarks>
/// With h = h₀ + Δ/(μω_l²) and v = √(2Δ/ρ) at a pressure Δ in the mouth, and H = 1/[μ(ω_l² − ω² + jωω_l/Q)] the lips' answer to
/// pressure, a small oscillation neither grows nor dies where Y + wh/(ρv) + wvH = 0, Y = 1/Z. Its imaginary part gives v, its real
/// part ω_l, for every ω.
/// </remarks>
internal readonly record struct LipThreshold(double Hertz, double LipHertz, double Pascal)
{
    private const int Points = 600;
    private const int Cuts = 80;
    private const double Highest = 1.5; // half an octave and more above the resonance

    /// <summary>
    /// All thresholds of one register in order of the frequency that sounds: from its resonance up, as long as the column answers like
    /// a compliance, as these lips need it.
    /// </summary>
    /// <param name="column">The column.</param>
    /// <param name="resonance">The resonance, Hz.</param>
    /// <param name="density">ρ of the breath, kg/m³.</param>
    /// <param name="lips">The lips.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    public static List<LipThreshold> Of(
        Column column,
        double resonance,
        double density,
        LipConstants lips,
        CancellationToken cancellationToken = default
    ) =>
        Of(
            hertz => column.ImpedanceAt(Frequency.FromHertz(hertz), cancellationToken),
            column.HighestFrequency.Hertz,
            resonance,
            density,
            lips
        );

    /// <summary>The same for any input impedance, Pa·s/m³, up to a frequency in Hz.</summary>
    public static List<LipThreshold> Of(
        Func<double, Complex> impedance,
        double highest,
        double resonance,
        double density,
        LipConstants lips
    )
    {
        var thresholds = new List<LipThreshold>();
        var top = Math.Min(Highest * resonance, highest);
        for (var i = 1; i < Points; i++)
        {
            var hertz = resonance * Math.Pow(top / resonance, (double)i / Points);
            var admittance = 1 / impedance(hertz);
            if (admittance.Imaginary > 0)
            {
                if (At(hertz, admittance, density, lips) is { } threshold)
                {
                    thresholds.Add(threshold);
                }
            }
            else if (thresholds.Count > 0)
            {
                break;
            }
        }

        return thresholds;
    }

    /// <summary>
    /// The slackest lips that a pressure is enough for: from the lowest threshold down in frequency, where less tension takes more
    /// pressure and the note comes nearer to the resonance. The lowest threshold where the pressure is not enough for any.
    /// </summary>
    public static LipThreshold Slackest(List<LipThreshold> thresholds, double pascal)
    {
        var i = thresholds.IndexOf(thresholds.MinBy(t => t.Pascal));
        while (
            i > 0 && thresholds[i - 1].Pascal <= pascal && thresholds[i - 1].Pascal >= thresholds[i].Pascal
        )
        {
            i--;
        }

        return thresholds[i];
    }

    // The lowest of those at one frequency.
    private static LipThreshold? At(double hertz, Complex admittance, double density, LipConstants lips)
    {
        LipThreshold? lowest = null;
        var omega = 2 * Math.PI * hertz;
        // Threshold frequencies lie between the lips' own and √3 times it (silva2007); a wider range costs nothing.
        var (below, last) = (0.5, double.NaN);
        for (var cut = 0; cut <= Cuts; cut++)
        {
            var ratio = 0.5 + 0.5 * cut / Cuts;
            var balance = Balance(ratio * omega, out _);
            if (balance * last < 0)
            {
                var (a, b) = (below, ratio);
                while (b - a > 1e-12)
                {
                    var middle = (a + b) / 2;
                    (a, b) = Balance(middle * omega, out _) * last > 0 ? (middle, b) : (a, middle);
                }

                Balance(a * omega, out var v);
                var pascal = density * v * v / 2;
                if (lowest is null || pascal < lowest.Value.Pascal)
                {
                    lowest = new(hertz, a * hertz, pascal);
                }
            }

            (below, last) = (ratio, balance);
        }

        return lowest;

        double Balance(double lip, out double v)
        {
            var (real, imaginary) = (lip * lip - omega * omega, omega * lip / lips.Quality);
            var square = lips.MassPerArea * (real * real + imaginary * imaginary);
            v = admittance.Imaginary * square / (lips.Width * imaginary);
            var opening = lips.Opening + density * v * v / (2 * lips.MassPerArea * lip * lip);
            return admittance.Real + lips.Width * (opening / (density * v) + v * real / square);
        }
    }
}
