using System.Collections.Concurrent;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// The radial modes that a column and those made from it have needed so far, by their number. Safe to share between threads.
/// </summary>
internal sealed class RadialBases
{
    private readonly ConcurrentDictionary<int, RadialBasis> made = new();

    /// <summary>That of a number of modes.</summary>
    public RadialBasis Of(int count) => made.GetOrAdd(count, n => new RadialBasis(n));
}
