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

    private const int Half = Terms / 2;

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

    /// <summary>Where a part ends, Hz; the last one ends nowhere.</summary>
    public double EndOf(int part) =>
        part < Parts - 1 ? Range.HertzAt(MiddleOf(part) + 1.0 / Parts) : double.PositiveInfinity;

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

    // The even or odd terms of two complex functions from a row on, Re, Im, Re, Im; of the first one twice where it is the last. By
    // T(k + 2) = 2y·T(k) − T(k − 2), y = 2t² − 1 (Clenshaw), where the first of these terms is 1 and the second one given.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Alternate(
        int row,
        int parity,
        RealVector y,
        RealVector secondTerm,
        out ComplexVector first,
        out ComplexVector second
    )
    {
        ref var c = ref coefficients[row * Nodes];
        var n = Nodes;
        var next = row + 2 < Rows ? 2 * n : 0;
        var twice = y + y;
        var zero = RealVector.Zero;
        var (a, b, d, e) = (zero, zero, zero, zero);
        var (aAfter, bAfter, dAfter, eAfter) = (zero, zero, zero, zero);
        for (var k = (used - 1 - parity) / 2 * 2 + parity; k > parity; k -= 2)
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

        c = ref Unsafe.Add(ref c, parity);
        first = new ComplexVector(
            RealVectors.MultiplyAdd(secondTerm, a, Vector.Create(c) - aAfter),
            RealVectors.MultiplyAdd(secondTerm, b, Vector.Create(Unsafe.Add(ref c, n)) - bAfter)
        );
        second = new ComplexVector(
            RealVectors.MultiplyAdd(secondTerm, d, Vector.Create(Unsafe.Add(ref c, next)) - dAfter),
            RealVectors.MultiplyAdd(secondTerm, e, Vector.Create(Unsafe.Add(ref c, next + n)) - eAfter)
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
    // thousand times. A part and the one that mirrors it together. False where more is left out than is allowed, if that counts.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool TryMake(double[] ofAll, double allowed, bool always)
    {
        Span<double> values = stackalloc double[Rows * Terms];
        Span<double> mirrored = stackalloc double[Rows * Terms];
        for (var part = Parts / 2; part < Parts; part++)
        {
            ValuesAt(MiddleOf(part), 1.0 / Parts, values, mirrored);
            if (
                !TryPut(part, values, 1, ofAll, allowed, always)
                || !TryPut(Parts - 1 - part, mirrored, -1, ofAll, allowed, always)
            )
            {
                return false;
            }
        }

        return true;
    }

    // The sign is that of the odd terms, for values given from the end.
    private bool TryPut(
        int part,
        ReadOnlySpan<double> values,
        double sign,
        double[] ofAll,
        double allowed,
        bool always
    )
    {
        // Terms of even order, then those of odd order.
        Span<double> series = stackalloc double[Terms];
        Span<double> evenAndOdd = stackalloc double[Terms];
        var even = series[..Half];
        var odd = series[Half..];
        for (var row = 0; row < Rows; row++)
        {
            var some = values.Slice(row * Terms, Terms);
            for (var i = 0; i < Half; i++)
            {
                var (first, last) = (some[i], some[Terms - 1 - i]);
                (evenAndOdd[i], evenAndOdd[Half + i]) = (first + last, sign * (first - last));
            }

            Product(evenAndOdd, FromValues, series);
            var rest = Next(even[^2], even[^1]) + Next(odd[^2], odd[^1]);
            if (rest > 2 * Noise * ofAll[row])
            {
                leftOut[part] = Math.Max(leftOut[part], rest / Largest(some));
            }

            if (leftOut[part] > allowed && !always)
            {
                return false;
            }

            Product(series, FromCoefficients, evenAndOdd);
            var put = powers.AsSpan((part * Rows + row) * Terms, Terms);
            for (var i = 0; i < Half; i++)
            {
                (put[2 * i], put[2 * i + 1]) = (evenAndOdd[i], evenAndOdd[Half + i]);
            }
        }

        return true;
    }

    private static double Largest(ReadOnlySpan<double> values)
    {
        var largest = RealVector.Zero;
        for (var i = 0; i < values.Length; i += RealVectors.Count)
        {
            largest = Vector.Max(largest, Vector.Abs(Vector.Create(values[i..])));
        }

        return RealVectors.Largest(largest);
    }

    // How large the coefficient two further on may be.
    private static double Next(double before, double last)
    {
        var (b, a) = (Math.Abs(before), Math.Abs(last));
        return a < b ? a * (a / b) : a;
    }

    // [row·Terms + i], around a place, and around the one opposite with the places in the opposite order.
    private void ValuesAt(double middle, double half, Span<double> values, Span<double> mirrored)
    {
        for (var i = 0; i < Terms; i += RealVectors.Count)
        {
            var t = Vector.Create(middle) + half * Vector.Create(Nodes16.AsSpan(i));
            var y = 2.0 * t * t - RealVector.One;
            for (var row = 0; row < Rows; row += 4)
            {
                Alternate(row, 0, y, y, out var even, out var evenNext);
                Alternate(row, 1, y, y + y - RealVector.One, out var odd, out var oddNext);
                (odd, oddNext) = (t * odd, t * oddNext);
                Put(even, odd, values, mirrored, row * Terms + i);
                if (row + 2 < Rows)
                {
                    Put(evenNext, oddNext, values, mirrored, (row + 2) * Terms + i);
                }
            }
        }
    }

    private static void Put(
        in ComplexVector even,
        in ComplexVector odd,
        Span<double> values,
        Span<double> mirrored,
        int at
    )
    {
        var (here, there) = (even + odd, even - odd);
        here.Re.CopyTo(values[at..]);
        here.Im.CopyTo(values[(at + Terms)..]);
        there.Re.CopyTo(mirrored[at..]);
        there.Im.CopyTo(mirrored[(at + Terms)..]);
    }

    // result[k] = Σ matrix[i·Half + k]·values[i], of the even halves and then of the odd ones.
    private static void Product(ReadOnlySpan<double> values, double[] matrix, Span<double> result)
    {
        ref var weight = ref matrix[0];
        for (var from = 0; from < Terms; from += Half)
        {
            for (var k = 0; k < Half; k += RealVectors.Count)
            {
                var (first, second) = (RealVector.Zero, RealVector.Zero);
                for (var i = 0; i < Half; i += 2)
                {
                    var at = (nuint)((from + i) * Half + k);
                    first = RealVectors.MultiplyAdd(
                        Vector.Create(values[from + i]),
                        Vector.LoadUnsafe(ref weight, at),
                        first
                    );
                    second = RealVectors.MultiplyAdd(
                        Vector.Create(values[from + i + 1]),
                        Vector.LoadUnsafe(ref weight, at + Half),
                        second
                    );
                }

                (first + second).CopyTo(result[(from + k)..]);
            }
        }
    }

    // From sums of mirrored values terms of even order, from differences those of odd order: [(parity·Half + i)·Half + k/2].
    private static double[] CoefficientsFromValues()
    {
        var result = new double[Terms * Half];
        for (var k = 0; k < Terms; k++)
        {
            for (var i = 0; i < Half; i++)
            {
                result[(k % 2 * Half + i) * Half + k / 2] =
                    (k == 0 ? 1.0 : 2.0) / Terms * Math.Cos(Math.PI * k * (i + 0.5) / Terms);
            }
        }

        return result;
    }

    // T(k) in powers, which are all even or all odd: [(parity·Half + k/2)·Half + power/2].
    private static double[] PowersFromCoefficients()
    {
        var all = new double[Terms, Terms];
        (all[0, 0], all[1, 1]) = (1, 1);
        for (var k = 2; k < Terms; k++)
        {
            for (var power = 0; power < Terms; power++)
            {
                all[k, power] = (power > 0 ? 2 * all[k - 1, power - 1] : 0) - all[k - 2, power];
            }
        }

        var result = new double[Terms * Half];
        for (var k = 0; k < Terms; k++)
        {
            for (var power = k % 2; power < Terms; power += 2)
            {
                result[(k % 2 * Half + k / 2) * Half + power / 2] = all[k, power];
            }
        }

        return result;
    }
}
