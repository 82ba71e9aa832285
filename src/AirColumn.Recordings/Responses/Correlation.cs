using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace AirColumn.Recordings.Responses;

/// <summary>What turns long excitations into a decay, through Fourier transforms.</summary>
internal static class Correlation
{
    /// <summary>
    /// The correlation of a sound with itself at lags from 0 on: for a tube driven by a broad noise it decays as the tube rings (james1995).
    /// </summary>
    public static double[] OfNoise(double[] sound, int lags, CancellationToken cancellationToken)
    {
        var block = 1;
        while (block < 4 * lags)
        {
            block *= 2;
        }

        var sum = new double[lags];
        var pieces = 0;
        for (var from = 0; from + block / 2 <= sound.Length; from += block / 2)
        {
            cancellationToken.ThrowIfCancellationRequested();
            // Half a block of sound against itself and what follows.
            var near = Padded(sound.AsSpan(from, block / 2), block);
            var wide = Padded(sound.AsSpan(from, Math.Min(block / 2 + lags, sound.Length - from)), block);
            Fourier.Forward(near, FourierOptions.NoScaling);
            Fourier.Forward(wide, FourierOptions.NoScaling);
            for (var k = 0; k < block; k++)
            {
                wide[k] *= Complex.Conjugate(near[k]);
            }

            Fourier.Inverse(wide, FourierOptions.AsymmetricScaling);
            for (var lag = 0; lag < lags; lag++)
            {
                sum[lag] += wide[lag].Real;
            }

            pieces++;
        }

        return pieces == 0 ? [] : [.. sum.Select(value => value / pieces)];
    }

    /// <summary>
    /// The answer to an impulse from the answer to a known signal, by division of spectra (farina2000); where the signal has less than
    /// 1e-3 of its greatest power nothing is divided.
    /// </summary>
    public static double[] OfKnown(double[] sound, double[] signal, CancellationToken cancellationToken)
    {
        var size = 1;
        while (size < sound.Length + signal.Length)
        {
            size *= 2;
        }

        var (answer, cause) = (Padded(sound, size), Padded(signal, size));
        Fourier.Forward(answer, FourierOptions.NoScaling);
        cancellationToken.ThrowIfCancellationRequested();
        Fourier.Forward(cause, FourierOptions.NoScaling);
        cancellationToken.ThrowIfCancellationRequested();
        var floor = 1e-3 * cause.Max(c => c.Real * c.Real + c.Imaginary * c.Imaginary);
        for (var k = 0; k < size; k++)
        {
            var power = cause[k].Real * cause[k].Real + cause[k].Imaginary * cause[k].Imaginary;
            answer[k] *= Complex.Conjugate(cause[k]) / Math.Max(power, floor);
        }

        Fourier.Inverse(answer, FourierOptions.AsymmetricScaling);
        return [.. answer.Take(sound.Length).Select(value => value.Real)];
    }

    private static Complex[] Padded(ReadOnlySpan<double> values, int size)
    {
        var padded = new Complex[size];
        for (var i = 0; i < values.Length; i++)
        {
            padded[i] = values[i];
        }

        return padded;
    }
}
