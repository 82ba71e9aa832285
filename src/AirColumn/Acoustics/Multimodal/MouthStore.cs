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

    /// <summary>The tables of a mouth for a number of modes: as a cylinder's, and what its outside adds, if anything.</summary>
    public (MouthTable Straight, MouthTable? Outside) Tables(
        double outerOverInner,
        OuterProfile? profile,
        RadialBasis basis
    ) => Field(outerOverInner, profile).Tables(basis);

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
        private readonly Lazy<MouthField> field = new(() => new MouthField(outerOverInner, profile));
        private readonly Dictionary<int, (MouthTable, MouthTable?)> tables = [];

        public double[] Key => key;

        public (MouthTable Straight, MouthTable? Outside) Tables(RadialBasis basis)
        {
            // One mode is plane-wave theory, which knows of no outside.
            lock (tables)
            {
                if (!tables.TryGetValue(basis.Count, out var found))
                {
                    var outside = field.Value.Tapers && basis.Count > 1;
                    found = (
                        new MouthTable(field.Value, basis, false),
                        outside ? new MouthTable(field.Value, basis, true) : null
                    );
                    tables.Add(basis.Count, found);
                }

                return found;
            }
        }
    }
}
