using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>Eight 2×2 matrices, side by side.</summary>
internal readonly struct LaneMatrix(ComplexLanes a, ComplexLanes b, ComplexLanes c, ComplexLanes d)
{
    public readonly ComplexLanes A = a;
    public readonly ComplexLanes B = b;
    public readonly ComplexLanes C = c;
    public readonly ComplexLanes D = d;

    public static LaneMatrix Identity =>
        new(ComplexLanes.One, ComplexLanes.Zero, ComplexLanes.Zero, ComplexLanes.One);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneMatrix operator *(in LaneMatrix x, in LaneMatrix y) =>
        new(
            ComplexLanes.MultiplyAdd(x.A, y.A, x.B * y.C),
            ComplexLanes.MultiplyAdd(x.A, y.B, x.B * y.D),
            ComplexLanes.MultiplyAdd(x.C, y.A, x.D * y.C),
            ComplexLanes.MultiplyAdd(x.C, y.B, x.D * y.D)
        );

    /// <summary>diag(first, second) applied after this one.</summary>
    public static LaneMatrix Scaled(double first, double second, in LaneMatrix m) =>
        new(first * m.A, first * m.B, second * m.C, second * m.D);

    /// <summary>This divided by its last entry.</summary>
    public LaneMatrix Normalised()
    {
        var inverse = D.Inverse();
        return new LaneMatrix(A * inverse, B * inverse, C * inverse, ComplexLanes.One);
    }

    /// <summary>This over a positive factor of each lane where it is so large that a product of many would overflow.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public LaneMatrix InRange()
    {
        var most = Vector512.Create(1e120);
        var norm = Vector512.Max(Vector512.Max(A.Norm, B.Norm), Vector512.Max(C.Norm, D.Norm));
        return Vector512.LessThanAll(norm, most) ? this : Reduced(norm, most);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private LaneMatrix Reduced(Vector512<double> norm, Vector512<double> most)
    {
        var one = Vector512<double>.One;
        var factor = Vector512.ConditionalSelect(
            Vector512.LessThan(norm, most),
            one,
            one / Vector512.Sqrt(norm)
        );
        return new LaneMatrix(factor * A, factor * B, factor * C, factor * D);
    }

    /// <summary>Between (p⁻, p⁺) instead of (sum, difference): the matrix of waves of one of ψ = p⁺ + p⁻ and v = p⁺ − p⁻.</summary>
    public LaneMatrix OfWaves()
    {
        var (sum, difference) = (A + D, A - D);
        var (outer, skew) = (B + C, B - C);
        return new LaneMatrix(
            0.5 * (sum - outer),
            0.5 * (difference + skew),
            0.5 * (difference - skew),
            0.5 * (sum + outer)
        );
    }
}
