using System.Globalization;
using UnitsNet;

namespace AirColumn;

/// <summary>The blown end of a column: closed by lips or a reed, or left open by an air jet.</summary>
public sealed record BlownEnd
{
    private BlownEnd(bool isOpen, double correctionMetres, OpenEnd? free = null)
    {
        IsOpen = isOpen;
        CorrectionMetres = correctionMetres;
        Free = free;
    }

    /// <summary>Closed by lips or a reed: the column resonates at maxima of the input impedance.</summary>
    public static BlownEnd Closed { get; } = new(false, 0);

    /// <summary>True if an air jet leaves the end open. The column then resonates at minima of the impedance.</summary>
    public bool IsOpen { get; }

    /// <summary>True if the end is open and free in the room. Its correction is then computed at each frequency.</summary>
    public bool IsFree => Free is not null;

    /// <summary>The end correction given for an open blown end; 0 at a closed or a free end.</summary>
    public Length Correction => Length.FromMillimeters(CorrectionMetres * 1000);

    internal double CorrectionMetres { get; }

    internal OpenEnd? Free { get; }

    /// <summary>Left open by an air jet.</summary>
    /// <param name="correction">
    /// Length of bore, at the diameter of the blown end, whose air mass equals the mass of the air that moves outside the end (embouchure or
    /// face correction): 0 to 1 m. It depends on the player. Common practice is 0.6 to 1.6 radii where all of the end is open, and several
    /// times as much at a mouth hole narrower than the bore.
    /// </param>
    /// <returns>The blown end.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The correction is negative, too large or not a number.</exception>
    public static BlownEnd Open(Length correction)
    {
        Require.InRange(correction.Millimeters, 0, 1000, "mm", nameof(correction));
        return new BlownEnd(true, correction.Meters);
    }

    /// <summary>
    /// Left open and free in the room, without a player's face near it. It radiates as an open far end does, and its correction is
    /// computed, not given.
    /// </summary>
    /// <param name="wall">Thickness of the wall at the rim; 0 for a thin edge.</param>
    /// <returns>The blown end.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The thickness is negative or not a number.</exception>
    public static BlownEnd FreeOpen(Length wall = default) => new(true, 0, new OpenEnd(wall));

    /// <summary>The kind of end and its correction, in the invariant culture.</summary>
    /// <returns>The kind of end and its correction, as text.</returns>
    public override string ToString() =>
        Free is not null ? $"free blown end ({Free})"
        : IsOpen
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"open blown end, correction {Math.Round(Correction.Millimeters, 6)} mm"
            )
        : "closed blown end";
}
