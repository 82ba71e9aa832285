using System.Numerics;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Junctions;

/// <summary>Symmetric positive matrices, one in each lane, by Cholesky's method: row-major, of which the lower triangle is read.</summary>
internal static class PositiveMatrix
{
    /// <summary>L of L·Lᵀ in place, on its diagonal the inverses.</summary>
    public static void Factor(Span<RealVector> a, int n)
    {
        for (var i = 0; i < n; i++)
        {
            var row = a.Slice(i * n, n);
            for (var j = 0; j < i; j++)
            {
                row[j] = (row[j] - Dot(row[..j], a.Slice(j * n, j))) * a[j * n + j];
            }

            row[i] = RealVector.One / Vector.SquareRoot(row[i] - Dot(row[..i], row[..i]));
        }
    }

    /// <summary>L⁻¹·b in place, b of some columns.</summary>
    public static void Forward(ReadOnlySpan<RealVector> factor, int n, Span<RealVector> b, int columns)
    {
        for (var i = 0; i < n; i++)
        {
            var row = b.Slice(i * columns, columns);
            for (var j = 0; j < i; j++)
            {
                Subtract(factor[i * n + j], b.Slice(j * columns, columns), row);
            }

            foreach (ref var entry in row)
            {
                entry *= factor[i * n + i];
            }
        }
    }

    /// <summary>L⁻ᵀ·b in place, b of one column.</summary>
    public static void Backward(ReadOnlySpan<RealVector> factor, int n, Span<RealVector> b)
    {
        for (var i = n - 1; i >= 0; i--)
        {
            b[i] *= factor[i * n + i];
            Subtract(b[i], factor.Slice(i * n, i), b[..i]);
        }
    }

    /// <summary>from −= factor·values.</summary>
    public static void Subtract(RealVector factor, ReadOnlySpan<RealVector> values, Span<RealVector> from)
    {
        for (var i = 0; i < values.Length; i++)
        {
            from[i] = RealVectors.MultiplyAdd(-factor, values[i], from[i]);
        }
    }

    private static RealVector Dot(ReadOnlySpan<RealVector> a, ReadOnlySpan<RealVector> b)
    {
        var sum = RealVector.Zero;
        for (var i = 0; i < a.Length; i++)
        {
            sum = RealVectors.MultiplyAdd(a[i], b[i], sum);
        }

        return sum;
    }
}
