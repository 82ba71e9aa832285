using System.Collections.Concurrent;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// The fields of the last mouths computed, for columns that differ in little from each other: as a mouth takes longer than all that lies
/// behind it. Safe to share between threads.
/// </summary>
internal sealed class MouthStore
{
    private const int Kept = 4;

    private readonly Lock gate = new();
    private readonly List<Entry> entries = []; // the last one used first

    /// <summary>The modes that these columns share.</summary>
    public RadialBases Bases { get; } = new();

    /// <summary>The tables of a mouth for a number of modes: as a cylinder's, and what its outside adds, if anything.</summary>
    public (MouthTable Straight, MouthTable? Outside) Tables(
        double outerOverInner,
        OuterProfile? profile,
        RadialBasis basis,
        CancellationToken cancellationToken
    ) => Field(outerOverInner, profile).Tables(basis, cancellationToken);

    private Entry Field(double outerOverInner, OuterProfile? profile)
    {
        double[] key = [outerOverInner, .. profile?.Samples ?? []];
        lock (gate)
        {
            var found = entries.FindIndex(entry => entry.Key.AsSpan().SequenceEqual(key));
            var entry = found >= 0 ? entries[found] : new Entry(key, outerOverInner, profile);
            if (found >= 0)
            {
                entries.RemoveAt(found);
            }
            else if (entries.Count == Kept)
            {
                entries.RemoveAt(Kept - 1);
            }

            entries.Insert(0, entry);
            return entry;
        }
    }

    private sealed class Entry(double[] key, double outerOverInner, OuterProfile? profile)
    {
        private readonly ConcurrentDictionary<int, (MouthTable, MouthTable?)> tables = new();
        private MouthSamples? samples; // taken when first asked for

        public double[] Key => key;

        // Threads that ask at once each compute it, so that none waits for another that it could not cancel.
        public (MouthTable Straight, MouthTable? Outside) Tables(
            RadialBasis basis,
            CancellationToken cancellationToken
        )
        {
            if (tables.TryGetValue(basis.Count, out var found))
            {
                return found;
            }

            var mouth =
                samples
                ?? Interlocked.CompareExchange(
                    ref samples,
                    new MouthSamples(
                        new MouthField(outerOverInner, profile, cancellationToken),
                        cancellationToken
                    ),
                    null
                )
                ?? samples;
            // One mode is plane-wave theory, which knows of no outside.
            var outside = mouth.Tapers && basis.Count > 1;
            return tables.GetOrAdd(
                basis.Count,
                (new MouthTable(mouth, basis, false), outside ? new MouthTable(mouth, basis, true) : null)
            );
        }
    }
}
