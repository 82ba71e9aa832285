using System.Numerics;

namespace AirColumn.Recordings.Tests;

/// <summary>A tone whose pitch is known, with what a room and a player add to it.</summary>
internal sealed record TestTone
{
    public double Rate { get; init; } = 44_100;
    public double Seconds { get; init; } = 2;
    public double Hertz { get; init; } = 65.4;

    /// <summary>Amplitude of each harmonic, from the first.</summary>
    public IReadOnlyList<double> Partials { get; init; } = Falling(30);

    /// <summary>Tone over noise, dB, over all frequencies; no noise if infinite.</summary>
    public double SignalToNoise { get; init; } = double.PositiveInfinity;

    /// <summary>Of the noise: white, or breath, 6 dB an octave down from 1 kHz and louder in each period's first half.</summary>
    public bool IsBreath { get; init; }

    public double VibratoHertz { get; init; } = 5.5;
    public double VibratoCents { get; init; }
    public double DriftCentsPerSecond { get; init; }

    /// <summary>Of the mains: amplitude over the tone's effective value; harmonics fall as 1/h.</summary>
    public double Hum { get; init; }
    public double HumHertz { get; init; } = 50;

    public double Level { get; init; } = 0.1;
    public int Seed { get; init; } = 1;

    /// <summary>1/h.</summary>
    public static double[] Falling(int count) => [.. Enumerable.Range(1, count).Select(h => 1.0 / h)];

    /// <summary>No first harmonic at all.</summary>
    public static double[] NoFundamental(int count) => [0, .. Falling(count).Skip(1)];

    /// <summary>A first harmonic 40 dB below the second.</summary>
    public static double[] WeakFundamental(int count) => [0.005, .. Falling(count).Skip(1)];

    /// <summary>The mean frequency about a time: half the square of the vibrato above its middle in cents.</summary>
    public double MeanHertz(double seconds) =>
        Hertz
        * Math.Pow(2, DriftCentsPerSecond * (seconds - Seconds / 2) / 1200)
        * (1 + Math.Pow(VibratoCents * Math.Log(2) / 1200, 2) / 4);

    public double[] Samples()
    {
        var random = new Random(Seed);
        var count = (int)(Seconds * Rate);
        var phases = Partials.Select(_ => random.NextDouble()).ToArray();
        var vibrato = 2 * Math.PI * random.NextDouble();
        var breath = 0.0;
        var heard = Partials.Where((_, h) => (h + 1) * Hertz < Rate / 2.2).ToArray();
        var effective = Math.Sqrt(heard.Sum(a => a * a / 2));
        var partials = heard.Select((a, h) => Complex.FromPolarCoordinates(a, Turns(phases[h]))).ToArray();
        var hum = Enumerable
            .Range(1, 6)
            .Select(k => Complex.FromPolarCoordinates(Hum * effective / k, Turns(0.1 * k)))
            .ToArray();
        var noise = double.IsInfinity(SignalToNoise) ? 0 : effective * Math.Pow(10, -SignalToNoise / 20);
        // A low pass of one pole at 1 kHz, brought back to its power; the swing in each period has a mean square of 1.
        var pole = Math.Exp(-2 * Math.PI * 1000 / Rate);
        var samples = new double[count];
        var turns = 0.0;
        for (var i = 0; i < count; i++)
        {
            var t = i / Rate;
            var cents =
                VibratoCents * Math.Sin(Turns(VibratoHertz * t) + vibrato)
                + DriftCentsPerSecond * (t - Seconds / 2);
            turns += Hertz * Math.Pow(2, cents / 1200) / Rate;
            var tone = Complex.FromPolarCoordinates(1, Turns(turns));
            samples[i] += Harmonics(partials, tone);
            if (Hum > 0)
            {
                samples[i] += Harmonics(hum, Complex.FromPolarCoordinates(1, Turns(HumHertz * t)));
            }

            var white = MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
            breath = pole * breath + Math.Sqrt(1 - pole * pole) * white;
            var swing = Math.Sqrt(1 / 1.125) * (1 + 0.5 * tone.Imaginary);
            samples[i] += noise * (IsBreath ? swing * breath : white);
        }

        return [.. samples.Select(s => Level * s / effective)];
    }

    private static double Turns(double turns) => 2 * Math.PI * turns;

    // The imaginary part of Σ aₕzʰ, h from 1, by Horner: a sine for each harmonic would take as long as hearing the tone.
    private static double Harmonics(Complex[] amplitudes, Complex z)
    {
        var sum = Complex.Zero;
        for (var h = amplitudes.Length - 1; h >= 0; h--)
        {
            sum = (sum + amplitudes[h]) * z;
        }

        return sum.Imaginary;
    }

    public Recording Recorded() => Recording.FromSamples(Samples(), UnitsNet.Frequency.FromHertz(Rate));
}
