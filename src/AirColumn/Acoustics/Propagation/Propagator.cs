using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>One stage of a wave's way from the far end to the blown end, prepared for a band of frequencies.</summary>
internal abstract class Propagator
{
    /// <summary>Pressure and flow on the near side in place of those on the far side, at each of some frequencies.</summary>
    public abstract void Carry(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states);

    /// <summary>The same for two waves, which see the same wall.</summary>
    public virtual void Carry(
        ReadOnlySpan<FrequencyVector> frequencies,
        Span<WaveState> states,
        Span<WaveState> others
    )
    {
        Carry(frequencies, states);
        Carry(frequencies, others);
    }

    /// <summary>By which factor (P, U) come out too large: smooth in frequency, the same for any wave.</summary>
    public virtual ComplexVector Excess(in FrequencyVector frequency) => ComplexVector.One;
}
