using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// What a stretch does to the waves over many bands at once, as Chebyshev series in √f: where its walls take long to integrate, bands get
/// the values at their nodes from here.
/// </summary>
internal sealed class StretchSeries
{
    private const double Beyond = 24; // nodes beyond what the waves turn by …
    private const double BeyondRoot = 6; // … or beyond those that losses take besides, which are no polynomial around f = 0
    private const double Digits = 37; // −ln 1e-16
    private const int More = 16; // where those were too few
    private const double Hopeless = 1e-9; // of the largest value, where so much is left out that more nodes would not do
    private const int Tail = 4;
    private const double Rounding = 1e-15; // of the largest value
    private const double MostAmplitude = 1e150; // squares stay finite

    // Where the matrix is so much larger at one node than at another, the smaller one would lose digits.
    private const double MostRange = 1e3;

    private const int Rows = 8; // real and imaginary parts of four entries

    private readonly bool isGeneral;
    private readonly double[] coefficients; // [k·Rows + row]

    private StretchSeries(bool isGeneral, double[] coefficients)
    {
        (this.isGeneral, this.coefficients) = (isGeneral, coefficients);
        Terms = coefficients.Length / Rows;
    }

    public int Terms { get; }

    /// <summary>Fits it, over frequencies in Hz; null where it is not smooth enough.</summary>
    public static StretchSeries? Fit(
        Stretch stretch,
        double speedOfSound,
        double tolerance,
        double low,
        double high
    )
    {
        if (stretch.Corners.Any(hertz => hertz > low && hertz < high))
        {
            return null;
        }

        var turns = WaveSegment.Turns(stretch.Length / speedOfSound, low, high);
        // Coefficients fall as powers of ρ, the sum of the half-axes of the ellipse through f = 0.
        var (_, shift) = WaveSegment.Variable(low, high);
        var fall = Math.Log(-shift + Math.Sqrt(shift * shift - 1));
        var beyond = Math.Max(Beyond, BeyondRoot + Digits / fall);
        var fewest = ComplexLanes.Count * (int)Math.Ceiling((turns + beyond) / ComplexLanes.Count);
        for (var n = fewest; n <= fewest + More; n += More)
        {
            var values = Values(stretch, tolerance, low, high, n);
            var (least, largest) = Range(values, n, stretch.IsGeneral);
            if (!(largest < MostAmplitude && largest <= MostRange * least))
            {
                return null;
            }

            var tail = 0.0;
            for (var row = 0; row < values.Length; row += n)
            {
                var c = ChebyshevFit.Coefficients(values.AsSpan(row, n));
                c.CopyTo(values, row);
                tail = Math.Max(tail, c[^Tail..].Max(Math.Abs));
            }

            if (tail > Hopeless * largest)
            {
                return null;
            }

            if (tail <= Math.Max(tolerance * least, Rounding * largest))
            {
                return new StretchSeries(stretch.IsGeneral, Transposed(values, n));
            }
        }

        return null;
    }

    /// <summary>Chebyshev polynomials of the variable, T₀, T₁ …, as many as there is room for.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Polynomials(Vector512<double> t, Span<Vector512<double>> polynomials)
    {
        var twice = t + t;
        var (before, now) = (t, Vector512<double>.One);
        for (var k = 0; k < polynomials.Length; k++)
        {
            polynomials[k] = now;
            (before, now) = (now, k == 0 ? t : Vector512.FusedMultiplyAdd(twice, now, -before));
        }
    }

    /// <summary>Its matrix at eight frequencies, as <see cref="Stretch.At"/>, by the polynomials of its variable there.</summary>
    public LaneMatrix At(ReadOnlySpan<Vector512<double>> polynomials)
    {
        var ((a, b), (c, d)) = (Two(polynomials, 0), Two(polynomials, Rows / 2));
        var m = new LaneMatrix(a, b, c, d);
        return isGeneral ? m : m.Normalised();
    }

    // Over all nodes the least of what others are measured by, the last entry, by which they are divided, or, in a general stretch, the largest
    // entry there; and the largest of all. Not a number where one is not.
    private static (double Least, double Largest) Range(ReadOnlySpan<double> values, int n, bool isGeneral)
    {
        var (least, largest) = (double.PositiveInfinity, 0.0);
        for (var i = 0; i < n; i++)
        {
            var here = 0.0;
            for (var row = i; row < values.Length; row += n)
            {
                here = Math.Max(here, Math.Abs(values[row]));
            }

            var last = Math.Max(Math.Abs(values[6 * n + i]), Math.Abs(values[7 * n + i]));
            least = Math.Min(least, isGeneral ? here : last);
            largest = Math.Max(largest, here);
        }

        return (least, largest);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private (ComplexLanes, ComplexLanes) Two(ReadOnlySpan<Vector512<double>> polynomials, int row)
    {
        ref var c = ref coefficients[row];
        ref var polynomial = ref MemoryMarshal.GetReference(polynomials[..Terms]);
        var zero = Vector512<double>.Zero;
        var (re0, im0, re1, im1) = (zero, zero, zero, zero);
        for (var k = 0; k < Terms; k++)
        {
            var t = Unsafe.Add(ref polynomial, k);
            re0 = Vector512.FusedMultiplyAdd(Vector512.Create(c), t, re0);
            im0 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref c, 1)), t, im0);
            re1 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref c, 2)), t, re1);
            im1 = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref c, 3)), t, im1);
            c = ref Unsafe.Add(ref c, Rows);
        }

        return (new ComplexLanes(re0, im0), new ComplexLanes(re1, im1));
    }

    private static double[] Transposed(double[] rows, int n)
    {
        var transposed = new double[rows.Length];
        for (var row = 0; row < Rows; row++)
        {
            for (var k = 0; k < n; k++)
            {
                transposed[k * Rows + row] = rows[row * n + k];
            }
        }

        return transposed;
    }

    private static double[] Values(Stretch stretch, double tolerance, double low, double high, int n)
    {
        var values = new double[8 * n];
        for (var first = 0; first < n; first += ComplexLanes.Count)
        {
            var m = stretch.EntriesAt(FrequencyLanes.AtNodes(low, high, n, first), tolerance);
            Put(m.A, 0);
            Put(m.B, 1);
            Put(m.C, 2);
            Put(m.D, 3);

            void Put(in ComplexLanes z, int entry)
            {
                z.Re.StoreUnsafe(ref values[2 * entry * n + first]);
                z.Im.StoreUnsafe(ref values[(2 * entry + 1) * n + first]);
            }
        }

        return values;
    }
}
