using System.Numerics;
using AirColumn.Acoustics.Spectra;
using AirColumn.Acoustics.Vectors;

namespace AirColumn;

/// <summary>An extremum of |Z|.</summary>
/// <param name="Part">In which part of the series it lies.</param>
/// <param name="Place">Where in that, −1 to 1.</param>
/// <param name="Hertz">Its frequency.</param>
internal readonly record struct Extremum(int Part, double Place, double Hertz);

/// <summary>Extrema of |Z| and complex resonances in one piece of a spectrum.</summary>
/// <remarks>
/// With λ the logarithmic derivative of large/small (<see cref="PartSeries"/>), Re 1/λ has the sign of the slope of its modulus, and next
/// to a single pole it is a straight line through the extremum, 1/λ = u₀ − u: a secant finds it however sharp it is.
/// </remarks>
internal sealed class PieceExtrema(SpectrumPiece piece, bool isOpen)
{
    private const int MostRounds = 50;
    private const double Rest = 1e-9; // of the variable: the extremum is flat there
    private const double Reach = 1.4; // of the variable, beyond which a part's polynomial is no guide off the axis

    private readonly ChebyshevRows rows = piece.Rows;

    /// <summary>The extrema, sampled so often over the whole piece.</summary>
    /// <param name="samples">About how many.</param>
    /// <param name="found">Receives them.</param>
    /// <param name="lastRate">
    /// The slope's sign where the piece before ends, not a number if there is none: at a corner of a model the curve may turn. Receives that
    /// at the end of this one.
    /// </param>
    public void Find(int samples, List<Extremum> found, ref double lastRate)
    {
        var count = RealVectors.Count;
        var each = Math.Max(1, (samples / rows.Parts + count - 1) / count) * count;
        Span<double> places = stackalloc double[count];
        for (var part = 0; part < rows.Parts; part++)
        {
            var series = Series(part);
            var lastPlace = -1.0;
            for (var i = 0; i < each; i += count)
            {
                for (var lane = 0; lane < count; lane++)
                {
                    places[lane] = -1 + 2.0 * (i + lane) / (each - 1);
                }

                var rates = series.InverseRate(Vector.Create<double>(places)).Re;
                for (var lane = 0; lane < count; lane++)
                {
                    if (lastRate > 0 && rates[lane] <= 0)
                    {
                        // On the border of two parts to rounding.
                        var isBorder = lastPlace == places[lane];
                        var place = isBorder
                            ? lastPlace
                            : Refine(series, lastPlace, lastRate, places[lane], rates[lane]);
                        found.Add(new Extremum(part, place, HertzAt(part, place)));
                    }

                    (lastPlace, lastRate) = (places[lane], rates[lane]);
                }
            }
        }
    }

    /// <summary>|Z| at an extremum, Pa·s/m³.</summary>
    public double Magnitude(in Extremum at) => piece.Impedance * Series(at.Part).Ratio(at.Place);

    /// <summary>The half-width, Hz, of a single resonance that would make the curvature of an extremum; not a number where none would.</summary>
    public double HalfWidth(in Extremum at)
    {
        var bend = Series(at.Part).Bend(at.Place);
        return HertzAt(at.Part, new Complex(at.Place, 1 / Math.Sqrt(bend))).Imaginary;
    }

    /// <summary>The complex resonance, Hz, that by itself would make an extremum.</summary>
    public Complex Guess(in Extremum at)
    {
        var guess = at.Place + Series(at.Part).InverseRate(at.Place);
        return HertzAt(at.Part, new Complex(guess.Real, Math.Max(guess.Imaginary, 0)));
    }

    /// <summary>
    /// The complex resonance, Hz, that Newton's method finds from a start, others being divided out; whether it came to rest.
    /// </summary>
    public bool TryPole(Complex start, IReadOnlyList<Complex> known, out Complex pole)
    {
        pole = Complex.NaN;
        if (!(start.Real > 0))
        {
            return false;
        }

        var part = rows.PartOf(start.Real);
        var series = Series(part);
        var u = PlaceOf(part, start);
        Span<Complex> zeros = stackalloc Complex[Math.Min(known.Count, 8)];
        for (var i = 0; i < zeros.Length; i++)
        {
            zeros[i] = PlaceOf(part, known[known.Count - 1 - i]);
        }

        for (var round = 0; round < MostRounds && Complex.Abs(u) < Reach; round++)
        {
            var (value, slope) = series.Small(u);
            var inverse = slope / value;
            foreach (var zero in zeros)
            {
                inverse -= 1 / (u - zero);
            }

            var step = value == 0 ? 0 : 1 / inverse;
            if (!(Complex.Abs(u - step) < Reach))
            {
                break;
            }

            u -= step;
            if (Complex.Abs(step) < 1e-13 + 1e-9 * Math.Abs(u.Imaginary))
            {
                pole = HertzAt(part, u);
                return true;
            }
        }

        pole = HertzAt(part, u);
        return TrySeries(ref pole, known);
    }

    // Away from the part by the series of the whole piece.
    private bool TrySeries(ref Complex pole, IReadOnlyList<Complex> known)
    {
        var range = piece.Range;
        var t = range.Scale * Complex.Sqrt(pole) + range.Shift;
        for (var round = 0; round < MostRounds; round++)
        {
            rows.At(isOpen ? 0 : 2, ComplexVector.All(t), out var value, out var slope, out _);
            var inverse = slope.At(0) / value.At(0);
            foreach (var zero in known)
            {
                inverse -= 1 / (t - (range.Scale * Complex.Sqrt(zero) + range.Shift));
            }

            var step = 1 / inverse;
            t -= step;
            if (!Complex.IsFinite(t) || Math.Abs(t.Imaginary) > 2 || Math.Abs(t.Real) > 1.5)
            {
                return false;
            }

            if (Complex.Abs(step) < 1e-13 + 1e-9 * Math.Abs(t.Imaginary))
            {
                pole = range.HertzAt(t);
                return true;
            }
        }

        return false;
    }

    private PartSeries Series(int part) => new(rows.Part(part, out _, out _).Span, isOpen);

    private double HertzAt(int part, double u) => HertzAt(part, new Complex(u, 0)).Real;

    private Complex HertzAt(int part, Complex u)
    {
        _ = rows.Part(part, out var scale, out var shift);
        var root = (u - shift) / scale;
        return root * root;
    }

    private Complex PlaceOf(int part, Complex hertz)
    {
        _ = rows.Part(part, out var scale, out var shift);
        return scale * Complex.Sqrt(hertz) + shift;
    }

    private static double Refine(PartSeries series, double left, double atLeft, double right, double atRight)
    {
        var (before, atBefore) = (left, atLeft);
        var x = left + (right - left) * (atLeft / (atLeft - atRight));
        for (var round = 0; round < MostRounds; round++)
        {
            var here = series.InverseRate(x).Real;
            (left, right) = here > 0 ? (x, right) : (left, x);
            // A secant through the last two, kept between the bounds.
            var next = x - here * ((x - before) / (here - atBefore));
            next = next >= left && next <= right ? next : 0.5 * (left + right);
            next = here == atBefore ? x : next;
            (before, atBefore) = (x, here);
            if (Math.Abs(next - x) < Rest)
            {
                return next;
            }

            x = next;
        }

        return x;
    }
}
