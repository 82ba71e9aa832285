using AirColumn.Workshop.Words;
using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>
/// A length to saw, as a tape shows it: rounded up, in millimetres and separately in sixteenths of an inch. Immutable.
/// </summary>
/// <remarks>
/// A pipe that is too long can be trimmed; one that is too short is lost. Both marks come from the exact length, so nothing is rounded
/// twice. The two marks are different lengths, and either is safe.
/// </remarks>
public sealed record SawLength
{
    private SawLength(Length exact, Length millimetres)
    {
        (Exact, Millimetres) = (exact, millimetres);
        Inches = new InchFraction(Math.Max(1, InchFraction.AtLeast(exact).Sixteenths));
    }

    /// <summary>The length before it was rounded.</summary>
    public Length Exact { get; }

    /// <summary>The mark on a metric tape, not below <see cref="Exact"/>.</summary>
    public Length Millimetres { get; }

    /// <summary>The mark on a tape in inches, not below <see cref="Exact"/>.</summary>
    public InchFraction Inches { get; }

    /// <summary>A computed length, rounded up to a whole millimetre or sixteenth.</summary>
    /// <param name="shortest">The shortest safe length: above 0, up to 1 km.</param>
    /// <returns>The length to saw.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range.</exception>
    public static SawLength Computed(Length shortest) =>
        new(Checked(shortest), Rounded.UpToMillimetre(shortest));

    /// <summary>
    /// A length given by the maker, rounded up to a tenth of a millimetre or a sixteenth, so a length that lies on a mark stays there.
    /// </summary>
    /// <param name="given">The length: above 0 to 1 km.</param>
    /// <returns>The length to saw.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range.</exception>
    public static SawLength Given(Length given) => new(Checked(given), Rounded.UpToTenth(given));

    /// <summary>
    /// The length of pipe that the piece takes, in the units in which it is sawn; with both units, the longer of the two marks.
    /// </summary>
    /// <param name="units">The units.</param>
    /// <returns>The length of pipe.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined.</exception>
    public Length Longest(LengthUnits units) =>
        Require.Named(units) switch
        {
            LengthUnits.Millimetres => Millimetres,
            LengthUnits.Inches => Inches.Length,
            _ => Inches.Length > Millimetres ? Inches.Length : Millimetres,
        };

    /// <summary>The length in words, the same in every culture: "1090 mm or 42 15/16 in".</summary>
    /// <param name="units">The units.</param>
    /// <returns>The length in words.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units are not defined.</exception>
    public string In(LengthUnits units) =>
        Require.Named(units) switch
        {
            LengthUnits.Millimetres => Wording.Millimetres(Millimetres),
            LengthUnits.Inches => Inches.ToString(),
            _ => $"{Wording.Millimetres(Millimetres)} or {Inches}",
        };

    private static Length Checked(Length length)
    {
        Require.InRange(length.Millimeters, 1e-6, 1e6, "mm", nameof(length));
        return length;
    }
}

/// <summary>A pipe and the length to saw it to.</summary>
/// <param name="Pipe">The pipe.</param>
/// <param name="Length">The length: for the open pipe its first cut, for others their given length.</param>
public sealed record SawnPipe(PipePart Pipe, SawLength Length);
