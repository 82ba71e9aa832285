using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Kernels;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>Complex symmetric matrices at eight frequencies at once; row-major, all entries kept.</summary>
internal static class LaneSymmetric
{
    /// <summary>
    /// Takes the first unknowns out of a symmetric system, of which only the lower triangle is read, and out of a row beside it: what is
    /// left is the system of the others.
    /// </summary>
    /// <param name="a">n × n; the lower triangle of the last rows receives the rest.</param>
    /// <param name="n">How many unknowns there are.</param>
    /// <param name="eliminated">How many are taken out.</param>
    /// <param name="row">n entries; the last ones receive the rest.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Eliminate(Span<ComplexLanes> a, int n, int eliminated, Span<ComplexLanes> row)
    {
        for (var k = 0; k < eliminated; k++)
        {
            var inverse = a[k * n + k].Inverse();
            for (var i = k + 1; i < n; i++)
            {
                var factor = -(a[i * n + k] * inverse);
                var into = a.Slice(i * n + k + 1, i - k);
                for (var j = 0; j < into.Length; j++)
                {
                    into[j] = ComplexLanes.MultiplyAdd(factor, a[(j + k + 1) * n + k], into[j]);
                }

                row[i] = ComplexLanes.MultiplyAdd(factor, row[k], row[i]);
            }
        }
    }

    /// <summary>The inverse, in place.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Invert(Span<ComplexLanes> a, int n)
    {
        // Gauss and Jordan, each pivot in turn, on the symmetric matrix: (k, k) → −1/d at first, all signs turned at the end.
        for (var k = 0; k < n; k++)
        {
            var inverse = a[k * n + k].Inverse();
            for (var i = 0; i < n; i++)
            {
                if (i == k)
                {
                    continue;
                }

                var factor = -(a[i * n + k] * inverse);
                for (var j = 0; j <= i; j++)
                {
                    if (j != k)
                    {
                        var value = ComplexLanes.MultiplyAdd(factor, a[k * n + j], a[i * n + j]);
                        a[i * n + j] = value;
                    }
                }
            }

            for (var i = 0; i < n; i++)
            {
                if (i != k)
                {
                    var value = a[i * n + k] * inverse;
                    a[i * n + k] = value;
                    a[k * n + i] = value;
                }
            }

            a[k * n + k] = -inverse;
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    a[j * n + i] = a[i * n + j];
                }
            }
        }

        for (var i = 0; i < n * n; i++)
        {
            a[i] = -a[i];
        }
    }
}
