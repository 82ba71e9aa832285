using AirColumn.Resonances;

namespace AirColumn.Recordings;

/// <summary>A computed resonance beside the measured one that belongs to it.</summary>
/// <param name="Number">Which: 1 is the lowest.</param>
/// <param name="Computed">Of the column.</param>
/// <param name="Measured">Of the recording; null where none was heard near it.</param>
public sealed record ResonanceComparison(int Number, Resonance Computed, RecordedResonance? Measured)
{
    /// <summary>
    /// Measured over computed, cents; both by their poles, since a maximum of |Z| is not quite where free sound rings. Null where none was
    /// heard.
    /// </summary>
    public double? Cents =>
        Measured is { } measured ? 1200 * Math.Log2(measured.Frequency.Hertz / Computed.Pole.Real) : null;
}
