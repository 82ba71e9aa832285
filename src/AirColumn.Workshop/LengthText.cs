using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop;

/// <summary>Texts of lengths for people, the same in every culture.</summary>
public static class LengthText
{
    /// <summary>A length as read from a tape: "14.2 mm (9/16 in)", or one of the two units alone.</summary>
    /// <param name="length">−1 km to 1 km.</param>
    /// <param name="units">The units to write it in.</param>
    /// <returns>The length, as text.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside that range, or the units are not defined.</exception>
    public static string Tape(Length length, LengthUnits units) =>
        new Sizes(Require.Named(units)).Tape(length);

    /// <summary>A length as read from a caliper: "2.4 mm (0.094 in)", or one of the two units alone.</summary>
    /// <param name="length">The length.</param>
    /// <param name="units">The units to write it in.</param>
    /// <returns>The length, as text.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined.</exception>
    public static string Caliper(Length length, LengthUnits units) =>
        new Sizes(Require.Named(units)).Caliper(length);

    /// <summary>
    /// The largest cut that may be made: inches are whole sixteenths, rounded down, so the cut in inches is never larger than the exact cut.
    /// </summary>
    /// <param name="length">−1 km to 1 km.</param>
    /// <param name="units">The units to write it in.</param>
    /// <returns>The length, as text.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside that range, or the units are not defined.</exception>
    public static string AtMost(Length length, LengthUnits units) =>
        In(length, InchFraction.AtMost(length), units);

    /// <summary>The least length to leave: inches are whole sixteenths, rounded up.</summary>
    /// <param name="length">−1 km to 1 km.</param>
    /// <param name="units">The units to write it in.</param>
    /// <returns>The length, as text.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside that range, or the units are not defined.</exception>
    public static string AtLeast(Length length, LengthUnits units) =>
        In(length, InchFraction.AtLeast(length), units);

    private static string In(Length length, InchFraction inches, LengthUnits units) =>
        Require.Named(units) switch
        {
            LengthUnits.Millimetres => Wording.Millimetres(length),
            LengthUnits.Inches => inches.ToString(),
            _ => $"{Wording.Millimetres(length)} ({inches})",
        };
}
