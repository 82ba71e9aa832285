using System.Collections.Concurrent;
using AirColumn.Acoustics.Junctions;

namespace AirColumn.Acoustics.Line;

/// <summary>
/// What steps near each other do (<see cref="StepChain"/>), kept for columns made from each other: a length that is searched for leaves them as they
/// are, and gradients along the way ask for the same few sizes beside them. Safe to share between threads.
/// </summary>
internal sealed class StepStore
{
    private const int Most = 512;

    private readonly ConcurrentDictionary<EquatableArray<double>, StepInteraction[]> known = new();

    /// <summary>What the neighbours do to each step.</summary>
    /// <param name="radii">Of the pipes, those before the first and behind the last step included, m.</param>
    /// <param name="lengths">Of the pipes between steps, m: two fewer than radii.</param>
    /// <param name="gas">What fills them.</param>
    public StepInteraction[] Of(IReadOnlyList<double> radii, IReadOnlyList<double> lengths, GasConstants gas)
    {
        var key = new EquatableArray<double>([gas.Density, gas.SpeedOfSound, .. radii, .. lengths]);
        if (known.TryGetValue(key, out var found))
        {
            return found;
        }

        if (known.Count >= Most)
        {
            known.Clear();
        }

        return known.GetOrAdd(key, StepChain.Of([.. radii], [.. lengths], gas.Density, gas.SpeedOfSound));
    }
}
