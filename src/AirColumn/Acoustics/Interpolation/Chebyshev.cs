using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Interpolation;

/// <summary>Chebyshev nodes, and the series through values at them (DLMF 3.5(iv), 18.3).</summary>
internal static class Chebyshev
{
    private const int Anew = 16; // polynomials after which the recurrence starts again, before its rounding counts

    /// <summary>Node i of n: cos(π(i + ½)/n), from 1 downwards.</summary>
    public static double Node(int i, int n) => Math.Cos(Math.PI * (i + 0.5) / n);

    /// <summary>
    /// How many nodes a wave exp(j·turns·t) takes: its coefficients are Bessel functions Jₖ(turns), about
    /// (turns/2)ᵏ·exp(−turns²/4k)/k! (DLMF 10.12.1), of which the last are to be below what is allowed.
    /// </summary>
    public static int NodesFor(double turns, double allowed)
    {
        var (k, log, least) = (0, 0.0, Math.Log(allowed));
        while (log - turns * turns / (4 * Math.Max(k, 1)) > least || k < turns)
        {
            k++;
            log += Math.Log(turns / 2 / k);
        }

        return 8 * ((k + 4 + 7) / 8);
    }

    /// <summary>
    /// Coefficients of rows of values, each row by itself: [row·n + i] in, [row·n + k] out. T(k) at the nodes comes from its recurrence,
    /// which serves all rows.
    /// </summary>
    /// <param name="values">n times the number of rows.</param>
    /// <param name="n">How many nodes.</param>
    /// <param name="coefficients">As many.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Transform(ReadOnlySpan<double> values, int n, Span<double> coefficients)
    {
        var step = RealVectors.Count;
        var whole = (n + step - 1) / step * step;
        Span<double> nodes = stackalloc double[whole];
        Span<double> now = stackalloc double[whole];
        Span<double> before = stackalloc double[whole];
        nodes.Clear();
        before.Clear();
        now.Clear();
        Span<double> quarter = stackalloc double[n + 1]; // cos(πm/2n)
        for (var m = 0; m <= n; m++)
        {
            quarter[m] = Math.Cos(Math.PI * m / (2 * n));
        }

        for (var i = 0; i < n; i++)
        {
            nodes[i] = Node(i, n);
        }

        var rows = values.Length / n;
        ref var value = ref MemoryMarshal.GetReference(values);
        for (var k = 0; k < n; k++)
        {
            if (k % Anew == 0)
            {
                PutPolynomial(k, quarter, now);
                PutPolynomial(Math.Abs(k - 1), quarter, before);
            }

            var weight = (k == 0 ? 1.0 : 2.0) / n;
            for (var row = 0; row < rows; row++)
            {
                coefficients[row * n + k] =
                    weight * Product(ref Unsafe.Add(ref value, row * n), ref now[0], n);
            }

            for (var i = 0; i < whole; i += step)
            {
                var t = At(ref nodes[0], i);
                var here = At(ref now[0], i);
                var next = (t + t) * here - At(ref before[0], i);
                here.StoreUnsafe(ref before[0], (nuint)i);
                next.StoreUnsafe(ref now[0], (nuint)i);
            }
        }
    }

    // T(k) at the nodes: cos(πk(2i + 1)/2n), the angle reduced in whole numbers.
    private static void PutPolynomial(int k, ReadOnlySpan<double> quarter, Span<double> values)
    {
        var n = quarter.Length - 1;
        for (var i = 0; i < n; i++)
        {
            var m = k * (2 * i + 1) % (4 * n);
            m = Math.Min(m, 4 * n - m);
            values[i] = m <= n ? quarter[m] : -quarter[2 * n - m];
        }
    }

    private static double Product(ref double a, ref double b, int count)
    {
        var (first, second) = (RealVector.Zero, RealVector.Zero);
        var step = RealVectors.Count;
        var i = 0;
        for (; i + 2 * step <= count; i += 2 * step)
        {
            first = RealVectors.MultiplyAdd(At(ref a, i), At(ref b, i), first);
            second = RealVectors.MultiplyAdd(At(ref a, i + step), At(ref b, i + step), second);
        }

        var sum = Vector.Sum(first + second);
        for (; i < count; i++)
        {
            sum += Unsafe.Add(ref a, i) * Unsafe.Add(ref b, i);
        }

        return sum;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static RealVector At(ref double a, int i) => Vector.LoadUnsafe(ref a, (nuint)i);
}
