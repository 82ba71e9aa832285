using System.Numerics;
using System.Runtime.CompilerServices;

namespace AirColumn.Acoustics.Vectors;

/// <summary>Sine and cosine of complex numbers side by side.</summary>
internal static class Trigonometry
{
    private const double Small = 0.35; // of |Im z|, below which series of the hyperbolic functions serve

    /// <summary>sin z and cos z, for |Im z| up to some hundred.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void SinCos(in ComplexVector z, out ComplexVector sin, out ComplexVector cos)
    {
        var (s, c) = Vector.SinCos(z.Re);
        Hyperbolic(z.Im, out var sinh, out var cosh);
        sin = new ComplexVector(s * cosh, c * sinh);
        cos = new ComplexVector(c * cosh, -(s * sinh));
    }

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
