using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Recordings;

/// <summary>
/// Sum of products, always added up in the same order whatever the machine's vectors: what is heard and rendered is the same on each.
/// </summary>
internal static class DotProduct
{
    public static double Of(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        right = right[..left.Length];
        var a = MemoryMarshal.Cast<double, Vector256<double>>(left);
        var b = MemoryMarshal.Cast<double, Vector256<double>>(right)[..a.Length];
        var (s0, s1, s2, s3) = (
            Vector256<double>.Zero,
            Vector256<double>.Zero,
            Vector256<double>.Zero,
            Vector256<double>.Zero
        );
        var i = 0;
        for (; i + 3 < a.Length; i += 4)
        {
            s0 += a[i] * b[i];
            s1 += a[i + 1] * b[i + 1];
            s2 += a[i + 2] * b[i + 2];
            s3 += a[i + 3] * b[i + 3];
        }

        for (; i < a.Length; i++)
        {
            s0 += a[i] * b[i];
        }

        var sum = Vector256.Sum(s0 + s1 + (s2 + s3));
        for (var k = a.Length * Vector256<double>.Count; k < left.Length; k++)
        {
            sum += left[k] * right[k];
        }

        return sum;
    }
}
