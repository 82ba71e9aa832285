using System.Numerics;
using AirColumn.Acoustics;
using MathNet.Numerics.IntegralTransforms;
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
    private const double Seconds = 0.15;

    /// <summary>The sound of a wave, Pa, as long as the wave.</summary>
    public static double[] SoundOf(Column column, ReadOnlySpan<double> wave, double sampleRate)
    {
        var pulse = Of(column, sampleRate);
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
        Fourier.Forward(response, FourierOptions.Matlab);
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

    private static double[] Of(Column column, double sampleRate)
    {
        var n = (int)BitOperations.RoundUpToPowerOf2((uint)(Seconds * sampleRate));
        var spacing = sampleRate / n;
        var band = new BandLimit(column, sampleRate);
        var outside = column.AirProfile.At(column.Bore.Length, column.Bore.Length);
        var scale = outside.Density.KilogramsPerCubicMeter / (4 * Math.PI * Distance);
        var spectrum = new Complex[n];
        for (var k = 1; k < band.Count(spacing); k++)
        {
            var frequency = Frequency.FromHertz(k * spacing);
            var flow =
                column.TransferAt(frequency).FlowRatio
                / (column.ImpedanceAt(frequency) + column.CharacteristicImpedance);
            spectrum[k] =
                flow
                * new Complex(0, 2 * Math.PI * frequency.Hertz)
                * (scale * band.WeightAt(frequency.Hertz));
            spectrum[n - k] = Complex.Conjugate(spectrum[k]);
        }

        Fourier.Inverse(spectrum, FourierOptions.Matlab);
        return [.. spectrum.Select(value => value.Real)];
    }
}
