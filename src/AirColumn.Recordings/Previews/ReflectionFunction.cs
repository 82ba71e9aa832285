using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using UnitsNet;

namespace AirColumn.Recordings.Previews;

/// <summary>
/// What returns to the blown end, sample by sample, of a wave that is sent in there (reflection function, schumacher1981): the
/// inverse Fourier transform of the reflection coefficient, band-limited and causal.
/// </summary>
internal sealed class ReflectionFunction
{
    // Long enough that the tail of the wall losses, which falls as t^(-3/2), wraps into nothing.
    private const double PeriodSeconds = 1.3;

    // What it may do to the place and to the width of a resonance before a longer one is taken.
    private const double WantedCents = 0.02;
    private const double WantedWidth = 2e-3;

    private const double Fade = 0.3;

    private static readonly double[] Seconds = [0.1, 0.2, 0.4, 0.8];

    private ReflectionFunction(double[] taps, double sampleRate)
    {
        Taps = taps;
        SampleRate = sampleRate;
    }

    /// <summary>The response to a wave of one sample, from time 0.</summary>
    public double[] Taps { get; }

    /// <summary>Samples per second.</summary>
    public double SampleRate { get; }

    /// <summary>The largest shift of a resonance at which it was checked, cents.</summary>
    public double WorstCents { get; private set; }

    /// <summary>The largest change in the width of such a resonance, as a share of it.</summary>
    public double WorstWidth { get; private set; }

    /// <summary>Of a column with a closed blown end.</summary>
    /// <param name="column">The column.</param>
    /// <param name="sampleRate">Samples per second.</param>
    /// <param name="resonances">The resonances at which it is checked, Hz, in rising order.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    public static ReflectionFunction Of(
        Column column,
        double sampleRate,
        IReadOnlyList<double> resonances,
        CancellationToken cancellationToken = default
    )
    {
        var cyclic = Cyclic(column, sampleRate, cancellationToken);
        var top = new BandLimit(column, sampleRate).WholeUpTo(1.3 * resonances[^1]);
        ReflectionFunction? function = null;
        foreach (var seconds in Seconds)
        {
            var taps = Causal(cyclic, (int)(seconds * sampleRate));
            FirstTaps.Correct(
                taps,
                hertz => column.ReflectionAt(Frequency.FromHertz(hertz), cancellationToken),
                top,
                sampleRate
            );
            cancellationToken.ThrowIfCancellationRequested();
            KeepPassive(taps);
            function = new(taps, sampleRate);
            function.Check(column, resonances, cancellationToken);
            if (function.WorstCents <= WantedCents && function.WorstWidth <= WantedWidth)
            {
                break;
            }
        }

        return function!;
    }

    /// <summary>The reflection coefficient that it amounts to.</summary>
    public Complex At(double hertz) => Transform(Taps, hertz / SampleRate);

    /// <summary>Fourier transform of taps at a frequency in cycles a sample.</summary>
    internal static Complex Transform(double[] taps, double cycles)
    {
        // Horner's rule, from the last.
        var z = Complex.FromPolarCoordinates(1, -2 * Math.PI * cycles);
        var sum = Complex.Zero;
        for (var k = taps.Length - 1; k >= 0; k--)
        {
            sum = sum * z + taps[k];
        }

        return sum;
    }

    // At a closed end a wave resonates where R = 1: an error in the phase of R, over the slope of that phase, moves the resonance, and
    // an error in |R|, over what |R| lacks of 1, makes it wider or narrower.
    private void Check(Column column, IReadOnlyList<double> resonances, CancellationToken cancellationToken)
    {
        const double Step = 1e-4;
        foreach (var hertz in resonances)
        {
            var exact = column.ReflectionAt(Frequency.FromHertz(hertz), cancellationToken);
            var above = column.ReflectionAt(Frequency.FromHertz(hertz * (1 + Step)), cancellationToken);
            var ratio = At(hertz) / exact;
            var slope = (above / exact).Phase / Step;
            WorstCents = Math.Max(WorstCents, Math.Abs(ratio.Phase / slope) * 1200 / Math.Log(2));
            WorstWidth = Math.Max(WorstWidth, Math.Abs(ratio.Magnitude - 1) / (1 - exact.Magnitude));
        }
    }

    // No more may return than was sent, at any frequency, or a note could grow by itself.
    private static void KeepPassive(double[] taps)
    {
        var spectrum = new Complex[BitOperations.RoundUpToPowerOf2((uint)(2 * taps.Length))];
        for (var k = 0; k < taps.Length; k++)
        {
            spectrum[k] = taps[k];
        }

        Fourier.Forward(spectrum, FourierOptions.Matlab);
        var largest = spectrum.Max(value => value.Magnitude);
        for (var k = 0; largest > 1 && k < taps.Length; k++)
        {
            taps[k] /= largest;
        }
    }

    private static double[] Cyclic(Column column, double sampleRate, CancellationToken cancellationToken)
    {
        var n = (int)BitOperations.RoundUpToPowerOf2((uint)(PeriodSeconds * sampleRate));
        var spacing = sampleRate / n;
        var band = new BandLimit(column, sampleRate);
        var count = band.Count(spacing);
        var hertz = new double[count];
        for (var k = 0; k < count; k++)
        {
            // At rest there is no wave; the limit is taken from the lowest frequency that a column answers at.
            hertz[k] = k == 0 ? 1e-3 : k * spacing;
        }

        var (real, imaginary) = (new double[count], new double[count]);
        column.Impedance(hertz, real, imaginary, cancellationToken);
        var spectrum = new Complex[n];
        for (var k = 0; k < count; k++)
        {
            var z = new Complex(real[k], imaginary[k]);
            var r = (z - column.CharacteristicImpedance) / (z + column.CharacteristicImpedance);
            spectrum[k] = k == 0 ? r.Real : r * band.WeightAt(hertz[k]);
            if (k > 0)
            {
                spectrum[n - k] = Complex.Conjugate(spectrum[k]);
            }
        }

        Fourier.Inverse(spectrum, FourierOptions.Matlab);
        return [.. spectrum.Select(value => value.Real)];
    }

    // A bore that widens from the blown end on reflects at once, and the band limit spreads that to either side of time 0. What falls
    // before it is laid down as long after it: Re R stays as it was, and Im R at low frequency nearly so.
    private static double[] Causal(double[] cyclic, int length)
    {
        length = Math.Min(length, cyclic.Length / 2);
        var taps = new double[length];
        taps[0] = cyclic[0];
        for (var k = 1; k < length; k++)
        {
            var x = ((double)k / length - (1 - Fade)) / Fade;
            var weight = x <= 0 ? 1 : 0.5 + 0.5 * Math.Cos(Math.PI * x);
            taps[k] = (cyclic[k] + cyclic[^k]) * weight;
        }

        return taps;
    }
}
