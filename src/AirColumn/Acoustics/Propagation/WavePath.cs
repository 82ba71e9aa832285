using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>The way of a wave through a whole column, prepared for a band of frequencies.</summary>
internal abstract class WavePath
{
    /// <summary>How many vectors of frequencies are carried together at most.</summary>
    public const int Block = 8;

    /// <summary>
    /// Pressure and flow at the blown end, with the air outside it, for a fixed wave at the far end: smooth in frequency, whatever
    /// resonates, as far as their logarithms are 0.
    /// </summary>
    /// <param name="frequencies">In the band; <see cref="Block"/> vectors at most.</param>
    /// <param name="states">Receives them.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    public abstract void Carry(
        ReadOnlySpan<FrequencyVector> frequencies,
        Span<WaveState> states,
        CancellationToken cancellationToken
    );

    /// <summary>The same, brought back near 1 wherever it has grown far from it: for single answers, since that is not smooth.</summary>
    /// <param name="frequencies">In the band; <see cref="Block"/> vectors at most.</param>
    /// <param name="states">Receives them.</param>
    /// <param name="cancellationToken">Ends the computation early.</param>
    public abstract void CarryNormalised(
        ReadOnlySpan<FrequencyVector> frequencies,
        Span<WaveState> states,
        CancellationToken cancellationToken
    );
}
