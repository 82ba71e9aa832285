using System.Collections.Concurrent;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>Polynomials through values at Chebyshev nodes cos(π(i + ½)/n), i = 0 … n − 1, in powers of the variable.</summary>
internal static class ChebyshevFit
{
    // [i·n + k], for each n that was used.
    private static readonly ConcurrentDictionary<int, Lazy<double[]>> Weights = new();

    /// <summary>
    /// Coefficients of 1, t, t², …, as many as count: those of the Chebyshev series below <paramref name="floor"/> times the
    /// largest are left out from the end.
    /// </summary>
    public static double[] Monomials(ReadOnlySpan<double> values, double floor)
    {
        var c = Coefficients(values);
        var least = floor * c.Max(Math.Abs);
        var count = c.Length;
        while (count > 1 && Math.Abs(c[count - 1]) < least)
        {
            count--;
        }

        var result = new double[count];
        for (var k = 0; k < count; k++)
        {
            var t = Polynomial(k);
            for (var power = 0; power <= k; power++)
            {
                result[power] += c[k] * t[power];
            }
        }

        return result;
    }

    /// <summary>Coefficients of the Chebyshev polynomials.</summary>
    public static double[] Coefficients(ReadOnlySpan<double> values)
    {
        var c = new double[values.Length];
        Coefficients(values, c);
        return c;
    }

    /// <summary>The same into memory of the caller, not that of the values.</summary>
    public static void Coefficients(ReadOnlySpan<double> values, Span<double> c)
    {
        var n = values.Length;
        // About the mean, so that rounding counts against what varies only.
        var mean = 0.0;
        foreach (var value in values)
        {
            mean += value / n;
        }

        var weights = Weights.GetOrAdd(n, static size => new Lazy<double[]>(() => Square(size))).Value;
        var k = 0;
        for (; k <= n - Vector512<double>.Count; k += Vector512<double>.Count)
        {
            var sum = Vector512<double>.Zero;
            for (var i = 0; i < n; i++)
            {
                sum += (values[i] - mean) * Vector512.LoadUnsafe(ref weights[i * n + k]);
            }

            sum.CopyTo(c[k..]);
        }

        for (; k < n; k++)
        {
            var sum = 0.0;
            for (var i = 0; i < n; i++)
            {
                sum += weights[i * n + k] * (values[i] - mean);
            }

            c[k] = sum;
        }

        c[0] += mean;
    }

    /// <summary>What value i gives to coefficient k of n.</summary>
    public static double Weight(int n, int k, int i) =>
        // The angle reduced in whole numbers, so that high coefficients are not noise of the cosine.
        (k == 0 ? 1.0 : 2.0)
        / n
        * Math.Cos(Math.PI * (k * (2 * i + 1) % (4 * n)) / (2.0 * n));

    private static double[] Square(int n)
    {
        var weights = new double[n * n];
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < n; k++)
            {
                weights[i * n + k] = Weight(n, k, i);
            }
        }

        return weights;
    }

    /// <summary>Tₖ in powers of t.</summary>
    public static double[] Polynomial(int k)
    {
        double[] before = [1];
        double[] now = [0, 1];
        if (k == 0)
        {
            return before;
        }

        for (var n = 2; n <= k; n++)
        {
            var next = new double[n + 1];
            for (var i = 0; i < now.Length; i++)
            {
                next[i + 1] += 2 * now[i];
            }

            for (var i = 0; i < before.Length; i++)
            {
                next[i] -= before[i];
            }

            (before, now) = (now, next);
        }

        return now;
    }
}
