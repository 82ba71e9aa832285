using System.Numerics;
using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Spectra;

/// <summary>
/// Several real functions of frequency as Chebyshev series in √f over one range, and as short polynomials over equal parts of it for
/// dense evaluation. Immutable.
/// </summary>
internal sealed class ChebyshevRows
{
    /// <summary>Terms of a polynomial over a part.</summary>
    public const int Terms = 16;

    // Radians to either side of the middle of a part: there J₁₆ is below rounding.
    private const double PartTurn = 1.6;

    // Losses may need shorter parts at low frequencies, however little the waves turn.
    private const int MostDoublings = 5;
    private const double Rounding = 1e-14;
    private const double Noise = 5e-16; // of the largest coefficient

    private static readonly double[] Nodes16 =
    [
        .. Enumerable.Range(0, Terms).Select(i => Chebyshev.Node(i, Terms)),
    ];
    private static readonly double[] FromValues = CoefficientsFromValues();
    private static readonly double[] FromCoefficients = PowersFromCoefficients();

    private readonly double[] coefficients; // [row·n + k]
    private readonly int used; // of the terms: those beyond hold rounding only, which grows off the real axis
    private readonly double[] powers; // [(part·rows + row)·Terms + power]
    private readonly double[] leftOut; // [part]

    /// <param name="range">Over which.</param>
    /// <param name="coefficients">[row·nodes + k].</param>
    /// <param name="nodes">How many terms each has.</param>
    /// <param name="turns">Radians by which the functions turn for each unit of the variable.</param>
    /// <param name="allowed">What the polynomial of a part may leave out, over the largest value of a function there.</param>
    public ChebyshevRows(in RootRange range, double[] coefficients, int nodes, double turns, double allowed)
    {
        (Range, this.coefficients, Nodes) = (range, coefficients, nodes);
        Rows = coefficients.Length / nodes;
        var largest = new double[Rows];
        used = Used(largest);
        Parts = Math.Max(1, (int)Math.Ceiling(turns / PartTurn));
        (powers, leftOut) = ([], []);
        for (var doublings = 0; doublings <= MostDoublings; doublings++, Parts *= 2)
        {
            powers = new double[Parts * Rows * Terms];
            leftOut = new double[Parts];
            if (TryMake(largest, Math.Max(allowed, Rounding), doublings == MostDoublings))
            {
                break;
            }
        }
    }

    /// <summary>Over which.</summary>
    public RootRange Range { get; }

    /// <summary>How many terms each function has.</summary>
    public int Nodes { get; }

    /// <summary>How many functions there are.</summary>
    public int Rows { get; }

    /// <summary>The coefficients of one.</summary>
    public ReadOnlySpan<double> Row(int row) => coefficients.AsSpan(row * Nodes, Nodes);

    /// <summary>Over how many equal parts of the variable there are polynomials.</summary>
    public int Parts { get; }

    /// <summary>What the polynomials over a part leave out, over the largest value of each function there.</summary>
    public double LeftOut(int part) => leftOut[part];

    /// <summary>The part in which a frequency lies.</summary>
    public int PartOf(double hertz) =>
        Math.Clamp((int)((Range.Place(hertz) + 1) * 0.5 * Parts), 0, Parts - 1);

    /// <summary>
    /// The polynomials over a part, [row·<see cref="Terms"/> + power], in u = scale·√f + shift, −1 to 1.
    /// </summary>
    public ReadOnlyMemory<double> Part(int part, out double scale, out double shift)
    {
        var half = 1.0 / Parts;
        var middle = MiddleOf(part);
        (scale, shift) = (Range.Scale / half, (Range.Shift - middle) / half);
        return powers.AsMemory(part * Rows * Terms, Rows * Terms);
    }

    // Two complex functions from a row on, Re, Im, Re, Im, at some places of the variable (Clenshaw); the first one twice where it is the
    // last.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void At(int row, RealVector t, out ComplexVector first, out ComplexVector second)
    {
        ref var c = ref coefficients[row * Nodes];
        var n = Nodes;
        var next = row + 2 < Rows ? 2 * n : 0;
        var twice = t + t;
        var zero = RealVector.Zero;
        var (a, b, d, e) = (zero, zero, zero, zero);
        var (aAfter, bAfter, dAfter, eAfter) = (zero, zero, zero, zero);
        for (var k = used - 1; k > 0; k--)
        {
            var aNext = RealVectors.MultiplyAdd(twice, a, Vector.Create(Unsafe.Add(ref c, k)) - aAfter);
            var bNext = RealVectors.MultiplyAdd(twice, b, Vector.Create(Unsafe.Add(ref c, n + k)) - bAfter);
            var dNext = RealVectors.MultiplyAdd(
                twice,
                d,
                Vector.Create(Unsafe.Add(ref c, next + k)) - dAfter
            );
            var eNext = RealVectors.MultiplyAdd(
                twice,
                e,
                Vector.Create(Unsafe.Add(ref c, next + n + k)) - eAfter
            );
            (aAfter, bAfter, dAfter, eAfter) = (a, b, d, e);
            (a, b, d, e) = (aNext, bNext, dNext, eNext);
        }

        first = new ComplexVector(
            RealVectors.MultiplyAdd(t, a, Vector.Create(c) - aAfter),
            RealVectors.MultiplyAdd(t, b, Vector.Create(Unsafe.Add(ref c, n)) - bAfter)
        );
        second = new ComplexVector(
            RealVectors.MultiplyAdd(t, d, Vector.Create(Unsafe.Add(ref c, next)) - dAfter),
            RealVectors.MultiplyAdd(t, e, Vector.Create(Unsafe.Add(ref c, next + n)) - eAfter)
        );
    }

    /// <summary>
    /// A complex function, its real part in one row and its imaginary part in the next, with its first two derivatives by t at complex
    /// places of the variable (Clenshaw's recurrence and its derivatives).
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void At(
        int row,
        in ComplexVector t,
        out ComplexVector value,
        out ComplexVector first,
        out ComplexVector second
    )
    {
        ref var c = ref coefficients[row * Nodes];
        var n = Nodes;
        var twice = 2 * t;
        var (a, aAfter) = (ComplexVector.Zero, ComplexVector.Zero);
        var (d, dAfter) = (a, a);
        var (e, eAfter) = (a, a);
        for (var k = used - 1; k > 0; k--)
        {
            var eNext = ComplexVector.MultiplyAdd(twice, e, 4 * d - eAfter);
            var dNext = ComplexVector.MultiplyAdd(twice, d, 2 * a - dAfter);
            var term = new ComplexVector(
                Vector.Create(Unsafe.Add(ref c, k)) - aAfter.Re,
                Vector.Create(Unsafe.Add(ref c, n + k)) - aAfter.Im
            );
            var aNext = ComplexVector.MultiplyAdd(twice, a, term);
            (aAfter, dAfter, eAfter) = (a, d, e);
            (a, d, e) = (aNext, dNext, eNext);
        }

        var constant = new ComplexVector(
            Vector.Create(c) - aAfter.Re,
            Vector.Create(Unsafe.Add(ref c, n)) - aAfter.Im
        );
        value = ComplexVector.MultiplyAdd(t, a, constant);
        first = ComplexVector.MultiplyAdd(t, d, a - dAfter);
        second = ComplexVector.MultiplyAdd(t, e, 2 * d - eAfter);
    }

    private int Used(double[] largestOf)
    {
        var used = 1;
        for (var row = 0; row < Rows; row++)
        {
            var terms = coefficients.AsSpan(row * Nodes, Nodes);
            var largest = 0.0;
            foreach (var term in terms)
            {
                largest = Math.Max(largest, Math.Abs(term));
            }

            largestOf[row] = largest;
            var last = Nodes;
            while (last > used && Math.Abs(terms[last - 1]) <= Noise * largest)
            {
                last--;
            }

            used = last;
        }

        return used;
    }

    private double MiddleOf(int part) => -1 + (2 * part + 1.0) / Parts;

    // By values at sixteen Chebyshev nodes and the coefficients through them: powers straight from the values would hold their rounding ten
    // thousand times. False where more is left out than is allowed, if that counts.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool TryMake(double[] ofAll, double allowed, bool always)
    {
        Span<double> values = stackalloc double[Rows * Terms];
        Span<double> series = stackalloc double[Terms];
        for (var part = 0; part < Parts; part++)
        {
            ValuesAt(MiddleOf(part), 1.0 / Parts, values);
            for (var row = 0; row < Rows; row++)
            {
                var some = values.Slice(row * Terms, Terms);
                Product(some, FromValues, series);
                var largest = 0.0;
                foreach (var value in some)
                {
                    largest = Math.Max(largest, Math.Abs(value));
                }

                var rest = Next(series[^4], series[^2]) + Next(series[^3], series[^1]);
                if (rest > 2 * Noise * ofAll[row])
                {
                    leftOut[part] = Math.Max(leftOut[part], rest / largest);
                }

                if (leftOut[part] > allowed && !always)
                {
                    return false;
                }

                Product(series, FromCoefficients, powers.AsSpan((part * Rows + row) * Terms, Terms));
            }
        }

        return true;
    }

    // How large the coefficient two further on may be.
    private static double Next(double before, double last)
    {
        var (b, a) = (Math.Abs(before), Math.Abs(last));
        return a < b ? a * (a / b) : a;
    }

    // [row·Terms + i].
    private void ValuesAt(double middle, double half, Span<double> values)
    {
        for (var i = 0; i < Terms; i += RealVectors.Count)
        {
            var t = Vector.Create(middle) + half * Vector.Create(Nodes16.AsSpan(i));
            for (var row = 0; row < Rows; row += 4)
            {
                At(row, t, out var first, out var second);
                first.Re.CopyTo(values[(row * Terms + i)..]);
                first.Im.CopyTo(values[((row + 1) * Terms + i)..]);
                if (row + 2 < Rows)
                {
                    second.Re.CopyTo(values[((row + 2) * Terms + i)..]);
                    second.Im.CopyTo(values[((row + 3) * Terms + i)..]);
                }
            }
        }
    }

    // result[k] = Σ matrix[i·Terms + k]·values[i].
    private static void Product(ReadOnlySpan<double> values, double[] matrix, Span<double> result)
    {
        ref var weight = ref matrix[0];
        for (var k = 0; k < Terms; k += RealVectors.Count)
        {
            var (even, odd) = (RealVector.Zero, RealVector.Zero);
            for (var i = 0; i < Terms; i += 2)
            {
                var at = (nuint)(i * Terms + k);
                even = RealVectors.MultiplyAdd(
                    Vector.Create(values[i]),
                    Vector.LoadUnsafe(ref weight, at),
                    even
                );
                odd = RealVectors.MultiplyAdd(
                    Vector.Create(values[i + 1]),
                    Vector.LoadUnsafe(ref weight, at + Terms),
                    odd
                );
            }

            (even + odd).CopyTo(result[k..]);
        }
    }

    // [i·Terms + k].
    private static double[] CoefficientsFromValues()
    {
        var result = new double[Terms * Terms];
        for (var i = 0; i < Terms; i++)
        {
            for (var k = 0; k < Terms; k++)
            {
                result[i * Terms + k] =
                    (k == 0 ? 1.0 : 2.0) / Terms * Math.Cos(Math.PI * k * (i + 0.5) / Terms);
            }
        }

        return result;
    }

    // [k·Terms + power]: T(k) in powers.
    private static double[] PowersFromCoefficients()
    {
        var result = new double[Terms * Terms];
        (result[0], result[Terms + 1]) = (1, 1);
        for (var k = 2; k < Terms; k++)
        {
            for (var power = 0; power < Terms; power++)
            {
                result[k * Terms + power] =
                    (power > 0 ? 2 * result[(k - 1) * Terms + power - 1] : 0)
                    - result[(k - 2) * Terms + power];
            }
        }

        return result;
    }
}
