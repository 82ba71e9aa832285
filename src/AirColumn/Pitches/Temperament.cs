using System.Collections.Immutable;

namespace AirColumn;

/// <summary>
/// The deviations of the twelve pitches of an octave from equal temperament. Two temperaments are equal if their names and deviations are
/// equal.
/// </summary>
public sealed record Temperament
{
    private readonly ImmutableArray<double> offsetsInCents;

    private Temperament(string name, ImmutableArray<double> offsetsInCents)
    {
        Name = name;
        this.offsetsInCents = offsetsInCents;
    }

    /// <summary>Twelve equal semitones.</summary>
    public static Temperament Equal { get; } = FromOffsets("equal", new double[12]);

    /// <summary>The name, for people.</summary>
    public string Name { get; }

    /// <summary>A temperament from a table of deviations.</summary>
    /// <param name="name">A name, for people; not blank.</param>
    /// <param name="offsetsInCents">
    /// The distances of C, C#, D and so on to B above equal temperament, in cents: 12 numbers from −100 to 100. They must leave each pitch
    /// higher than the one before it. Only their differences matter to a <see cref="Tuning"/>, which keeps A on its reference.
    /// </param>
    /// <returns>The temperament.</returns>
    /// <exception cref="ArgumentException">
    /// The name is blank, there are not 12 offsets, or a pitch is not higher than the one before it.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">An offset is not from −100 to 100 cents.</exception>
    public static Temperament FromOffsets(string name, ReadOnlySpan<double> offsetsInCents)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        if (offsetsInCents.Length != 12)
        {
            throw new ArgumentException(
                $"offsetsInCents has {offsetsInCents.Length} numbers; give 12, from C to B.",
                nameof(offsetsInCents)
            );
        }

        for (var i = 0; i < 12; i++)
        {
            Require.InRange(offsetsInCents[i], -100, 100, "cents", $"offsetsInCents[{i}]");
        }

        for (var i = 0; i < 12; i++)
        {
            var next = (i + 1) % 12;
            if (!(offsetsInCents[next] + 100 > offsetsInCents[i]))
            {
                throw new ArgumentException(
                    $"offsetsInCents[{next}] is {Require.Show(offsetsInCents[next], "cents")} after "
                        + $"{Require.Show(offsetsInCents[i], "cents")}, which leaves that pitch no higher than "
                        + "the one before it; give deviations from equal temperament, in the order C to B.",
                    nameof(offsetsInCents)
                );
            }
        }

        return new Temperament(name, [.. offsetsInCents]);
    }

    /// <summary>The distance of the pitch above equal temperament, in cents.</summary>
    /// <param name="pitch">The pitch; its octave does not matter.</param>
    /// <returns>Cents above equal temperament.</returns>
    public double OffsetOf(Pitch pitch) => OffsetAt(pitch.Number);

    /// <summary>Compares name and deviations.</summary>
    /// <param name="other">The other temperament.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Temperament? other) =>
        other is not null
        && Name == other.Name
        && offsetsInCents.AsSpan().SequenceEqual(other.offsetsInCents.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        hash.Add(Name);
        foreach (var offset in offsetsInCents)
        {
            hash.Add(offset);
        }

        return hash.ToHashCode();
    }

    /// <summary>The name.</summary>
    /// <returns>The name.</returns>
    public override string ToString() => Name;

    /// <summary>The offset, in cents, of the pitch with this MIDI note number.</summary>
    internal double OffsetAt(int number) => offsetsInCents[((number % 12) + 12) % 12];
}
