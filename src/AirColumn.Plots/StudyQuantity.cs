namespace AirColumn.Plots;

/// <summary>One number for each item of a study, with its name in a picture. Immutable.</summary>
public sealed class StudyQuantity
{
    private readonly double[] values;

    /// <summary>Makes a quantity from its name and its numbers.</summary>
    /// <param name="name">The name, with the unit, such as "length of section 2, mm".</param>
    /// <param name="values">One number for each item; NaN if it is missing.</param>
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

    /// <summary>One number for each item; NaN if it is missing.</summary>
    public ReadOnlySpan<double> Values => values;

    /// <summary>The number of items.</summary>
    public int Count => values.Length;

    /// <summary>Its name and the number of items.</summary>
    /// <returns>The name and the number of values, as text.</returns>
    public override string ToString() => FormattableString.Invariant($"{Name}: {Count} values");
}
