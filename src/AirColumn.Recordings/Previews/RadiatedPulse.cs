using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using MathNet.Numerics.Interpolation;
using UnitsNet;

namespace AirColumn.Recordings.Previews;

/// <summary>
/// From the wave that is sent in at the blown end to the sound pressure 1 m from the far end, as that of a simple source there:
/// p = jωρU/(4πr) (pierce1981, ch. 4), U the flow through the far end.
/// </summary>
/// <remarks>
/// From the wave, p + ρcU/S, and not from the flow: what a wave does that leaves the blown end for good is over after some
/// reflections, while a flow there rings with every resonance.
/// </remarks>
internal static class RadiatedPulse
{
    private const double Distance = 1; // m

    // Exact values for each c/L in frequency; between them splines, good to 1e-4 at such a spacing.
    private const double PointsPerTurn = 22;

    /// <summary>The sound of a wave, Pa, as long as the wave.</summary>
    /// <param name="column">The column.</param>
    /// <param name="reflection">What it reflects, which tells how long it rings.</param>
    /// <param name="wave">p + ZcU at the blown end, Pa.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    public static double[] SoundOf(
        Column column,
        ReflectionFunction reflection,
        ReadOnlySpan<double> wave,
        CancellationToken cancellationToken = default
    )
    {
        var pulse = Of(column, reflection, cancellationToken);
        var n = (int)BitOperations.RoundUpToPowerOf2((uint)(wave.Length + pulse.Length));
        var (signal, response) = (new Complex[n], new Complex[n]);
        for (var i = 0; i < wave.Length; i++)
        {
            signal[i] = wave[i];
        }

        for (var i = 0; i < pulse.Length; i++)
        {
            response[i] = pulse[i];
        }

        Fourier.Forward(signal, FourierOptions.Matlab);
        cancellationToken.ThrowIfCancellationRequested();
        Fourier.Forward(response, FourierOptions.Matlab);
        cancellationToken.ThrowIfCancellationRequested();
        for (var i = 0; i < n; i++)
        {
            signal[i] *= response[i];
        }

        Fourier.Inverse(signal, FourierOptions.Matlab);
        var sound = new double[wave.Length];
        for (var i = 0; i < sound.Length; i++)
        {
            sound[i] = signal[i].Real;
        }

        return sound;
    }

    private static double[] Of(
        Column column,
        ReflectionFunction reflection,
        CancellationToken cancellationToken
    )
    {
        var sampleRate = reflection.SampleRate;
        var n = (int)BitOperations.RoundUpToPowerOf2((uint)(2 * reflection.Taps.Length));
        var spacing = sampleRate / n;
        var band = new BandLimit(column, sampleRate);
        var (real, imaginary) = WavePerFlow(column, band, cancellationToken);
        var outside = column.AirProfile.At(column.Bore.Length, column.Bore.Length);
        var scale = outside.Density.KilogramsPerCubicMeter / (4 * Math.PI * Distance);
        var spectrum = new Complex[n];
        for (var k = 1; k < band.Count(spacing); k++)
        {
            var hertz = k * spacing;
            var perFlow = new Complex(real.Interpolate(hertz), imaginary.Interpolate(hertz));
            spectrum[k] = new Complex(0, 2 * Math.PI * hertz) * (scale * band.WeightAt(hertz)) / perFlow;
            spectrum[n - k] = Complex.Conjugate(spectrum[k]);
        }

        Fourier.Inverse(spectrum, FourierOptions.Matlab);
        return [.. spectrum.Select(value => value.Real)];
    }

    // (p + ZcU) at the blown end over U at the far end: an entry of the column's two-port, so to speak, without resonances. It turns once in
    // c/L at most, and is interpolated.
    private static (CubicSpline Real, CubicSpline Imaginary) WavePerFlow(
        Column column,
        BandLimit band,
        CancellationToken cancellationToken
    )
    {
        var spacing = column.Air.SpeedOfSound.MetersPerSecond / column.Bore.Length.Meters / PointsPerTurn;
        // From next to 0 to the first point beyond the band, or as near to it as the column answers.
        var hertz = new double[band.Count(spacing) + 1];
        var (real, imaginary) = (new double[hertz.Length], new double[hertz.Length]);
        for (var i = 0; i < hertz.Length; i++)
        {
            hertz[i] = Math.Clamp(i * spacing, 1e-3, band.Top);
            var frequency = Frequency.FromHertz(hertz[i]);
            var value =
                (column.ImpedanceAt(frequency, cancellationToken) + column.CharacteristicImpedance)
                / column.TransferAt(frequency, cancellationToken).FlowRatio;
            (real[i], imaginary[i]) = (value.Real, value.Imaginary);
        }

        return (
            CubicSpline.InterpolateNaturalSorted(hertz, real),
            CubicSpline.InterpolateNaturalSorted(hertz, imaginary)
        );
    }
}
