namespace AirColumn.Documents;

/// <summary>A fingering with a name in a document, such as the name of its note. Immutable, equal by value.</summary>
public sealed record NamedFingering
{
    /// <summary>Names a fingering.</summary>
    /// <param name="name">Its name for people: 1 to 1000 characters.</param>
    /// <param name="holes">The open tone holes.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The name is empty, too long, or holds only half of a surrogate pair.</exception>
    public NamedFingering(string name, Fingering holes)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(holes);
        if (name.Length == 0)
        {
            throw new ArgumentException(
                "The name is empty; a fingering is asked for by its name.",
                nameof(name)
            );
        }

        NameText.RequireWritable(name);
        Name = name;
        Holes = holes;
    }

    /// <summary>Its name for people.</summary>
    public string Name { get; }

    /// <summary>The open tone holes.</summary>
    public Fingering Holes { get; }
}
