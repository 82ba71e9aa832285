using System.Numerics;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Spectra;

/// <summary>
/// Answers of one column: a few frequencies directly, many through a spectrum. Which it is depends on the question alone, so that the same
/// question has the same answer to the last digit. Safe to share between threads.
/// </summary>
internal sealed class Answers
{
    // A series takes its nodes and the making of it.
    private const double WorthWhile = 1.5; // frequencies for each node

    private const int MostKept = 8;
    private const double LowestHertz = 1e-3;
    private const double SeriesShare = 1e-2; // of the tolerance, for what a series leaves out
    private const double LeastAllowed = 1e-14;
    private const double MostError = 1e-6;

    private readonly double tolerance;
    private readonly WavePath?[] octaves = new WavePath?[64]; // from the lowest frequency
    private Spectrum[] kept = []; // the last one asked for first

    public Answers(InputWave wave, double tolerance) => (Wave, this.tolerance) = (wave, tolerance);

    /// <summary>The column's waves.</summary>
    public InputWave Wave { get; }

    /// <summary>The spectrum over a range, Hz; those asked for last are kept.</summary>
    /// <param name="low">Hz.</param>
    /// <param name="high">Hz.</param>
    /// <param name="trusts">Whether functions that were given are taken to be smooth as far as a series shows.</param>
    /// <param name="cancellationToken">Ends the computation early; nothing is kept then.</param>
    public Spectrum Over(double low, double high, bool trusts, CancellationToken cancellationToken)
    {
        var isSmooth = trusts || Wave.IsSmooth;
        foreach (var spectrum in Volatile.Read(ref kept))
        {
            if (spectrum.Low.Equals(low) && spectrum.High.Equals(high) && spectrum.IsSmooth == isSmooth)
            {
                return spectrum;
            }
        }

        var allowed = Math.Max(SeriesShare * tolerance, LeastAllowed);
        var made = Spectrum.Of(Wave, low, high, tolerance, allowed, isSmooth, cancellationToken);
        Volatile.Write(ref kept, [made, .. Volatile.Read(ref kept).Take(MostKept - 1)]);
        return made;
    }

    /// <summary>Z at frequencies in Hz, fastest in rising order; how far a series may have put any of them off, relative.</summary>
    public double Impedances(
        ReadOnlySpan<double> hertz,
        Span<double> real,
        Span<double> imaginary,
        CancellationToken cancellationToken
    )
    {
        if (hertz.Length == 0)
        {
            return 0;
        }

        var (low, high) = (hertz[0], hertz[^1]);
        if (!RisingFrequencies.Are(hertz) || !AreMany(hertz.Length, low, high))
        {
            Direct(hertz, real, imaginary, cancellationToken);
            return 0;
        }

        var spectrum = Over(low, high, false, cancellationToken);
        var error = 0.0;
        var i = 0;
        while (i < hertz.Length)
        {
            var to = spectrum.EndOf(hertz[i]);
            var end = to >= high ? hertz.Length : i + RisingFrequencies.CountBelow(to, hertz[i..]);
            var off = spectrum
                .PieceAt(hertz[i])
                ?.Impedances(hertz[i..end], real[i..end], imaginary[i..end], cancellationToken);
            if (off <= MostError)
            {
                error = Math.Max(error, off.Value);
            }
            else
            {
                Direct(hertz[i..end], real[i..end], imaginary[i..end], cancellationToken);
            }

            i = end;
        }

        return error;
    }

    /// <summary>Pressure and flow at one frequency, Hz, as (p, U)·exp(LogScale), kept near 1.</summary>
    public (Complex Pressure, Complex Flow, double LogScale) At(
        double hertz,
        CancellationToken cancellationToken = default
    )
    {
        var frequency = FrequencyVector.OfHertz(new(in hertz));
        Span<WaveState> state = stackalloc WaveState[1];
        PathOf(hertz).CarryNormalised(new(in frequency), state, cancellationToken);
        return (state[0].P.At(0), state[0].U.At(0), state[0].Log[0]);
    }

    /// <summary>The way prepared for the octave of a frequency, Hz.</summary>
    public WavePath PathOf(double hertz)
    {
        var octave = Math.Clamp((int)Math.Floor(Math.Log2(hertz / LowestHertz)), 0, octaves.Length - 1);
        var path = Volatile.Read(ref octaves[octave]);
        if (path is null)
        {
            var low = 2 * Math.PI * LowestHertz * Math.Pow(2, octave);
            path = Wave.Prepare(new Band(low, 2 * low, tolerance));
            Volatile.Write(ref octaves[octave], path);
        }

        return path;
    }

    private bool AreMany(int count, double low, double high)
    {
        if (!Wave.IsSmooth || !(high > low * (1 + 1e-9)) || count < 16)
        {
            return false;
        }

        var turns = new RootRange(low, high).Turns(Wave.Delay);
        // Beyond what one series takes there are several, each with some nodes more.
        return count > WorthWhile * (1.3 * turns + 32);
    }

    private void Direct(
        ReadOnlySpan<double> hertz,
        Span<double> real,
        Span<double> imaginary,
        CancellationToken cancellationToken
    )
    {
        Span<FrequencyVector> frequencies = stackalloc FrequencyVector[WavePath.Block];
        Span<WaveState> states = stackalloc WaveState[WavePath.Block];
        var step = RealVectors.Count;
        var i = 0;
        while (i < hertz.Length)
        {
            var path = PathOf(hertz[i]);
            var end = i + 1;
            while (end < hertz.Length && end - i < step * WavePath.Block && PathOf(hertz[end]) == path)
            {
                end++;
            }

            var some = (end - i + step - 1) / step;
            for (var v = 0; v < some; v++)
            {
                var from = i + v * step;
                frequencies[v] = FrequencyVector.OfHertz(hertz[from..Math.Min(end, from + step)]);
            }

            path.CarryNormalised(frequencies[..some], states[..some], cancellationToken);
            for (var n = i; n < end; n++)
            {
                var (v, lane) = ((n - i) / step, (n - i) % step);
                var z = states[v].P.At(lane) / states[v].U.At(lane);
                (real[n], imaginary[n]) = (z.Real, z.Imaginary);
            }

            i = end;
        }
    }
}
