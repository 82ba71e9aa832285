using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>A fitting put on an end of the pipe: a mouthpiece, a coupler, a reducer, a bell of constant bore.</summary>
/// <remarks>
/// What counts is the air inside, so measure the fitting on the pipe: the nominal size of a fitting is never its
/// diameter. Immutable; two fittings are equal when name and sizes are.
/// </remarks>
public sealed record Fitting
{
    /// <summary>Describes a fitting.</summary>
    /// <param name="name">What the maker calls it; not empty.</param>
    /// <param name="addedLength">
    /// How much longer the assembled tube is than its pipe because of this fitting: 0.1 mm to 10 m. The socket that
    /// slides over the pipe adds nothing.
    /// </param>
    /// <param name="insideDiameter">Inside diameter of the part that is added, read with a caliper: 5 mm to 500 mm.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public Fitting(string name, Length addedLength, Length insideDiameter)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Name = name.Trim();
        AddedLength = Caliper.AxialLength(addedLength);
        InsideDiameter = Caliper.Diameter(insideDiameter);
    }

    /// <summary>What the maker calls it.</summary>
    public string Name { get; }

    /// <summary>How much longer the assembled tube is because of it.</summary>
    public Length AddedLength { get; }

    /// <summary>Inside diameter of the part that is added.</summary>
    public Length InsideDiameter { get; }
}
