namespace AirColumn.Plots;

/// <summary>A number of each item of a study, with what it is called in a picture. Immutable.</summary>
public sealed class StudyQuantity
{
    private readonly double[] values;

    /// <summary>Names numbers.</summary>
    /// <param name="name">What they are, with their unit, such as "length of section 2, mm".</param>
    /// <param name="values">One for each item; NaN where there is none.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    public StudyQuantity(string name, IEnumerable<double> values)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(values);
        Name = name;
        this.values = [.. values];
    }

    /// <summary>The name of the quantity, with its unit.</summary>
    public string Name { get; }

    /// <summary>One for each item; NaN where there is none.</summary>
    public ReadOnlySpan<double> Values => values;

    /// <summary>How many there are.</summary>
    public int Count => values.Length;

    /// <summary>Its name and how many there are.</summary>
    /// <returns>The name and the number of values, as text.</returns>
    public override string ToString() => FormattableString.Invariant($"{Name}: {Count} values");
}
