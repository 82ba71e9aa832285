namespace AirColumn.Tests.Acoustics.Kernels;

/// <summary>
/// What a small polynomial W(δ) = Σ cᵢ·Pᵢ(2δ − 1) adds to the two solutions of f'' = (F + W)·f over 0 ≤ δ ≤ 1, as
/// numbers by which the η of <see cref="AirColumn.Acoustics.Kernels.Oscillation"/> are multiplied (source: ixaru1997).
/// </summary>
/// <remarks>
/// Each correction is Σ Cₘ(δ)·δ²ᵐ⁺¹·ηₘ(Fδ²), and follows from the one before, W·p = Q·ξ + Σ Rₘ·δ²ᵐ⁺¹·ηₘ, by C₀ = ½∫Q,
/// Cₘ = ½δ⁻ᵐ∫δᵐ⁻¹(Rₘ₋₁ − Cₘ₋₁''). The first order is linear in the c, the second quadratic.
/// </remarks>
internal static class PerturbationRecurrence
{
    private const int Orders = 6;

    /// <summary>The highest Legendre polynomial.</summary>
    public const int Degree = 4;

    /// <summary>u, u', v, v' at δ = 1.</summary>
    public const int Functions = 4;

    /// <summary>c₁², c₁c₂, c₂², c₁c₃: the pairs that the second order takes.</summary>
    public const int Pairs = 4;

    /// <summary>Rows of ξ, η₀ … η₅.</summary>
    public const int Rows = Orders + 1;

    /// <summary>Factor of row r and cᵢ in a function: [(function·Rows + r)·Degree + i − 1].</summary>
    public static readonly double[] First = new double[Functions * Rows * Degree];

    /// <summary>Factor of row r and a pair: [(function·Rows + r)·Pairs + pair].</summary>
    public static readonly double[] Second = new double[Functions * Rows * Pairs];

    private static readonly (int I, int J)[] PairOf = [(1, 1), (1, 2), (2, 2), (1, 3)];

    static PerturbationRecurrence()
    {
        for (var i = 1; i <= Degree; i++)
        {
            foreach (var isV in new[] { false, true })
            {
                Add(First, Degree, i - 1, isV, FirstOrder(i, isV));
            }
        }

        for (var pair = 0; pair < Pairs; pair++)
        {
            var (i, j) = PairOf[pair];
            foreach (var isV in new[] { false, true })
            {
                Add(Second, Pairs, pair, isV, SecondOrder(i, FirstOrder(j, isV)));
                if (i != j)
                {
                    Add(Second, Pairs, pair, isV, SecondOrder(j, FirstOrder(i, isV)));
                }
            }
        }
    }

    private static void Add(double[] table, int columns, int column, bool isV, double[][] c)
    {
        // p = Σ Cₘηₘ, p' = C₀ξ + Σ (Cₘ' + Cₘ₊₁)ηₘ at δ = 1.
        var value = isV ? 2 : 0;
        for (var m = 0; m < c.Length; m++)
        {
            var (sum, slope) = (c[m].Sum(), Derivative(c[m]).Sum());
            table[(value * Rows + m + 1) * columns + column] += sum;
            table[((value + 1) * Rows + m) * columns + column] += sum;
            table[((value + 1) * Rows + m + 1) * columns + column] += slope;
        }
    }

    private static double[][] FirstOrder(int i, bool isV)
    {
        var w = Legendre(i);
        var c = new double[Orders][];
        c[0] = isV ? [0] : Half(w, 1, 1);
        c[1] = Half(Minus(isV ? w : [0], Derivative(Derivative(c[0]))), 0, 1);
        for (var m = 2; m < c.Length; m++)
        {
            c[m] = Half(Minus([0], Derivative(Derivative(c[m - 1]))), 0, m);
        }

        return c;
    }

    private static double[][] SecondOrder(int i, double[][] first)
    {
        var w = Legendre(i);
        var c = new double[Orders][];
        c[0] = [0];
        for (var m = 1; m < c.Length; m++)
        {
            c[m] = Half(Minus(Product(w, first[m - 1]), Derivative(Derivative(c[m - 1]))), 0, m);
        }

        return c;
    }

    // ½·Σ rₙ·δⁿ⁺ˢ/(n + m).
    private static double[] Half(double[] r, int shift, int m)
    {
        var result = new double[r.Length + shift];
        for (var n = 0; n < r.Length; n++)
        {
            result[n + shift] = 0.5 * r[n] / (n + m);
        }

        return result;
    }

    private static double[] Derivative(double[] p) =>
        p.Length < 2 ? [0] : [.. p.Skip(1).Select((value, n) => value * (n + 1))];

    private static double[] Minus(double[] a, double[] b)
    {
        var result = new double[Math.Max(a.Length, b.Length)];
        for (var n = 0; n < result.Length; n++)
        {
            result[n] = (n < a.Length ? a[n] : 0) - (n < b.Length ? b[n] : 0);
        }

        return result;
    }

    private static double[] Product(double[] a, double[] b)
    {
        var result = new double[a.Length + b.Length - 1];
        for (var n = 0; n < a.Length; n++)
        {
            for (var k = 0; k < b.Length; k++)
            {
                result[n + k] += a[n] * b[k];
            }
        }

        return result;
    }

    // P(2δ − 1) in powers of δ.
    private static double[] Legendre(int i) =>
        i switch
        {
            1 => [-1, 2],
            2 => [1, -6, 6],
            3 => [-1, 12, -30, 20],
            4 => [1, -20, 90, -140, 70],
            _ => throw new ArgumentOutOfRangeException(nameof(i), i, null),
        };
}
