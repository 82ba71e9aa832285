using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>A length in whole sixteenths of an inch, as a tape measure shows it.</summary>
/// <remarks>
/// 1 in is 25.4 mm exactly (international yard, 1959). Immutable; ordered and equal by <see cref="Sixteenths"/>. The
/// default value is 0 in.
/// </remarks>
public readonly record struct InchFraction : IComparable<InchFraction>
{
    private const decimal MillimetresPerSixteenth = 25.4m / 16;
    private const double LongestMillimetres = 1e6;

    /// <summary>A length in sixteenths of an inch.</summary>
    /// <param name="sixteenths">The number of sixteenths; negative for a negative difference.</param>
    public InchFraction(int sixteenths)
    {
        Sixteenths = sixteenths;
    }

    /// <summary>The number of sixteenths of an inch.</summary>
    public int Sixteenths { get; }

    /// <summary>The same length as a quantity.</summary>
    public Length Length => Length.FromMillimeters((double)(Sixteenths * MillimetresPerSixteenth));

    /// <summary>The nearest sixteenth; a length halfway between two sixteenths goes to the one farther from zero.</summary>
    /// <param name="length">−1 km to 1 km.</param>
    /// <returns>The fraction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside that range.</exception>
    public static InchFraction Nearest(Length length) =>
        new((int)Math.Round(InSixteenths(length), MidpointRounding.AwayFromZero));

    /// <summary>The smallest whole number of sixteenths that is not less than a length.</summary>
    /// <param name="length">−1 km to 1 km.</param>
    /// <returns>The fraction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside that range.</exception>
    public static InchFraction AtLeast(Length length) => new((int)Math.Ceiling(InSixteenths(length)));

    /// <summary>The largest whole number of sixteenths that is not more than a length.</summary>
    /// <param name="length">−1 km to 1 km.</param>
    /// <returns>The fraction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside that range.</exception>
    public static InchFraction AtMost(Length length) => new((int)Math.Floor(InSixteenths(length)));

    /// <summary>
    /// A length to the nearest sixteenth in words: "46 15/16 in", "-1/4 in"; "under 1/16 in" for a length that is not zero but has zero as
    /// its nearest sixteenth.
    /// </summary>
    /// <param name="length">−1 km to 1 km.</param>
    /// <returns>The length in words.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside that range.</exception>
    public static string Describe(Length length)
    {
        var nearest = Nearest(length);
        return nearest.Sixteenths == 0 && length.Millimeters != 0 ? "under 1/16 in" : nearest.ToString();
    }

    /// <summary>Compares by length.</summary>
    /// <param name="other">The other length.</param>
    /// <returns>Negative, zero or positive, as this length is shorter, equal or longer.</returns>
    public int CompareTo(InchFraction other) => Sixteenths.CompareTo(other.Sixteenths);

    /// <summary>Whether <paramref name="left"/> is shorter.</summary>
    public static bool operator <(InchFraction left, InchFraction right) =>
        left.Sixteenths < right.Sixteenths;

    /// <summary>Whether <paramref name="left"/> is longer.</summary>
    public static bool operator >(InchFraction left, InchFraction right) =>
        left.Sixteenths > right.Sixteenths;

    /// <summary>Whether <paramref name="left"/> is shorter or as long.</summary>
    public static bool operator <=(InchFraction left, InchFraction right) =>
        left.Sixteenths <= right.Sixteenths;

    /// <summary>Whether <paramref name="left"/> is longer or as long.</summary>
    public static bool operator >=(InchFraction left, InchFraction right) =>
        left.Sixteenths >= right.Sixteenths;

    /// <summary>The fraction in lowest terms, the same in every culture: "46 15/16 in", "1/2 in", "3 in", "-1/4 in".</summary>
    /// <returns>The fraction, as text.</returns>
    public override string ToString()
    {
        var (whole, rest) = long.DivRem(Math.Abs((long)Sixteenths), 16);
        var sign = Sixteenths < 0 ? "-" : "";
        if (rest == 0)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{sign}{whole} in");
        }

        var divisor = 1 << BitOperations.TrailingZeroCount(rest);
        var inches = whole == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{whole} ");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{sign}{inches}{rest / divisor}/{16 / divisor} in"
        );
    }

    // Decimal takes the 15 digits that a double means, so that 0.79375 mm is half a sixteenth and not nearly half.
    private static decimal InSixteenths(Length length)
    {
        var millimetres = Require.InRange(
            length.Millimeters,
            -LongestMillimetres,
            LongestMillimetres,
            "mm",
            nameof(length)
        );
        return (decimal)millimetres / MillimetresPerSixteenth;
    }
}
