namespace AirColumn.Workshop.Instruments;

/// <summary>A scale: the steps above its tonic within an octave. Immutable.</summary>
public sealed record Scale
{
    private Scale(string name, IReadOnlyList<int> steps)
    {
        (Name, Steps) = (name, steps);
    }

    /// <summary>The major scale.</summary>
    public static Scale Major { get; } = new("major", [0, 2, 4, 5, 7, 9, 11]);

    /// <summary>The natural minor scale.</summary>
    public static Scale Minor { get; } = new("minor", [0, 2, 3, 5, 7, 8, 10]);

    /// <summary>The major scale without its fourth and seventh.</summary>
    public static Scale MajorPentatonic { get; } = new("major pentatonic", [0, 2, 4, 7, 9]);

    /// <summary>The minor scale without its second and sixth.</summary>
    public static Scale MinorPentatonic { get; } = new("minor pentatonic", [0, 3, 5, 7, 10]);

    /// <summary>All semitones.</summary>
    public static Scale Chromatic { get; } = new("chromatic", [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);

    /// <summary>All scales of this class.</summary>
    public static IReadOnlyList<Scale> All { get; } =
    [Major, Minor, MajorPentatonic, MinorPentatonic, Chromatic];

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Semitones above the tonic, from 0, below 12.</summary>
    public IReadOnlyList<int> Steps { get; }

    /// <summary>The notes of the scale upwards from a tonic.</summary>
    /// <param name="tonic">The lowest note.</param>
    /// <param name="count">The number of notes: 1 to 40.</param>
    /// <returns>The notes, the tonic first.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is out of range.</exception>
    public IReadOnlyList<Pitch> From(Pitch tonic, int count)
    {
        Require.InRange(count, 1, 40, "", nameof(count));
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                    Pitch.FromNumber(tonic.Number + 12 * (i / Steps.Count) + Steps[i % Steps.Count])
                ),
        ];
    }
}
