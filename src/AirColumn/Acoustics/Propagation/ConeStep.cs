using System.Numerics;
using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>
/// One step of ψ'' + k²q(x)·ψ = 0 that carries the oscillation exactly, however many wavelengths long it is: only what the walls do
/// varies along it.
/// </summary>
/// <remarks>
/// With q = q₀ + q₁P₁ + q₂P₂ + q₃P₃ + q₄P₄ over the step (Legendre), κ = k·mean √q, z = κL and ν = q/q₀, the pair (ψ, ψ'/κ) is carried by
/// <code>
/// (1 + (a² + b²)/2)·R(z) + d·R(z + π/2) + [a, b; b, −a],   R a rotation,
/// a = z/2·(ν₁j₁ − (ν₃ − ν₁ν₂)·j₃),   b = z/2·(j₂·(ν₂ − ν₁²/2) − ν₄j₄) − ν₁²/24·sin z,   d = ν₁²z/8·j₁·(sin z + cos z/z):
/// </code>
/// Magnus' series in the frame that turns with the mean, to first order in what varies and to second of ν₁ and ν₁ν₂ (sources: iserles2002,
/// blanes2009; ∫Pₙ·exp(jzt)dt = 2jⁿjₙ(z), DLMF 10.54.2). Its determinant is 1. Where |z|² is small the same as polynomials in z².
/// </remarks>
internal static class ConeStep
{
    private const MethodImplOptions Apart =
        MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization;

    // Of |z|², below which polynomials serve.
    private const double Short = 0.1;

    /// <summary>ψ and ψ'/k at the near side from those at the far side.</summary>
    /// <param name="kl">k times the length.</param>
    /// <param name="overKl">One over it.</param>
    /// <param name="q">The moments.</param>
    /// <param name="order">How many of them beyond the first count: none, one, or all.</param>
    /// <param name="psi">ψ.</param>
    /// <param name="slope">ψ'/k.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Carry(
        RealVector kl,
        RealVector overKl,
        in Moments q,
        int order,
        ref ComplexVector psi,
        ref ComplexVector slope
    )
    {
        if (order == 0)
        {
            Straight(kl, overKl, q.Q0, out var same, out var up, out var down);
            var (first, second) = (psi, slope);
            psi = ComplexVector.MultiplyAdd(same, first, up * second);
            slope = ComplexVector.MultiplyAdd(same, second, down * first);
        }
        else if (IsShort(kl, q.Q0))
        {
            CarryShort(kl, overKl, q, order, ref psi, ref slope);
        }
        else
        {
            CarryLong(kl, overKl, q, order, ref psi, ref slope);
        }
    }

    /// <summary>The same step for any wave where nothing varies, as in a cylinder: ψ·same + ψ'/k·up and ψ'/k·same + ψ·down.</summary>
    /// <param name="kl">k times the length.</param>
    /// <param name="overKl">One over it.</param>
    /// <param name="q">q.</param>
    /// <param name="same">Of each by itself.</param>
    /// <param name="up">Of ψ by ψ'/k.</param>
    /// <param name="down">Of ψ'/k by ψ.</param>
    [MethodImpl(Apart)]
    public static void Straight(
        RealVector kl,
        RealVector overKl,
        in ComplexVector q,
        out ComplexVector same,
        out ComplexVector up,
        out ComplexVector down
    )
    {
        if (IsShort(kl, q))
        {
            var zz = kl * kl * q;
            Trigonometry.OfSmall(zz, out same, out var sinc);
            up = kl * sinc;
            down = -(overKl * (sinc * zz));
            return;
        }

        q.Roots(out var root, out var inverse);
        Trigonometry.SinCos(kl * root, out var sin, out same);
        up = sin * inverse;
        down = -(sin * root);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool IsShort(RealVector kl, in ComplexVector q) =>
        Vector.LessThanAll(kl * kl * (Vector.Abs(q.Re) + Vector.Abs(q.Im)), Vector.Create(Short));

    [MethodImpl(Apart)]
    private static void CarryLong(
        RealVector kl,
        RealVector overKl,
        in Moments q,
        int order,
        ref ComplexVector psi,
        ref ComplexVector slope
    )
    {
        q.Q0.Roots(out var root, out var inverse);
        var over = inverse * inverse;
        var nu1 = q.Q1 * over;
        var square = nu1 * nu1;
        // The mean of √q is √q₀·(1 − ν₁²/24 − …).
        var small = (1.0 / 24) * square;
        root -= small * root;
        inverse = ComplexVector.MultiplyAdd(small, inverse, inverse);
        var z = kl * root;
        var overZ = overKl * inverse;
        Trigonometry.SinCos(z, out var sin, out var cos);
        var j0 = sin * overZ;
        var j1 = (j0 - cos) * overZ;
        var halfZ = 0.5 * z;
        var zj1 = halfZ * j1;
        var a = zj1 * nu1;
        var b = -(small * sin);
        var d = 0.25 * (square * (zj1 * ComplexVector.MultiplyAdd(cos, overZ, sin)));
        if (order > 1)
        {
            var j2 = 3 * (j1 * overZ) - j0;
            var nu2 = q.Q2 * over;
            b = ComplexVector.MultiplyAdd(halfZ * j2, nu2 - 0.5 * square, b);
            var j3 = 5 * (j2 * overZ) - j1;
            a -= (halfZ * j3) * (q.Q3 * over - nu1 * nu2);
            var j4 = 7 * (j3 * overZ) - j2;
            b -= (halfZ * j4) * (q.Q4 * over);
        }

        var scale = 1 + 0.5 * ComplexVector.MultiplyAdd(a, a, b * b);
        var u = scale * cos - d * sin;
        var w = ComplexVector.MultiplyAdd(scale, sin, d * cos);
        var (first, second) = (psi, slope);
        psi = ComplexVector.MultiplyAdd(u + a, first, (w + b) * (inverse * second));
        slope = ComplexVector.MultiplyAdd(u - a, second, (b - w) * (root * first));
    }

    // With p = q·(kL)²: no quotients that would cancel, or lose their meaning where q₀ vanishes, as in a steep narrow throat.
    [MethodImpl(Apart)]
    private static void CarryShort(
        RealVector kl,
        RealVector overKl,
        in Moments q,
        int order,
        ref ComplexVector psi,
        ref ComplexVector slope
    )
    {
        var square = kl * kl;
        var zz = square * q.Q0;
        Trigonometry.OfSmall(zz, out var cos, out var sinc);
        var (first, second) = (psi, slope);
        // To second order of p₁ and p₁p₂, from the power series of the equation itself.
        var p1 = square * q.Q1;
        var p11 = p1 * p1;
        var u = ComplexVector.MultiplyAdd(p11, -1.0 / 360 + zz * (1.0 / 5040 + (-1.0 / 181440) * zz), cos);
        var a = p1 * (1.0 / 6 + zz * (-1.0 / 60 + zz * (1.0 / 1680 + (-1.0 / 90720) * zz)));
        var w = ComplexVector.MultiplyAdd(p11, -1.0 / 2520 + (1.0 / 45360) * zz, sinc);
        var down = ComplexVector.MultiplyAdd(
            p11,
            -1.0 / 30 + zz * (1.0 / 360 + (-1.0 / 11340) * zz),
            -(zz * sinc)
        );
        if (order > 1)
        {
            var p2 = square * q.Q2;
            var b = p2 * (1.0 / 30 + zz * (-1.0 / 420 + (1.0 / 15120) * zz));
            w += b;
            down = ComplexVector.MultiplyAdd(zz, b, down);
            var cross = p1 * p2 - square * (zz * q.Q3);
            a = ComplexVector.MultiplyAdd(cross, 1.0 / 210 + (-1.0 / 3780) * zz, a);
        }

        psi = ComplexVector.MultiplyAdd(u + a, first, kl * (w * second));
        slope = ComplexVector.MultiplyAdd(u - a, second, overKl * (down * first));
    }
}

/// <summary>Legendre moments of q over a step.</summary>
internal readonly struct Moments(
    ComplexVector q0,
    ComplexVector q1,
    ComplexVector q2,
    ComplexVector q3,
    ComplexVector q4
)
{
    public readonly ComplexVector Q0 = q0;
    public readonly ComplexVector Q1 = q1;
    public readonly ComplexVector Q2 = q2;
    public readonly ComplexVector Q3 = q3;
    public readonly ComplexVector Q4 = q4;
}
