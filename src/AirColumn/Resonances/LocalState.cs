using System.Numerics;
using AirColumn.Acoustics;

namespace AirColumn.Resonances;

/// <summary>
/// Numerator and denominator of a column's input impedance near one frequency, each as a polynomial.
/// </summary>
/// <remarks>
/// For a fixed state at the far end, pressure and flow at the blown end are entire functions of frequency, smooth on the
/// scale of c/2L: unlike Z they have no poles, so that a polynomial serves however sharp a resonance is and however
/// close an anti-resonance lies to it. Complex values on the real axis thus give zeros off the axis, and extrema of |Z| to
/// rounding instead of to its square root.
/// </remarks>
internal sealed class LocalState
{
    private readonly double centre;
    private readonly double width;
    private readonly Quartic large; // of the two, the one whose zero is not wanted
    private readonly Quartic small; // vanishes at the resonance: U for a maximum of |Z|, p for a minimum

    public LocalState(Column column, double centre, double width)
    {
        this.centre = centre;
        this.width = width;
        Span<Complex> large = stackalloc Complex[5];
        Span<Complex> small = stackalloc Complex[5];
        var reference = column.InputState(2 * Math.PI * centre).LogScale;
        var isOpen = column.Options.BlownEnd.IsOpen;
        for (var i = 0; i < 5; i++)
        {
            var (p, u, log) = column.InputState(2 * Math.PI * (centre + (i - 2) * width));
            var scale = Math.Exp(log - reference);
            (large[i], small[i]) = isOpen ? (u * scale, p * scale) : (p * scale, u * scale);
        }

        this.large = new Quartic(large[0], large[1], large[2], large[3], large[4]);
        this.small = new Quartic(small[0], small[1], small[2], small[3], small[4]);
    }

    /// <summary>The zero of the small part nearest to a start, Hz, by Newton's method; other zeros may be divided out.</summary>
    public Complex ZeroNear(Complex start, ReadOnlySpan<Complex> known)
    {
        var t = (start - centre) / width;
        for (var i = 0; i < 60; i++)
        {
            var value = small.At(t);
            if (value == 0)
            {
                break;
            }

            // Newton on small/Π(t − tₖ), so that a zero already found does not attract again.
            var inverse = small.SlopeAt(t) / value;
            foreach (var zero in known)
            {
                inverse -= 1 / (t - (zero - centre) / width);
            }

            var step = 1 / inverse;
            t -= step;
            if (!(Complex.Abs(step) > 1e-15 * (1 + Complex.Abs(t))))
            {
                break;
            }
        }

        return centre + width * t;
    }

    /// <summary>
    /// Where |small/large| is least near a start, Hz, by Newton's method on the derivative of its logarithm; null where the
    /// curvature is not that of a minimum.
    /// </summary>
    public double? LeastNear(double start)
    {
        var t = (start - centre) / width;
        for (var i = 0; i < 60; i++)
        {
            var (s, l) = (small.SlopeAt(t) / small.At(t), large.SlopeAt(t) / large.At(t));
            var first = (s - l).Real;
            var second = (
                small.CurvatureAt(t) / small.At(t) - s * s - (large.CurvatureAt(t) / large.At(t) - l * l)
            ).Real;
            if (!(second > 0))
            {
                return null;
            }

            var step = first / second;
            t -= step;
            if (!(Math.Abs(step) > 1e-15 * (1 + Math.Abs(t))))
            {
                break;
            }
        }

        return centre + width * t;
    }
}
