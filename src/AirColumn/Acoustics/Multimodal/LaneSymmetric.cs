using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using AirColumn.Acoustics.Vectors;

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
    public static void Eliminate(Span<ComplexVector> a, int n, int eliminated, Span<ComplexVector> row)
    {
        // The column being taken out, side by side: strides would miss the cache.
        Span<ComplexVector> column = new ComplexVector[n];
        ref var matrix = ref MemoryMarshal.GetReference(a);
        ref var taken = ref MemoryMarshal.GetReference(column);
        for (var k = 0; k < eliminated; k++)
        {
            for (var i = k; i < n; i++)
            {
                column[i] = a[i * n + k];
            }

            var inverse = column[k].Inverse();
            for (var i = k + 1; i < n; i++)
            {
                var factor = -(column[i] * inverse);
                Add(
                    factor,
                    ref Unsafe.Add(ref taken, k + 1),
                    ref Unsafe.Add(ref matrix, i * n + k + 1),
                    i - k
                );
                row[i] = ComplexVector.MultiplyAdd(factor, row[k], row[i]);
            }
        }
    }

    // into += factor·values, written out on vectors: structures of two of them stay in memory.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Add(
        in ComplexVector factor,
        ref readonly ComplexVector values,
        ref ComplexVector into,
        int count
    )
    {
        var (re, im) = (factor.Re, factor.Im);
        ref var source = ref Unsafe.As<ComplexVector, double>(ref Unsafe.AsRef(in values));
        ref var target = ref Unsafe.As<ComplexVector, double>(ref into);
        var both = 2 * ComplexVector.Count;
        for (nint at = 0; at < count * both; at += both)
        {
            var x = Vector.LoadUnsafe(ref Unsafe.Add(ref source, at));
            var y = Vector.LoadUnsafe(ref Unsafe.Add(ref source, at + ComplexVector.Count));
            var u = Vector.LoadUnsafe(ref Unsafe.Add(ref target, at));
            var v = Vector.LoadUnsafe(ref Unsafe.Add(ref target, at + ComplexVector.Count));
            u = RealVectors.MultiplyAdd(re, x, u);
            v = RealVectors.MultiplyAdd(re, y, v);
            u = RealVectors.MultiplyAdd(-im, y, u);
            v = RealVectors.MultiplyAdd(im, x, v);
            u.StoreUnsafe(ref Unsafe.Add(ref target, at));
            v.StoreUnsafe(ref Unsafe.Add(ref target, at + ComplexVector.Count));
        }
    }

    /// <summary>The inverse, in place.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Invert(Span<ComplexVector> a, int n)
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
                        var value = ComplexVector.MultiplyAdd(factor, a[k * n + j], a[i * n + j]);
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
