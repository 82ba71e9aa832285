namespace AirColumn.Studies;

/// <summary>How a study places the points that it draws. Immutable, equal by value.</summary>
/// <param name="Kind">By which rule.</param>
/// <param name="Count">How many points, for each combination of the values in steps.</param>
/// <param name="Seed">Another seed draws other points; null leaves the points of Sobol' where they were published.</param>
public sealed record StudyPoints(StudyPointKind Kind, long Count, long? Seed)
{
    private const ulong Drawn = 0;
    private const ulong Shift = 1;

    /// <summary>A coordinate of a point: above 0 and below 1.</summary>
    /// <param name="index">Which point, from 0.</param>
    /// <param name="dimension">Which coordinate of it, from 0.</param>
    internal double At(long index, int dimension)
    {
        const int Spare = 64 - SobolSequence.Bits;
        var seed = (ulong)(Seed ?? 0);
        var digits =
            Kind == StudyPointKind.Random
                ? Philox.Word(seed, Drawn, (ulong)index, dimension) >> Spare
                : SobolSequence.At(index, dimension)
                    ^ (Seed is null ? 0 : Philox.Word(seed, Shift, 0, dimension) >> Spare);
        // Half a digit more: 0 itself would be an infinite length under a normal distribution.
        return (digits + 0.5) / (1UL << SobolSequence.Bits);
    }
}

/// <summary>By which rule points are placed.</summary>
public enum StudyPointKind
{
    /// <summary>Independent of each other: Philox4x64-10 (salmon2011), a function of seed and number.</summary>
    Random,

    /// <summary>Evenly, by the sequence of Sobol' (sobol1967, joe2008), moved by a digital shift where there is a seed.</summary>
    Sobol,
}
