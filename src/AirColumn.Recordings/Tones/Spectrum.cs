using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using UnitsNet;

namespace AirColumn.Recordings.Tones;

/// <summary>Power in thirds of an octave, by averaged periodograms with a raised-cosine window (welch1967).</summary>
internal static class Spectrum
{
    private const int FirstBand = -16; // 25 Hz
    private const int LastBand = 13; // 20 kHz

    public static IReadOnlyList<BandLevel> Bands(Recording recording, int channel, long from, long count)
    {
        var size = 1 << (int)Math.Clamp(Math.Ceiling(Math.Log2(recording.RateHertz / 3)), 10, 18);
        if (size > count)
        {
            size = 1 << (int)Math.Log2(count);
        }

        var power = Periodogram(recording, channel, from, count, size);
        var bin = recording.RateHertz / size;
        var bands = new List<BandLevel>();
        for (var n = FirstBand; n <= LastBand; n++)
        {
            var centre = 1000 * Math.Pow(10, n / 10.0);
            var (low, high) = (centre * Math.Pow(10, -0.05), centre * Math.Pow(10, 0.05));
            if (high > recording.RateHertz / 2)
            {
                break;
            }

            bands.Add(
                new BandLevel(
                    Frequency.FromHertz(centre),
                    10 * Math.Log10(Math.Max(1e-20, Between(power, low / bin, high / bin)))
                )
            );
        }

        return bands;
    }

    // Bins, and the parts of bins at the edges.
    private static double Between(double[] power, double low, double high)
    {
        var sum = 0.0;
        for (var k = (int)Math.Round(low); k <= (int)Math.Round(high) && k < power.Length; k++)
        {
            sum += power[k] * Math.Max(0, Math.Min(high, k + 0.5) - Math.Max(low, k - 0.5));
        }

        return sum;
    }

    // Mean power in each bin; a sine wave of amplitude 1 adds up to ½.
    private static double[] Periodogram(Recording recording, int channel, long from, long count, int size)
    {
        var power = new double[size / 2 + 1];
        var samples = new double[size];
        var transform = new Complex[size];
        var windows = Math.Max(1, (count - size) / (size / 2) + 1);
        for (var i = 0L; i < windows; i++)
        {
            recording.Read(channel, from + i * (size / 2), samples);
            for (var k = 0; k < size; k++)
            {
                transform[k] = samples[k] * (1 - Math.Cos(2 * Math.PI * (k + 0.5) / size));
            }

            Fourier.Forward(transform, FourierOptions.NoScaling);
            for (var k = 0; k < power.Length; k++)
            {
                var (re, im) = (transform[k].Real, transform[k].Imaginary);
                // Of both signs of frequency; the window's mean square is 1.5.
                power[k] += 2 * (re * re + im * im) / (1.5 * size * (double)size * windows);
            }
        }

        return power;
    }
}
