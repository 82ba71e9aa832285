using System.Numerics;
using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Interpolation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Spectra;

/// <summary>
/// Several real functions of frequency as Chebyshev series in √f over one range, and as short polynomials over equal parts of it for
/// dense evaluation, which are made when first asked for. Safe to share between threads.
/// </summary>
internal sealed class ChebyshevRows
{
    /// <summary>Terms of a polynomial over a part.</summary>
    public const int Terms = 16;

    private const int NodesAt = Terms * Terms;
    private const int LastAt = NodesAt + Terms;

    // Radians to either side of the middle of a part: there J₁₆ is below rounding.
    private const double PartTurn = 1.6;

    private static readonly double[] FromValues = PowersFromValues();

    private readonly double[] coefficients; // [row·n + k]
    private readonly double[]?[] parts; // [row·Terms + power]; empty where so few terms do not serve
    private readonly double allowed;

    /// <param name="range">Over which.</param>
    /// <param name="coefficients">[row·nodes + k].</param>
    /// <param name="nodes">How many terms each has.</param>
    /// <param name="turns">Radians by which the functions turn for each unit of the variable.</param>
    /// <param name="allowed">What the polynomial of a part may leave out, over the largest value of a function there.</param>
    public ChebyshevRows(in RootRange range, double[] coefficients, int nodes, double turns, double allowed)
    {
        (Range, this.coefficients, Nodes, this.allowed) = (range, coefficients, nodes, allowed);
        Rows = coefficients.Length / nodes;
        parts = new double[Math.Max(1, (int)Math.Ceiling(turns / PartTurn))][];
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
    public int Parts => parts.Length;

    /// <summary>The part in which a frequency lies.</summary>
    public int PartOf(double hertz) =>
        Math.Clamp((int)((Range.Place(hertz) + 1) * 0.5 * parts.Length), 0, parts.Length - 1);

    /// <summary>
    /// The polynomials over a part, [row·<see cref="Terms"/> + power], in u = (t − middle)/half, and these; empty where they would leave out
    /// too much, as losses may have it at low frequencies, however little the waves turn.
    /// </summary>
    public double[] Part(int part, out double scale, out double shift)
    {
        var half = 1.0 / parts.Length;
        var middle = -1 + (2 * part + 1) * half;
        (scale, shift) = (Range.Scale / half, (Range.Shift - middle) / half);
        var made = Volatile.Read(ref parts[part]);
        if (made is null)
        {
            made = Make(middle, half);
            Volatile.Write(ref parts[part], made);
        }

        return made;
    }

    /// <summary>The polynomials over a part even where they leave out more than is allowed; not kept.</summary>
    public double[] Nearest(int part) => Make(-1 + (2 * part + 1.0) / parts.Length, 1.0 / parts.Length, true);

    /// <summary>Two complex functions, rows in the order Re, Im, Re, Im, at some places of the variable (Clenshaw).</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void At(RealVector t, out ComplexVector first, out ComplexVector second)
    {
        ref var c = ref coefficients[0];
        var n = Nodes;
        var twice = t + t;
        var zero = RealVector.Zero;
        var (a, b, d, e) = (zero, zero, zero, zero);
        var (aAfter, bAfter, dAfter, eAfter) = (zero, zero, zero, zero);
        for (var k = n - 1; k > 0; k--)
        {
            var aNext = RealVectors.MultiplyAdd(twice, a, Vector.Create(Unsafe.Add(ref c, k)) - aAfter);
            var bNext = RealVectors.MultiplyAdd(twice, b, Vector.Create(Unsafe.Add(ref c, n + k)) - bAfter);
            var dNext = RealVectors.MultiplyAdd(
                twice,
                d,
                Vector.Create(Unsafe.Add(ref c, 2 * n + k)) - dAfter
            );
            var eNext = RealVectors.MultiplyAdd(
                twice,
                e,
                Vector.Create(Unsafe.Add(ref c, 3 * n + k)) - eAfter
            );
            (aAfter, bAfter, dAfter, eAfter) = (a, b, d, e);
            (a, b, d, e) = (aNext, bNext, dNext, eNext);
        }

        first = new ComplexVector(
            RealVectors.MultiplyAdd(t, a, Vector.Create(c) - aAfter),
            RealVectors.MultiplyAdd(t, b, Vector.Create(Unsafe.Add(ref c, n)) - bAfter)
        );
        second = new ComplexVector(
            RealVectors.MultiplyAdd(t, d, Vector.Create(Unsafe.Add(ref c, 2 * n)) - dAfter),
            RealVectors.MultiplyAdd(t, e, Vector.Create(Unsafe.Add(ref c, 3 * n)) - eAfter)
        );
    }

    /// <summary>One function at some places of the variable.</summary>
    public RealVector At(int row, RealVector t)
    {
        ref var c = ref coefficients[row * Nodes];
        var (a, after) = (RealVector.Zero, RealVector.Zero);
        var twice = t + t;
        for (var k = Nodes - 1; k > 0; k--)
        {
            (a, after) = (RealVectors.MultiplyAdd(twice, a, Vector.Create(Unsafe.Add(ref c, k)) - after), a);
        }

        return RealVectors.MultiplyAdd(t, a, Vector.Create(c) - after);
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
        for (var k = n - 1; k > 0; k--)
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

    // Through values at sixteen Chebyshev nodes of the part.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double[] Make(double middle, double half, bool always = false)
    {
        var made = new double[Rows * Terms];
        ValuesAt(middle, half, made);
        Span<double> values = stackalloc double[Terms];
        ref var weight = ref FromValues[0];
        for (var row = 0; row < Rows; row++)
        {
            made.AsSpan(row * Terms, Terms).CopyTo(values);
            if (!always && LeftOut(values) > allowed)
            {
                return [];
            }

            for (var power = 0; power < Terms; power += RealVectors.Count)
            {
                var (even, odd) = (RealVector.Zero, RealVector.Zero);
                for (var i = 0; i < Terms; i += 2)
                {
                    var at = (nuint)(i * Terms + power);
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

                (even + odd).CopyTo(made, row * Terms + power);
            }
        }

        return made;
    }

    // [row·Terms + i].
    private void ValuesAt(double middle, double half, double[] values)
    {
        for (var i = 0; i < Terms; i += RealVectors.Count)
        {
            var t = Vector.Create(middle) + half * Vector.Create(FromValues.AsSpan(NodesAt + i));
            if (Rows == 4)
            {
                At(t, out var first, out var second);
                first.Re.CopyTo(values, i);
                first.Im.CopyTo(values, Terms + i);
                second.Re.CopyTo(values, 2 * Terms + i);
                second.Im.CopyTo(values, 3 * Terms + i);
                continue;
            }

            for (var row = 0; row < Rows; row++)
            {
                At(row, t).CopyTo(values, row * Terms + i);
            }
        }
    }

    // The last two Chebyshev coefficients of values at the nodes over the largest of them.
    private static double LeftOut(ReadOnlySpan<double> values)
    {
        var (last, before, largest) = (0.0, 0.0, 0.0);
        for (var i = 0; i < Terms; i++)
        {
            last += FromValues[LastAt + i] * values[i];
            before += FromValues[LastAt + Terms + i] * values[i];
            largest = Math.Max(largest, Math.Abs(values[i]));
        }

        return largest == 0 ? 0 : (Math.Abs(last) + Math.Abs(before)) / largest;
    }

    private static double Weight(int k, int i) =>
        (k == 0 ? 1.0 : 2.0) / Terms * Math.Cos(Math.PI * k * (i + 0.5) / Terms);

    // [i·Terms + power]: what the value at node i gives to each power; behind them the nodes, and what they give to the last two
    // Chebyshev coefficients.
    private static double[] PowersFromValues()
    {
        var powers = new double[Terms, Terms]; // of T(k)
        (powers[0, 0], powers[1, 1]) = (1, 1);
        for (var k = 2; k < Terms; k++)
        {
            for (var power = 0; power < Terms; power++)
            {
                powers[k, power] = (power > 0 ? 2 * powers[k - 1, power - 1] : 0) - powers[k - 2, power];
            }
        }

        var result = new double[LastAt + 2 * Terms];
        for (var i = 0; i < Terms; i++)
        {
            result[NodesAt + i] = Chebyshev.Node(i, Terms);
            (result[LastAt + i], result[LastAt + Terms + i]) = (Weight(Terms - 1, i), Weight(Terms - 2, i));
            for (var k = 0; k < Terms; k++)
            {
                var weight = Weight(k, i);
                for (var power = 0; power < Terms; power++)
                {
                    result[i * Terms + power] += weight * powers[k, power];
                }
            }
        }

        return result;
    }
}
