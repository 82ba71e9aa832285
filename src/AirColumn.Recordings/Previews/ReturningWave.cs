using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace AirColumn.Recordings.Previews;

/// <summary>
/// What returns of all that was sent before, sample by sample while it is being sent: the convolution with a reflection function but
/// for time 0, by partitions. What was sent in the current block counts as a sum of products; all blocks before, by their spectra.
/// </summary>
/// <remarks>
/// Of a block q blocks back the lags from (q − 1)B + 1 to (q + 1)B − 1 matter. Circular convolution of length 2B of the block, as many
/// zeros behind it, with that stretch of the reflection function gives them in its second half, without wrapping round.
/// </remarks>
internal sealed class ReturningWave
{
    private const int Block = 512;

    private readonly double[] latestLast = new double[Block - 1]; // taps of the current block, reversed
    private readonly Complex[][] stretches; // spectra of the reflection function, for one block back, two, …; half is enough
    private readonly Complex[][] blocks; // spectra of what was sent, the newest overwrites the oldest
    private readonly Complex[] work = new Complex[2 * Block];
    private readonly double[] older = new double[Block];
    private int sent; // blocks

    public ReturningWave(double[] taps)
    {
        for (var k = 1; k < Block && k < taps.Length; k++)
        {
            latestLast[Block - 1 - k] = taps[k];
        }

        stretches = new Complex[(taps.Length - 1) / Block + 1][];
        blocks = new Complex[stretches.Length][];
        for (var q = 0; q < stretches.Length; q++)
        {
            for (var n = 0; n < work.Length; n++)
            {
                var lag = q * Block + n;
                work[n] = lag < taps.Length ? taps[lag] : 0;
            }

            stretches[q] = Spectrum();
        }
    }

    /// <summary>What returns at a sample; samples in order from 0.</summary>
    /// <param name="outgoing">All that is sent; only what comes before the sample is read.</param>
    /// <param name="sample">The sample.</param>
    public double At(ReadOnlySpan<double> outgoing, int sample)
    {
        var inside = sample % Block;
        if (inside == 0 && sample > 0)
        {
            Take(outgoing.Slice(sample - Block, Block));
        }

        return older[inside]
            + DotProduct.Of(latestLast.AsSpan(Block - 1 - inside), outgoing.Slice(sample - inside, inside));
    }

    private void Take(ReadOnlySpan<double> block)
    {
        for (var n = 0; n < work.Length; n++)
        {
            work[n] = n < Block ? block[n] : 0;
        }

        blocks[sent++ % blocks.Length] = Spectrum();
        Array.Clear(work);
        for (var q = 0; q < Math.Min(sent, blocks.Length); q++)
        {
            var (stretch, spectrum) = (stretches[q], blocks[(sent - 1 - q) % blocks.Length]);
            for (var k = 0; k <= Block; k++)
            {
                work[k] += stretch[k] * spectrum[k];
            }
        }

        for (var k = 1; k < Block; k++)
        {
            work[^k] = Complex.Conjugate(work[k]);
        }

        Fourier.Inverse(work, FourierOptions.Matlab);
        for (var n = 0; n < Block; n++)
        {
            older[n] = work[Block + n].Real;
        }
    }

    private Complex[] Spectrum()
    {
        Fourier.Forward(work, FourierOptions.Matlab);
        return work[..(Block + 1)];
    }
}
