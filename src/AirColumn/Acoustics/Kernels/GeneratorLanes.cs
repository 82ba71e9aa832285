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

    /// <summary>x·a + y·b. Not inlined: what is, in one long method, exceeds what the compiler inlines.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static GeneratorLanes Sum(double x, in GeneratorLanes a, double y, in GeneratorLanes b) =>
        new(Sum(x, a.Diagonal, y, b.Diagonal), Sum(x, a.Upper, y, b.Upper), Sum(x, a.Lower, y, b.Lower));

    /// <summary>x·a + y·b + z·c.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static GeneratorLanes Sum(
        double x,
        in GeneratorLanes a,
        double y,
        in GeneratorLanes b,
        double z,
        in GeneratorLanes c
    ) =>
        new(
            Sum(x, a.Diagonal, y, b.Diagonal) + z * c.Diagonal,
            Sum(x, a.Upper, y, b.Upper) + z * c.Upper,
            Sum(x, a.Lower, y, b.Lower) + z * c.Lower
        );

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ComplexLanes Sum(double x, in ComplexLanes a, double y, in ComplexLanes b) =>
        new(x * a.Re + y * b.Re, x * a.Im + y * b.Im);

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
    /// The matrix exponential up to a positive factor in each lane, which keeps it in range: cosh(s)·1 + sinh(s)/s·this,
    /// with s² = −det.
    /// </summary>
    public LaneMatrix Exponential()
    {
        Span<ComplexLanes> eta = stackalloc ComplexLanes[Oscillation.Orders];
        var cosh = Oscillation.At(ComplexLanes.MultiplyAdd(Diagonal, Diagonal, Upper * Lower), eta);
        var shift = eta[0] * Diagonal;
        return new LaneMatrix(cosh + shift, eta[0] * Upper, eta[0] * Lower, cosh - shift);
    }
}
