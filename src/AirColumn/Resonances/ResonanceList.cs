using System.Collections;

namespace AirColumn.Resonances;

/// <summary>The resonances found, in order of frequency, and what to know before relying on them. Immutable.</summary>
public sealed class ResonanceList : IReadOnlyList<Resonance>
{
    private readonly Resonance[] items;

    internal ResonanceList(IEnumerable<Resonance> items, IReadOnlyList<string> warnings)
    {
        this.items = [.. items];
        Warnings = warnings;
    }

    /// <summary>
    /// Sentences naming what is outside a model's range, modes too damped to show an extremum of |Z|, or fewer
    /// resonances than were asked for.
    /// </summary>
    public IReadOnlyList<string> Warnings { get; }

    /// <summary>How many were found.</summary>
    public int Count => items.Length;

    /// <summary>One of them.</summary>
    /// <param name="index">0 is the lowest.</param>
    public Resonance this[int index] => items[index];

    /// <inheritdoc/>
    public IEnumerator<Resonance> GetEnumerator() => ((IEnumerable<Resonance>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => items.GetEnumerator();
}
