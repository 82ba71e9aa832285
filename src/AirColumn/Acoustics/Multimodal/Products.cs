using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>Products of small square matrices at eight frequencies, row-major.</summary>
internal static class Products
{
    public static void Times(
        ReadOnlySpan<double> a,
        ReadOnlySpan<ComplexVector> b,
        Span<ComplexVector> result,
        int n
    )
    {
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                var sum = ComplexVector.Zero;
                for (var k = 0; k < n; k++)
                {
                    sum += a[i * n + k] * b[k * n + j];
                }

                result[i * n + j] = sum;
            }
        }
    }

    public static void Times(
        ReadOnlySpan<ComplexVector> a,
        ReadOnlySpan<double> b,
        Span<ComplexVector> result,
        int n
    )
    {
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                var sum = ComplexVector.Zero;
                for (var k = 0; k < n; k++)
                {
                    sum += b[k * n + j] * a[i * n + k];
                }

                result[i * n + j] = sum;
            }
        }
    }

    public static void Times(
        ReadOnlySpan<ComplexVector> a,
        ReadOnlySpan<ComplexVector> b,
        Span<ComplexVector> result,
        int n
    )
    {
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                var sum = ComplexVector.Zero;
                for (var k = 0; k < n; k++)
                {
                    sum = ComplexVector.MultiplyAdd(a[i * n + k], b[k * n + j], sum);
                }

                result[i * n + j] = sum;
            }
        }
    }

    /// <summary>a·bᵀ.</summary>
    public static void TimesTransposed(
        ReadOnlySpan<ComplexVector> a,
        ReadOnlySpan<double> b,
        Span<ComplexVector> result,
        int n
    )
    {
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                var sum = ComplexVector.Zero;
                for (var k = 0; k < n; k++)
                {
                    sum += b[j * n + k] * a[i * n + k];
                }

                result[i * n + j] = sum;
            }
        }
    }

    /// <summary>aᵀ·b.</summary>
    public static void TransposedTimes(
        ReadOnlySpan<double> a,
        ReadOnlySpan<ComplexVector> b,
        Span<ComplexVector> result,
        int n
    )
    {
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                var sum = ComplexVector.Zero;
                for (var k = 0; k < n; k++)
                {
                    sum += a[k * n + i] * b[k * n + j];
                }

                result[i * n + j] = sum;
            }
        }
    }

    /// <summary>A row times a matrix, in place.</summary>
    public static void Row(
        Span<ComplexVector> row,
        ReadOnlySpan<ComplexVector> a,
        Span<ComplexVector> room,
        int n
    )
    {
        row[..n].CopyTo(room);
        for (var j = 0; j < n; j++)
        {
            var sum = ComplexVector.Zero;
            for (var k = 0; k < n; k++)
            {
                sum = ComplexVector.MultiplyAdd(room[k], a[k * n + j], sum);
            }

            row[j] = sum;
        }
    }

    /// <summary>A row times a real matrix, in place.</summary>
    public static void RowTimes(
        Span<ComplexVector> row,
        ReadOnlySpan<double> a,
        Span<ComplexVector> room,
        int n
    )
    {
        row[..n].CopyTo(room);
        for (var j = 0; j < n; j++)
        {
            var sum = ComplexVector.Zero;
            for (var k = 0; k < n; k++)
            {
                sum += a[k * n + j] * room[k];
            }

            row[j] = sum;
        }
    }

    /// <summary>Takes the rounding out of a matrix that is symmetric but for it.</summary>
    public static void Symmetrize(Span<ComplexVector> a, int n)
    {
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var mean = 0.5 * (a[i * n + j] + a[j * n + i]);
                (a[i * n + j], a[j * n + i]) = (mean, mean);
            }
        }
    }
}
