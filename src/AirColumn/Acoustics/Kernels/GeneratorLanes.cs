using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Elements;

namespace AirColumn.Acoustics.Kernels;

/// <summary>Eight traceless matrices, side by side: <see cref="Generator"/> in lanes.</summary>
internal readonly struct GeneratorLanes(ComplexLanes diagonal, ComplexLanes upper, ComplexLanes lower)
{
    public readonly ComplexLanes Diagonal = diagonal;
    public readonly ComplexLanes Upper = upper;
    public readonly ComplexLanes Lower = lower;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static GeneratorLanes operator +(in GeneratorLanes a, in GeneratorLanes b) =>
        new(a.Diagonal + b.Diagonal, a.Upper + b.Upper, a.Lower + b.Lower);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static GeneratorLanes operator -(in GeneratorLanes a, in GeneratorLanes b) =>
        new(a.Diagonal - b.Diagonal, a.Upper - b.Upper, a.Lower - b.Lower);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static GeneratorLanes operator *(double factor, in GeneratorLanes a) =>
        new(factor * a.Diagonal, factor * a.Upper, factor * a.Lower);

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static GeneratorLanes Commutator(in GeneratorLanes a, in GeneratorLanes b) =>
        new(
            a.Upper * b.Lower - b.Upper * a.Lower,
            2 * (a.Diagonal * b.Upper - b.Diagonal * a.Upper),
            2 * (a.Lower * b.Diagonal - b.Lower * a.Diagonal)
        );

    /// <summary>The largest entry in any lane, those off the diagonal over their expected size.</summary>
    public double SizeAgainst(Vector512<double> offDiagonal)
    {
        var inverse = Vector512<double>.One / offDiagonal;
        return Math.Max(
            Diagonal.Largest(),
            Math.Max((inverse * Upper).Largest(), (inverse * Lower).Largest())
        );
    }

    /// <summary>
    /// The matrix exponential up to a positive factor in each lane, which keeps it in range: cosh(s)·1 + sinh(s)/s·this.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public LaneMatrix Exponential()
    {
        var square = ComplexLanes.MultiplyAdd(Diagonal, Diagonal, Upper * Lower);
        // Both are entire in s²: no root, no sine where a few terms do.
        var size = square.Largest();
        if (size < 0.7)
        {
            var (few, fewOverS) = Series(square, size < 0.05 ? 6 : Terms);
            return Combine(few, fewOverS);
        }

        var s = square.Root();
        // exp(±s)/exp(Re s): nothing overflows.
        var decay = Vector512.Exp(-2 * s.Re);
        var (sin, cos) = Vector512.SinCos(s.Im);
        var half = Vector512.Create(0.5);
        var (sum, difference) = (half + half * decay, half - half * decay);
        var cosh = new ComplexLanes(cos * sum, sin * difference);
        // Where s is nearly imaginary the difference is small beside the sum: by expm1, or its digits are lost.
        difference = Vector512.ConditionalSelect(
            Vector512.LessThan(s.Re, Vector512.Create(0.05)),
            half * OneMinusExp(2 * s.Re),
            difference
        );
        cosh = new ComplexLanes(cosh.Re, sin * difference);
        var sinh = new ComplexLanes(cos * difference, sin * sum);
        var sinhOverS = sinh / s;
        var small = Vector512.LessThan(
            Vector512.Max(Vector512.Abs(square.Re), Vector512.Abs(square.Im)),
            Vector512.Create(0.5)
        );
        if (small != Vector512<double>.Zero)
        {
            var (c, q) = Series(ComplexLanes.Select(small, square, ComplexLanes.Zero), Terms);
            // In the same scale as the others of the lane: none is needed, s being small.
            (cosh, sinhOverS) = (
                ComplexLanes.Select(small, c, cosh),
                ComplexLanes.Select(small, q, sinhOverS)
            );
        }

        return Combine(cosh, sinhOverS);
    }

    private const int Terms = 9;

    // 1/(2n)! and 1/(2n + 1)!.
    private static readonly double[] Even =
    [
        .. Enumerable.Range(0, Terms + 1).Select(n => 1 / Factorial(2 * n)),
    ];
    private static readonly double[] Odd =
    [
        .. Enumerable.Range(0, Terms + 1).Select(n => 1 / Factorial(2 * n + 1)),
    ];

    private static double Factorial(int n) =>
        Enumerable.Range(1, n).Aggregate(1.0, (product, i) => product * i);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static (ComplexLanes Cosh, ComplexLanes SinhOverS) Series(ComplexLanes square, int terms)
    {
        var cosh = new ComplexLanes(Vector512.Create(Even[terms]), Vector512<double>.Zero);
        var quotient = new ComplexLanes(Vector512.Create(Odd[terms]), Vector512<double>.Zero);
        for (var n = terms - 1; n >= 0; n--)
        {
            cosh = Horner(square, cosh, Vector512.Create(Even[n]));
            quotient = Horner(square, quotient, Vector512.Create(Odd[n]));
        }

        return (cosh, quotient);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ComplexLanes Horner(ComplexLanes z, ComplexLanes sum, Vector512<double> next) =>
        new(
            Vector512.FusedMultiplyAdd(z.Re, sum.Re, Vector512.FusedMultiplyAdd(-z.Im, sum.Im, next)),
            Vector512.FusedMultiplyAdd(z.Re, sum.Im, z.Im * sum.Re)
        );

    // 1 − exp(−x) for x below 0.1.
    private static Vector512<double> OneMinusExp(Vector512<double> x)
    {
        var sum = Vector512<double>.One;
        for (var n = 10; n >= 2; n--)
        {
            sum = Vector512<double>.One - x * sum / Vector512.Create((double)n);
        }

        return x * sum;
    }

    private LaneMatrix Combine(ComplexLanes cosh, ComplexLanes sinhOverS)
    {
        var shift = sinhOverS * Diagonal;
        return new LaneMatrix(cosh + shift, sinhOverS * Upper, sinhOverS * Lower, cosh - shift);
    }
}
