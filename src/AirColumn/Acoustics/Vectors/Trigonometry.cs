using System.Numerics;
using System.Runtime.CompilerServices;

namespace AirColumn.Acoustics.Vectors;

/// <summary>Sine and cosine of complex numbers side by side.</summary>
internal static class Trigonometry
{
    private const double Whole = 6755399441055744; // 1.5·2⁵²

    // π/2 in parts of 33, 33 and 53 bits.
    private const double First = 1.57079632673412561417e+00;
    private const double Second = 6.07710050630396597660e-11;
    private const double Third = 2.02226624879595063154e-21;

    private const double Small = 0.35; // of |Im z|, below which series of the hyperbolic functions serve

    /// <summary>sin z and cos z, for |Im z| up to some hundred.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void SinCos(in ComplexVector z, out ComplexVector sin, out ComplexVector cos)
    {
        SinCos(z.Re, out var s, out var c);
        Hyperbolic(z.Im, out var sinh, out var cosh);
        sin = new ComplexVector(s * cosh, c * sinh);
        cos = new ComplexVector(c * cosh, -(s * sinh));
    }

    /// <summary>
    /// sin x and cos x, for |x| up to 10⁵: x less its quarter turns, π/2 being taken off in three parts so short that products with a count
    /// are exact, then polynomials that leave 2⁻⁵⁸ (their coefficients: Sun Microsystems' freely distributable library, 1993).
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void SinCos(RealVector x, out RealVector sin, out RealVector cos)
    {
        // Adding this leaves a whole number in the last bits.
        var count = x * (2 / Math.PI) + Vector.Create(Whole);
        var bits = Vector.AsVectorInt64(count);
        count -= Vector.Create(Whole);
        var r = x - count * First;
        r -= count * Second;
        r -= count * Third;
        var q = r * r;
        var s = RealVectors.MultiplyAdd(
            q,
            Vector.Create(1.58969099521155010221e-10),
            Vector.Create(-2.50507602534068634195e-08)
        );
        var c = RealVectors.MultiplyAdd(
            q,
            Vector.Create(-1.13596475577881948265e-11),
            Vector.Create(2.08757232129817482790e-09)
        );
        s = RealVectors.MultiplyAdd(s, q, Vector.Create(2.75573137070700676789e-06));
        c = RealVectors.MultiplyAdd(c, q, Vector.Create(-2.75573143513906633035e-07));
        s = RealVectors.MultiplyAdd(s, q, Vector.Create(-1.98412698298579493134e-04));
        c = RealVectors.MultiplyAdd(c, q, Vector.Create(2.48015872894767294178e-05));
        s = RealVectors.MultiplyAdd(s, q, Vector.Create(8.33333333332248946124e-03));
        c = RealVectors.MultiplyAdd(c, q, Vector.Create(-1.38888888888741095749e-03));
        s = RealVectors.MultiplyAdd(s, q, Vector.Create(-1.66666666666666324348e-01));
        c = RealVectors.MultiplyAdd(c, q, Vector.Create(4.16666666666666019037e-02));
        s = RealVectors.MultiplyAdd(s * q, r, r);
        c = RealVectors.MultiplyAdd(
            c,
            q * q,
            RealVectors.MultiplyAdd(q, Vector.Create(-0.5), RealVector.One)
        );
        var isOdd = Vector.Equals(bits & Vector<long>.One, Vector<long>.One);
        var sine = Vector.ConditionalSelect(Vector.AsVectorDouble(isOdd), c, s);
        var cosine = Vector.ConditionalSelect(Vector.AsVectorDouble(isOdd), s, c);
        var two = Vector.Create(2L);
        sin = Signed(sine, bits & two);
        cos = Signed(cosine, (bits + Vector<long>.One) & two);
    }

    // Negative where the second bit is set.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static RealVector Signed(RealVector value, Vector<long> bit) =>
        Vector.AsVectorDouble(Vector.AsVectorInt64(value) ^ (bit << 62));

    /// <summary>cos z and sin z/z from z², |z²| ≤ 0.1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void OfSmall(in ComplexVector square, out ComplexVector cos, out ComplexVector sinc)
    {
        cos = 1.0 / 40320 + (-1.0 / 3628800) * square;
        sinc = 1.0 / 362880 + (-1.0 / 39916800) * square;
        cos = -1.0 / 720 + cos * square;
        sinc = -1.0 / 5040 + sinc * square;
        cos = 1.0 / 24 + cos * square;
        sinc = 1.0 / 120 + sinc * square;
        cos = -0.5 + cos * square;
        sinc = -1.0 / 6 + sinc * square;
        cos = 1 + cos * square;
        sinc = 1 + sinc * square;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Hyperbolic(RealVector y, out RealVector sinh, out RealVector cosh)
    {
        if (!Vector.LessThanAll(Vector.Abs(y), Vector.Create(Small)))
        {
            HyperbolicOfLarge(y, out sinh, out cosh);
            return;
        }

        var q = y * y;
        sinh = RealVectors.MultiplyAdd(Vector.Create(1.0 / 39916800), q, Vector.Create(1.0 / 362880));
        cosh = RealVectors.MultiplyAdd(Vector.Create(1.0 / 479001600), q, Vector.Create(1.0 / 3628800));
        sinh = RealVectors.MultiplyAdd(sinh, q, Vector.Create(1.0 / 5040));
        cosh = RealVectors.MultiplyAdd(cosh, q, Vector.Create(1.0 / 40320));
        sinh = RealVectors.MultiplyAdd(sinh, q, Vector.Create(1.0 / 120));
        cosh = RealVectors.MultiplyAdd(cosh, q, Vector.Create(1.0 / 720));
        sinh = RealVectors.MultiplyAdd(sinh, q, Vector.Create(1.0 / 6));
        cosh = RealVectors.MultiplyAdd(cosh, q, Vector.Create(1.0 / 24));
        sinh = RealVectors.MultiplyAdd(sinh, q * y, y);
        cosh = RealVectors.MultiplyAdd(cosh, q, Vector.Create(0.5));
        cosh = RealVectors.MultiplyAdd(cosh, q, RealVector.One);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void HyperbolicOfLarge(RealVector y, out RealVector sinh, out RealVector cosh)
    {
        // Series for the small ones beside large ones: a difference of exponentials would cancel.
        var e = Vector.Exp(y);
        var inverse = RealVector.One / e;
        cosh = 0.5 * (e + inverse);
        var q = y * y;
        var series = RealVector.One;
        for (var n = 15; n > 1; n -= 2)
        {
            series = RealVectors.MultiplyAdd(q * (1.0 / (n * (n - 1))), series, RealVector.One);
        }

        sinh = Vector.ConditionalSelect(
            Vector.LessThan(Vector.Abs(y), Vector.Create(Small)),
            y * series,
            0.5 * (e - inverse)
        );
    }
}
