using System.Numerics;
using AirColumn.Acoustics;

namespace AirColumn.Resonances;

/// <summary>
/// Numerator and denominator of a column's input impedance near one frequency, each as a polynomial.
/// </summary>
/// <remarks>
/// For a fixed state at the far end, pressure and flow at the blown end are entire functions of frequency, smooth on the
/// scale of c/2πL: unlike Z they have no poles, so that a polynomial serves however sharp a resonance is and however
/// close an anti-resonance lies to it. Complex values on the real axis thus give zeros off the axis, to about
/// (2πL·Im f/c)⁹/9!, and extrema of |Z| to rounding instead of to its square root.
/// </remarks>
internal sealed class LocalState
{
    private readonly double centre;
    private readonly double width;
    private readonly LocalPolynomial large; // of the two, the one whose zero is not wanted
    private readonly LocalPolynomial small; // vanishes at the resonance: U for a maximum of |Z|, p for a minimum

    // Of the frequency: beside a corner of a model; nearer to it both sides are sampled.
    private const double LeastReach = 1e-6;

    /// <summary>
    /// Samples the column at up to twice <paramref name="width"/> on both sides of <paramref name="centre"/>, Hz; less far where a corner of
    /// a model, such as that where the mass of a step is held, lies between and is to be kept out.
    /// </summary>
    public LocalState(Column column, double centre, double width, bool keepsOffCorners)
    {
        if (keepsOffCorners)
        {
            foreach (var corner in column.Waves.Corners)
            {
                width = Math.Min(width, Math.Max(0.475 * Math.Abs(corner - centre), LeastReach * centre));
            }
        }

        this.centre = centre;
        this.width = width;
        Span<double> hertz = stackalloc double[LocalPolynomial.Points];
        for (var i = 0; i < hertz.Length; i++)
        {
            hertz[i] = centre + LocalPolynomial.Node(i) * width;
        }

        Span<Complex> pressures = stackalloc Complex[hertz.Length];
        Span<Complex> flows = stackalloc Complex[hertz.Length];
        IsSmooth = true;
        // All from one source: each has a scale of its own.
        var segment = column.Waves.Segments.At(centre);
        if (segment?.Holds(hertz[0]) == true && segment.Holds(hertz[^1]))
        {
            segment.At(hertz, pressures, flows);
        }
        else
        {
            double? reference = null;
            for (var i = 0; i < hertz.Length; i++)
            {
                var (p, u, log) = column.InputState(2 * Math.PI * hertz[i]);
                var scale = Math.Exp(log - (reference ??= log));
                IsSmooth &= scale is > 1e-6 and < 1e6;
                (pressures[i], flows[i]) = (p * scale, u * scale);
            }
        }

        var isOpen = column.Options.BlownEnd.IsOpen;
        large = new LocalPolynomial(isOpen ? flows : pressures);
        small = new LocalPolynomial(isOpen ? pressures : flows);
    }

    /// <summary>
    /// Whether the state changes so moderately over the samples that a polynomial can follow it; in a capillary it may not.
    /// </summary>
    public bool IsSmooth { get; }

    /// <summary>A zero of the small part, Hz, by Newton's method from a start; zeros already known are divided out.</summary>
    public Complex ZeroNear(Complex start, IEnumerable<Complex> known)
    {
        var t = (start - centre) / width;
        for (var i = 0; i < 60; i++)
        {
            var (value, slope, _) = small.At(t);
            if (value == 0)
            {
                break;
            }

            // Newton on small/Π(t − tₖ), so that a zero already found does not attract again.
            var inverse = slope / value;
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
            var (s, s1, s2) = small.At(t);
            var (l, l1, l2) = large.At(t);
            var (smallRate, largeRate) = (s1 / s, l1 / l);
            var first = (smallRate - largeRate).Real;
            var second = (s2 / s - smallRate * smallRate - (l2 / l - largeRate * largeRate)).Real;
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
