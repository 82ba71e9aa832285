using System.Collections.Concurrent;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// Series of stretches, for columns that differ in little from each other: what was not changed is not computed again. Safe to share
/// between threads. A series from here is the same as one made anew.
/// </summary>
internal sealed class SeriesStore
{
    // Some hundred kilobytes; all are let go when there are more.
    private const int Most = 128;

    private readonly ConcurrentDictionary<Key, Entry> entries = new();

    /// <summary>How many there are.</summary>
    public int Count => entries.Count;

    /// <summary>That of a stretch of a column between two frequencies, Hz; null where there is none.</summary>
    public StretchSeries? Of(Stretch stretch, WaveColumn column, double low, double high)
    {
        var key = new Key(stretch.Keys, column.SpeedOfSound, column.Tolerance, low, high);
        if (entries.TryGetValue(key, out var entry))
        {
            return entry.Series;
        }

        var series = StretchSeries.Fit(stretch, column.SpeedOfSound, column.Tolerance, low, high);
        if (entries.Count >= Most)
        {
            entries.Clear();
        }

        entries.TryAdd(key, new Entry(series));
        return series;
    }

    // A series, or that there is none.
    private sealed record Entry(StretchSeries? Series);

    private readonly record struct Key(
        PieceKey[] Pieces,
        double SpeedOfSound,
        double Tolerance,
        double Low,
        double High
    )
    {
        public bool Equals(Key other) =>
            Low.Equals(other.Low)
            && High.Equals(other.High)
            && SpeedOfSound.Equals(other.SpeedOfSound)
            && Tolerance.Equals(other.Tolerance)
            && Pieces.AsSpan().SequenceEqual(other.Pieces);

        public override int GetHashCode()
        {
            var hash = new HashCode();
            hash.Add(Low);
            hash.Add(High);
            foreach (var piece in Pieces)
            {
                hash.Add(piece);
            }

            return hash.ToHashCode();
        }
    }
}
