using MathNet.Numerics.Integration;
using UnitsNet;

namespace AirColumn;

/// <summary>Indicators that published tests have linked to how players rank instruments.</summary>
public static class QualityIndicators
{
    private const double LowHertz = 1000;
    private const double HighHertz = 2000;

    /// <summary>
    /// Geometric mean of |Z| from 1 kHz to 2 kHz, Pa·s/m³: exp of the mean of ln|Z| over frequency.
    /// </summary>
    /// <returns>The mean, Pa·s/m³.</returns>
    /// <remarks>
    /// In tests with 38 lip-blown drone tubes and seven players the ranking fell as |Z| rose in this range. There the resonances of the
    /// vocal tract compete with the tube (smith2007). The tests say nothing about other instruments. The mean is integrated to 1e-6.
    /// </remarks>
    /// <param name="column">A column that answers up to 2 kHz.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="ArgumentException">The column's model ends below 2 kHz.</exception>
    public static double MeanImpedance(this Column column, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(column);
        if (column.HighestFrequency.Hertz < HighHertz)
        {
            throw new ArgumentException(
                $"The model of this column ends at {Require.Show(Math.Round(column.HighestFrequency.Hertz, 1), "Hz")}; the mean "
                    + "is taken up to 2000 Hz. Leave this indicator out for so wide a bore.",
                nameof(column)
            );
        }

        // ln|Z| swings once between neighbouring resonances: pieces of half a spacing, each by adaptive quadrature.
        var spacing = column.Gas.SpeedOfSound / (2 * column.Bore.LengthMetres);
        var pieces = (int)Math.Ceiling(2 * (HighHertz - LowHertz) / spacing);
        var sum = 0.0;
        for (var i = 0; i < pieces; i++)
        {
            var from = LowHertz + (HighHertz - LowHertz) * i / pieces;
            var to = LowHertz + (HighHertz - LowHertz) * (i + 1) / pieces;
            sum += GaussKronrodRule.Integrate(LogImpedance, from, to, out _, out _, 1e-8, 12, 15);
        }

        return Math.Exp(sum / (HighHertz - LowHertz));

        double LogImpedance(double hertz) =>
            Math.Log(column.ImpedanceAt(Frequency.FromHertz(hertz), cancellationToken).Magnitude);
    }

    /// <summary>
    /// Height of the first resonance: |Z| there over the characteristic impedance ρc/S at the blown end, dimensionless. At a closed blown end
    /// the resonance is a maximum: the higher it is, the more readily lips or a reed speak (backus1976). At an open blown end the resonance
    /// is a minimum.
    /// </summary>
    /// <param name="column">The column.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The height, dimensionless.</returns>
    /// <exception cref="InvalidOperationException">The lowest mode is too damped to be a resonance.</exception>
    public static double FirstPeakHeight(this Column column, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(column);
        return column.LowestResonance(cancellationToken) is { } resonance
            ? resonance.Magnitude / column.CharacteristicImpedance
            : throw new InvalidOperationException(
                "The lowest mode of this column is too damped to show a resonance; it has no first peak."
            );
    }

    /// <summary>Computes the distance of each resonance from the nearest harmonic of a fundamental that you choose.</summary>
    /// <returns>One deviation for each resonance, in their order.</returns>
    /// <remarks>
    /// The same cents measure the equivalent fundamental pitch f/n of each resonance against the fundamental (chick2004).
    /// </remarks>
    /// <param name="resonances">The resonances.</param>
    /// <param name="fundamental">The fundamental, such as the first resonance or the note that is played.</param>
    /// <param name="onlyOdd">
    /// True if only odd multiples count, as for the resonances of a tube closed at the blown end. Default: false.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">The fundamental is not a finite number above zero.</exception>
    public static IReadOnlyList<Harmonicity> HarmonicityAgainst(
        this IEnumerable<Resonance> resonances,
        Frequency fundamental,
        bool onlyOdd = false
    )
    {
        ArgumentNullException.ThrowIfNull(resonances);
        Require.Positive(fundamental.Hertz, "Hz", nameof(fundamental));
        return [.. resonances.Select(resonance => Harmonicity.Of(resonance, fundamental.Hertz, onlyOdd))];
    }
}
