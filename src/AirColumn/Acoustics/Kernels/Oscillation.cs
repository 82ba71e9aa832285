using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// The functions ξ(Z) = cosh √Z, η₀ = sinh √Z/√Z, η₁ = (ξ − η₀)/Z, ηₘ = (ηₘ₋₂ − (2m − 1)·ηₘ₋₁)/Z of complex Z (source:
/// ixaru1997): all that constant-coefficient perturbation methods need of an oscillation.
/// </summary>
internal static class Oscillation
{
    /// <summary>η₀ to η₄.</summary>
    public const int Orders = 5;

    private const int Terms = 10;

    // Series of η₄ and η₃: 2ᵐ(q + m)!/(q!(2q + 2m + 1)!).
    private static readonly double[] Fourth = Series(4);
    private static readonly double[] Third = Series(3);

    // exp of more is taken out.
    private const double MostGrowth = 8;

    /// <summary>
    /// ξ and the η; where Re √Z is above 8, over a common positive factor of each lane that keeps them in range.
    /// </summary>
    /// <param name="z">Z.</param>
    /// <param name="eta">Receives η₀ to η₄, those of high order to fewer digits: they come with small factors.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static ComplexLanes At(in ComplexLanes z, Span<ComplexLanes> eta)
    {
        var size = z.Largest();
        if (size < 1)
        {
            return Small(z, eta);
        }

        var (xi, eta0) = Exponentials(z);
        eta[0] = eta0;
        var inverse = z.Inverse();
        var (before, now) = (xi, eta0);
        for (var m = 1; m < Orders; m++)
        {
            var next = (before - (2 * m - 1.0) * now) * inverse;
            (before, now) = (now, next);
            eta[m] = next;
        }

        var small = Vector512.LessThan(z.Norm, Vector512<double>.One);
        if (small != Vector512<double>.Zero)
        {
            // Lanes of a mixed vector that the recurrence serves badly.
            Span<ComplexLanes> series = stackalloc ComplexLanes[Orders];
            var xiSmall = Small(ComplexLanes.Select(small, z, ComplexLanes.Zero), series);
            xi = ComplexLanes.Select(small, xiSmall, xi);
            for (var m = 0; m < Orders; m++)
            {
                eta[m] = ComplexLanes.Select(small, series[m], eta[m]);
            }
        }

        return xi;
    }

    // cosh s and sinh s/s, s = √Z, over exp(Re s − 8) where that is above 1.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static (ComplexLanes Cosh, ComplexLanes SinhOverS) Exponentials(in ComplexLanes z)
    {
        var s = z.Root();
        var (sin, cos) = Vector512.SinCos(s.Im);
        var (cosh, sinh) = Growth(s.Re);
        return (
            new ComplexLanes(cos * cosh, sin * sinh),
            new ComplexLanes(cos * sinh, sin * cosh) * s.Inverse()
        );
    }

    // cosh and sinh of a number that is not negative, over that factor.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (Vector512<double> Cosh, Vector512<double> Sinh) Growth(Vector512<double> x)
    {
        var one = Vector512<double>.One;
        if (Vector512.LessThanAll(x, Vector512.Create(0.5)))
        {
            var square = x * x;
            var sum = one;
            for (var n = 14; n >= 2; n -= 2)
            {
                sum = Vector512.FusedMultiplyAdd(square * sum, Vector512.Create(1.0 / (n * (n + 1))), one);
            }

            var sinh = x * sum;
            return (Vector512.Sqrt(Vector512.FusedMultiplyAdd(sinh, sinh, one)), sinh);
        }

        var grown = Vector512.Exp(Vector512.Min(x, Vector512.Create(MostGrowth)));
        var difference = 0.5 * OneMinusExp(x + x);
        return (grown * (one - difference), grown * difference);
    }

    // 1 − exp(−x), x not negative, without cancellation.
    private static Vector512<double> OneMinusExp(Vector512<double> x)
    {
        var limit = Vector512.Create(0.25);
        var isSmall = Vector512.LessThan(x, limit);
        var few = Vector512.Min(x, limit);
        var sum = Vector512<double>.One;
        for (var n = 13; n >= 2; n--)
        {
            sum = Vector512.FusedMultiplyAdd(few * sum, Vector512.Create(-1.0 / n), Vector512<double>.One);
        }

        var series = few * sum;
        return isSmall == Vector512<double>.AllBitsSet
            ? series
            : Vector512.ConditionalSelect(isSmall, series, Vector512<double>.One - Vector512.Exp(-x));
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static ComplexLanes Small(in ComplexLanes z, Span<ComplexLanes> eta)
    {
        var fourth = Horner(z, Fourth);
        var third = Horner(z, Third);
        eta[4] = fourth;
        eta[3] = third;
        // ηₘ₋₂ = Z·ηₘ + (2m − 1)·ηₘ₋₁, which is the stable direction; η₋₁ is ξ.
        var (after, now) = (fourth, third);
        for (var m = 4; m >= 2; m--)
        {
            var next = z * after + (2 * m - 1.0) * now;
            eta[m - 2] = next;
            (after, now) = (now, next);
        }

        return z * after + now;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static ComplexLanes Horner(in ComplexLanes z, double[] c)
    {
        var (re, im) = (Vector512.Create(c[^1]), Vector512<double>.Zero);
        for (var n = c.Length - 2; n >= 0; n--)
        {
            var t = Vector512.FusedMultiplyAdd(-z.Im, im, Vector512.Create(c[n]));
            im = Vector512.FusedMultiplyAdd(z.Re, im, z.Im * re);
            re = Vector512.FusedMultiplyAdd(z.Re, re, t);
        }

        return new ComplexLanes(re, im);
    }

    private static double[] Series(int m)
    {
        var c = new double[Terms];
        for (var q = 0; q < Terms; q++)
        {
            c[q] = Math.Pow(2, m) * Factorial(q + m) / (Factorial(q) * Factorial(2 * q + 2 * m + 1));
        }

        return c;
    }

    private static double Factorial(int n) =>
        Enumerable.Range(1, n).Aggregate(1.0, (product, i) => product * i);
}
