namespace AirColumn.Recordings;

/// <summary>A computed resonance with the measured one that belongs to it.</summary>
/// <param name="Number">The number of the resonance: 1 is the lowest.</param>
/// <param name="Computed">The computed resonance.</param>
/// <param name="Measured">The measured resonance; null if none was heard near it.</param>
public sealed record ResonanceComparison(int Number, Resonance Computed, RecordedResonance? Measured)
{
    /// <summary>
    /// Measured frequency relative to the computed one, in cents. Both frequencies are those of the pole: the free oscillation does not ring
    /// exactly at a maximum of |Z|. Null if no resonance was heard near the computed one.
    /// </summary>
    public double? Cents =>
        Measured is { } measured ? 1200 * Math.Log2(measured.Frequency.Hertz / Computed.Pole.Real) : null;
}
