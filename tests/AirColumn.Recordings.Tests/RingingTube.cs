using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using UnitsNet;

namespace AirColumn.Recordings.Tests;

/// <summary>What a microphone at the closed end of a tube hears: its input impedance as an impulse response.</summary>
internal static class RingingTube
{
    public const double Rate = 44_100;
    private const int Size = 1 << 17;

    public static Column Straight { get; } =
        new(
            Bore.Build()
                .Cylinder(Length.FromMillimeters(40), Length.FromMillimeters(1250))
                .OpenEnd(Length.FromMillimeters(4)),
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
        );

    public static Column Stepped { get; } =
        new(
            Bore.Build()
                .Cylinder(Length.FromMillimeters(30), Length.FromMillimeters(30))
                .Cylinder(Length.FromMillimeters(38), Length.FromMillimeters(900))
                .Cone(Length.FromMillimeters(60), Length.FromMillimeters(250))
                .OpenEnd(Length.FromMillimeters(3)),
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50))
        );

    /// <summary>Pressure after a short puff: Z·(the spectrum of the puff), back in time; begins at <paramref name="at"/> s.</summary>
    public static double[] Answer(Column column, double at, double seconds, double puffSeconds = 0.0006)
    {
        var spectrum = new Complex[Size];
        var highest = 0.95 * column.HighestFrequency.Hertz;
        var top = (int)(highest * Size / Rate);
        var hertz = Enumerable.Range(1, top).Select(k => k * Rate / Size).ToArray();
        var (re, im) = (new double[top], new double[top]);
        column.Impedance(hertz, re, im);
        for (var k = 1; k <= top; k++)
        {
            var f = hertz[k - 1];
            // A smooth puff, and an end of the band without ringing of its own.
            var puff =
                Math.Exp(-Math.Pow(Math.PI * f * puffSeconds, 2))
                * Math.Pow(Math.Cos(Math.PI / 2 * f / highest), 2);
            spectrum[k] =
                puff
                * new Complex(re[k - 1], im[k - 1])
                * Complex.FromPolarCoordinates(1, -2 * Math.PI * f * at);
            spectrum[Size - k] = Complex.Conjugate(spectrum[k]);
        }

        Fourier.Inverse(spectrum, FourierOptions.AsymmetricScaling);
        var samples = spectrum.Take((int)(seconds * Rate)).Select(c => c.Real).ToArray();
        var largest = samples.Max(Math.Abs);
        return [.. samples.Select(s => 0.3 * s / largest)];
    }

    /// <summary>The same with noise so many dB below the loudest sample.</summary>
    public static Recording Tapped(Column column, double noiseDecibels, int seed, params double[] times)
    {
        var random = new Random(seed);
        var noise = 0.3 * Math.Pow(10, noiseDecibels / 20);
        var sound = MathNet
            .Numerics.Distributions.Normal.Samples(random, 0, noise)
            .Take((int)(2.2 * Rate))
            .ToArray();
        foreach (var time in times)
        {
            var tap = Answer(column, time, 2.2);
            for (var i = 0; i < sound.Length; i++)
            {
                sound[i] += tap[i];
            }
        }

        return Recording.FromSamples(sound, Frequency.FromHertz(Rate));
    }

    /// <summary>A signal as the tube answers it.</summary>
    public static double[] Driven(Column column, double[] signal)
    {
        // Size/2 of impulse response and as much of signal at a time.
        var answer = Answer(column, 0.002, Size / 2 / Rate);
        var size = 1;
        while (size < answer.Length + signal.Length)
        {
            size *= 2;
        }

        var (a, b) = (new Complex[size], new Complex[size]);
        for (var i = 0; i < answer.Length; i++)
        {
            a[i] = answer[i];
        }

        for (var i = 0; i < signal.Length; i++)
        {
            b[i] = signal[i];
        }

        Fourier.Forward(a, FourierOptions.NoScaling);
        Fourier.Forward(b, FourierOptions.NoScaling);
        for (var k = 0; k < size; k++)
        {
            a[k] *= b[k];
        }

        Fourier.Inverse(a, FourierOptions.AsymmetricScaling);
        var driven = a.Take(signal.Length + answer.Length / 2).Select(c => c.Real).ToArray();
        var largest = driven.Max(Math.Abs);
        return [.. driven.Select(s => 0.3 * s / largest)];
    }
}
