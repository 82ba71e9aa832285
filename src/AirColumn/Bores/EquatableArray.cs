using System.Collections;

namespace AirColumn;

/// <summary>A read-only list that is equal to another when its items are, so that records holding one are values.</summary>
internal sealed class EquatableArray<T> : IReadOnlyList<T>, IEquatable<EquatableArray<T>>
    where T : IEquatable<T>
{
    private readonly T[] items;

    public EquatableArray(IEnumerable<T> items)
        : this((T[])[.. items], true) { }

    // Of an array that is nobody else's.
    private EquatableArray(T[] own, bool _)
    {
        items = own;
    }

    /// <summary>With one item replaced.</summary>
    public EquatableArray<T> With(int index, T item)
    {
        var changed = (T[])items.Clone();
        changed[index] = item;
        return new EquatableArray<T>(changed, true);
    }

    public int Count => items.Length;

    public T this[int index] => items[index];

    public bool Equals(EquatableArray<T>? other) =>
        other is not null && items.AsSpan().SequenceEqual(other.items);

    public override bool Equals(object? obj) => Equals(obj as EquatableArray<T>);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in items)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => items.GetEnumerator();
}
