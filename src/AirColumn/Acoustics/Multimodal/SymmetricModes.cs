using System.Numerics;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>Eigenvalues and eigenvectors of symmetric matrices, complex ones included (symmetric, not Hermitian).</summary>
/// <remarks>
/// Schur's form by Householder's reflections and the shifted QR method, both unitary; golub2013, ch. 7. Rotations that keep a complex
/// matrix symmetric are not bounded and lose all digits here.
/// </remarks>
internal static class SymmetricModes
{
    private const int MostRounds = 60; // for each eigenvalue

    /// <summary>
    /// The matrix is overwritten; column j of the vectors, row-major, belongs to value j, and vᵀv = 1 without conjugation.
    /// </summary>
    public static (Complex[] Values, Complex[] Vectors) Of(Complex[] matrix, int n)
    {
        var basis = new Complex[n * n];
        for (var i = 0; i < n; i++)
        {
            basis[i * n + i] = 1;
        }

        ToHessenberg(matrix, basis, n);
        ToTriangle(matrix, basis, n);
        return Vectors(matrix, basis, n);
    }

    private static void ToHessenberg(Complex[] h, Complex[] z, int n)
    {
        var v = new Complex[n];
        for (var k = 0; k < n - 2; k++)
        {
            var square = 0.0;
            for (var i = k + 1; i < n; i++)
            {
                v[i] = h[i * n + k];
                square += Norm(v[i]);
            }

            var first = Complex.Abs(v[k + 1]);
            var length = Math.Sqrt(square);
            if (length == 0)
            {
                continue;
            }

            v[k + 1] += first == 0 ? length : length / first * v[k + 1];
            var scale = 2 / (square - first * first + Norm(v[k + 1]));
            for (var j = 0; j < n; j++)
            {
                Complex sum = 0;
                for (var i = k + 1; i < n; i++)
                {
                    sum += Complex.Conjugate(v[i]) * h[i * n + j];
                }

                sum *= scale;
                for (var i = k + 1; i < n; i++)
                {
                    h[i * n + j] -= v[i] * sum;
                }
            }

            Reflect(h, v, k + 1, scale, n);
            Reflect(z, v, k + 1, scale, n);
        }
    }

    // From the right.
    private static void Reflect(Complex[] a, Complex[] v, int from, double scale, int n)
    {
        for (var i = 0; i < n; i++)
        {
            Complex sum = 0;
            for (var j = from; j < n; j++)
            {
                sum += a[i * n + j] * v[j];
            }

            sum *= scale;
            for (var j = from; j < n; j++)
            {
                a[i * n + j] -= sum * Complex.Conjugate(v[j]);
            }
        }
    }

    private static void ToTriangle(Complex[] h, Complex[] z, int n)
    {
        var (cosines, sines) = (new double[n], new Complex[n]);
        var rounds = 0;
        for (var last = n - 1; last > 0; )
        {
            var low = last;
            while (low > 0 && !IsNothing(h, n, low))
            {
                low--;
            }

            if (low > 0)
            {
                h[low * n + low - 1] = 0;
            }

            if (low == last || rounds > MostRounds)
            {
                last--;
                rounds = 0;
                continue;
            }

            rounds++;
            Step(h, z, n, low, last, Shift(h, n, last, rounds), cosines, sines);
        }
    }

    private static bool IsNothing(Complex[] h, int n, int row) =>
        Size(h[row * n + row - 1]) <= 1e-16 * (Size(h[row * n + row]) + Size(h[(row - 1) * n + row - 1]));

    // Of the last two by two, the eigenvalue nearer to the last entry.
    private static Complex Shift(Complex[] h, int n, int last, int rounds)
    {
        var (a, b, c, d) = (
            h[(last - 1) * n + last - 1],
            h[(last - 1) * n + last],
            h[last * n + last - 1],
            h[last * n + last]
        );
        if (rounds % 10 == 0)
        {
            return d + Complex.Abs(c);
        }

        var half = (a - d) / 2;
        var root = Complex.Sqrt(half * half + b * c);
        var plus = half + root;
        var minus = half - root;
        return d + (Size(plus) < Size(minus) ? plus : minus);
    }

    private static void Step(
        Complex[] h,
        Complex[] z,
        int n,
        int low,
        int last,
        Complex shift,
        double[] cosines,
        Complex[] sines
    )
    {
        for (var i = low; i <= last; i++)
        {
            h[i * n + i] -= shift;
        }

        for (var k = low; k < last; k++)
        {
            var (x, y) = (h[k * n + k], h[(k + 1) * n + k]);
            var length = Math.Sqrt(Norm(x) + Norm(y));
            var first = Complex.Abs(x);
            var phase = first == 0 ? 1 : x / first;
            (cosines[k], sines[k]) =
                length == 0 ? (1, 0) : (first / length, phase * Complex.Conjugate(y) / length);
            var (c, s) = (cosines[k], sines[k]);
            for (var j = k; j < n; j++)
            {
                var (upper, lower) = (h[k * n + j], h[(k + 1) * n + j]);
                h[k * n + j] = c * upper + s * lower;
                h[(k + 1) * n + j] = c * lower - Complex.Conjugate(s) * upper;
            }
        }

        for (var k = low; k < last; k++)
        {
            var (c, s) = (cosines[k], sines[k]);
            Turn(h, n, k, 0, Math.Min(k + 2, last + 1), c, s);
            Turn(z, n, k, 0, n, c, s);
        }

        for (var i = low; i <= last; i++)
        {
            h[i * n + i] += shift;
        }
    }

    private static void Turn(Complex[] a, int n, int k, int from, int to, double c, Complex s)
    {
        for (var i = from; i < to; i++)
        {
            var (left, right) = (a[i * n + k], a[i * n + k + 1]);
            a[i * n + k] = c * left + Complex.Conjugate(s) * right;
            a[i * n + k + 1] = c * right - s * left;
        }
    }

    private static (Complex[] Values, Complex[] Vectors) Vectors(Complex[] t, Complex[] z, int n)
    {
        var (values, vectors) = (new Complex[n], new Complex[n * n]);
        var x = new Complex[n];
        for (var j = 0; j < n; j++)
        {
            values[j] = t[j * n + j];
            x[j] = 1;
            for (var i = j - 1; i >= 0; i--)
            {
                Complex sum = 0;
                for (var m = i + 1; m <= j; m++)
                {
                    sum += t[i * n + m] * x[m];
                }

                var apart = values[j] - t[i * n + i];
                x[i] = sum / (apart == 0 ? 1e-16 * (Size(values[j]) + 1e-300) : apart);
            }

            Complex square = 0;
            for (var i = 0; i < n; i++)
            {
                Complex sum = 0;
                for (var m = 0; m <= j; m++)
                {
                    sum += z[i * n + m] * x[m];
                }

                vectors[i * n + j] = sum;
                square += sum * sum;
            }

            var scale = 1 / Complex.Sqrt(square);
            for (var i = 0; i < n; i++)
            {
                vectors[i * n + j] *= scale;
            }
        }

        return (values, vectors);
    }

    private static double Norm(Complex z) => z.Real * z.Real + z.Imaginary * z.Imaginary;

    private static double Size(Complex z) => Math.Abs(z.Real) + Math.Abs(z.Imaginary);
}
