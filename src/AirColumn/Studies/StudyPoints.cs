using System.Numerics;

namespace AirColumn.Studies;

/// <summary>The points that a study draws. Immutable, equal by value.</summary>
/// <param name="Kind">The rule by which points are placed.</param>
/// <param name="Count">The number of points for each combination of the values in steps.</param>
/// <param name="Seed">
/// The seed: another seed draws other points. Null leaves the points of Sobol' as they were published, moved by half the spacing of their
/// coordinates to the middle of their cells. Without this shift the first point would lie at the edge of every distribution.
/// </param>
public sealed record StudyPoints(StudyPointKind Kind, long Count, long? Seed)
{
    private const ulong Drawn = 0;
    private const ulong Shift = 1;

    /// <summary>A coordinate of a point: above 0 and below 1.</summary>
    /// <param name="index">Which point, from 0.</param>
    /// <param name="dimension">Which coordinate of it, from 0.</param>
    internal double At(long index, int dimension)
    {
        var seed = (ulong)(Seed ?? 0);
        // Half a digit more: 0 itself would be an infinite length under a normal distribution.
        var (digits, more) =
            Kind == StudyPointKind.Random ? (Drawing(seed, Drawn, (ulong)index, dimension), 0.5)
            : Seed is null ? (SobolSequence.At(index, dimension), 0.5 * Spacing)
            : (SobolSequence.At(index, dimension) ^ Drawing(seed, Shift, 0, dimension), 0.5);
        return (digits + more) / (1UL << SobolSequence.Bits);
    }

    // Of the coordinates of the first Count points, in last digits.
    private double Spacing =>
        Math.ScaleB(1, SobolSequence.Bits) / BitOperations.RoundUpToPowerOf2((ulong)Count);

    private static ulong Drawing(ulong seed, ulong stream, ulong index, int dimension) =>
        Philox.Word(seed, stream, index, dimension) >> (64 - SobolSequence.Bits);
}

/// <summary>The rule by which points are placed.</summary>
public enum StudyPointKind
{
    /// <summary>Independent of each other: Philox4x64-10 (salmon2011), a function of seed and number.</summary>
    Random,

    /// <summary>Evenly, by the sequence of Sobol' (sobol1967, joe2008), moved by a digital shift if there is a seed.</summary>
    Sobol,
}
