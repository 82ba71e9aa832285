using System.Numerics;
using AirColumn.Acoustics;

namespace AirColumn.Resonances;

/// <summary>Complex resonances by Newton's method on polynomials through samples, which are taken anew around what it leads to.</summary>
internal sealed class PoleSearch(Column column, double modeSpacing)
{
    // From the centre of samples, in widths of them, which reach two.
    private const double MostWidths = 4;

    // Of the half-width: a pole that moves by no more is found; one that still moves by so much in the end is not.
    private const double SettledShare = 1e-8;
    private const double UnsettledShare = 1e-3;

    /// <summary>
    /// The one nearest to a mode, Hz, others being divided out; not a number where the column is not smooth there, and no more than a guess where
    /// the search did not come to rest.
    /// </summary>
    public Complex Near(double mode, IReadOnlyList<Complex> neighbours, out bool isSettled)
    {
        isSettled = true;
        var (centre, width) = (mode, 0.02 * Math.Min(modeSpacing, mode));
        Complex pole = mode;
        var hasSettled = false;
        for (var round = 0; round < 12; round++)
        {
            // The samples reach two widths to either side.
            width = Math.Min(width, 0.4 * (column.HighestHertz - centre));
            if (!(width > 0))
            {
                return Complex.NaN;
            }

            var state = new LocalState(column, centre, width, false);
            var next = state.ZeroNear(pole, neighbours);
            if (!state.IsSmooth || !Complex.IsFinite(next))
            {
                return Complex.NaN;
            }

            // Beyond its points a polynomial is a guide only: so far in that direction, and look again over more of them.
            var (off, reach) = (next - centre, MostWidths * width);
            var isBeyond = Complex.Abs(off) > reach && width < Math.Min(0.1 * modeSpacing, 0.2 * centre);
            if (isBeyond)
            {
                next = centre + off * (reach / Complex.Abs(off));
            }

            var moved = Complex.Abs(next - pole);
            pole = next;
            if (!isBeyond && moved < 1e-12 * mode + SettledShare * Math.Abs(pole.Imaginary))
            {
                return pole;
            }

            hasSettled = !isBeyond && moved < 1e-12 * mode + UnsettledShare * Math.Abs(pole.Imaginary);

            // Centre on it, and span about its height above the axis.
            centre = Math.Max(
                centre + Math.Clamp(pole.Real - centre, -MostWidths * width, MostWidths * width),
                0.1 * mode
            );
            width = Math.Min(
                Math.Max(0.5 * Math.Abs(pole.Imaginary), isBeyond ? 2 * width : 1e-6 * centre),
                Math.Min(0.1 * modeSpacing, 0.2 * centre)
            );
        }

        isSettled = hasSettled;
        return pole;
    }
}
