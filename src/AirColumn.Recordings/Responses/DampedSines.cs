using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using RealVector = MathNet.Numerics.LinearAlgebra.Vector<double>;

namespace AirColumn.Recordings.Responses;

/// <summary>One of the decaying sines that a sound is made of.</summary>
/// <param name="Hertz">Frequency.</param>
/// <param name="PerSecond">Decay: amplitude falls as exp(−PerSecond·t).</param>
/// <param name="Amplitude">At the beginning.</param>
internal readonly record struct DampedSine(double Hertz, double PerSecond, double Amplitude)
{
    public double Q => Math.PI * Hertz / PerSecond;
}

/// <summary>
/// Takes a decaying sound apart into decaying sines: ESPRIT (roy1989), the shift invariance of the signal's part of the space that the
/// sound's pieces span. A sine of its own needs no bin of a spectrum, so that the frequency is found from a few periods.
/// </summary>
internal static class DampedSines
{
    // Pairs of eigenvalues at most: a tube has few modes below a kilohertz.
    private const int MostModes = 30;

    // Samples: enough to tell neighbouring modes apart, few enough for eigenvectors in a fraction of a second.
    private const int LongestPiece = 360;

    // Above the noise, as power: what stands out by less is not told from it.
    private const double AboveNoise = 6;

    public static IReadOnlyList<DampedSine> In(
        double[] sound,
        double rate,
        CancellationToken cancellationToken
    )
    {
        cancellationToken.ThrowIfCancellationRequested();
        var length = Math.Min(sound.Length / 3, LongestPiece);
        var covariance = Covariance(sound, length);
        cancellationToken.ThrowIfCancellationRequested();
        var vectors = covariance.Evd(Symmetricity.Symmetric);
        cancellationToken.ThrowIfCancellationRequested();
        var values = vectors.EigenValues.Select(value => value.Real).ToArray(); // rising
        var order = Order(values);
        if (order == 0)
        {
            return [];
        }

        var space = vectors.EigenVectors.SubMatrix(0, length, length - order, order);
        var upper = space.SubMatrix(0, length - 1, 0, order);
        var lower = space.SubMatrix(1, length - 1, 0, order);
        var shift = upper.TransposeThisAndMultiply(upper).LU().Solve(upper.TransposeThisAndMultiply(lower));
        Complex[] poles =
        [
            .. shift.Evd().EigenValues.Where(z => z.Imaginary > 0 && z.Magnitude is > 0.1 and < 1),
        ];
        return Amplitudes(sound, poles)
            .Zip(
                poles,
                (amplitude, z) =>
                    new DampedSine(z.Phase * rate / (2 * Math.PI), -Math.Log(z.Magnitude) * rate, amplitude)
            )
            .OrderBy(mode => mode.Hertz)
            .ToList();
    }

    // Σ over all pieces of the sound of piece·pieceᵀ: each diagonal is a running sum.
    private static Matrix<double> Covariance(double[] sound, int length)
    {
        var pieces = sound.Length - length + 1;
        var covariance = Matrix<double>.Build.Dense(length, length);
        for (var lag = 0; lag < length; lag++)
        {
            var sum = 0.0;
            for (var i = 0; i < pieces; i++)
            {
                sum += sound[i] * sound[i + lag];
            }

            for (var row = 0; row + lag < length; row++)
            {
                covariance[row, row + lag] = sum;
                covariance[row + lag, row] = sum;
                if (row + lag + 1 < length)
                {
                    sum += sound[row + pieces] * sound[row + pieces + lag] - sound[row] * sound[row + lag];
                }
            }
        }

        return covariance;
    }

    private static int Order(double[] rising)
    {
        var noise = Math.Max(rising[rising.Length / 3], 1e-14 * rising[^1]);
        var order = rising.Count(value => value > AboveNoise * noise);
        return Math.Min(order, Math.Min(2 * MostModes, rising.Length / 2));
    }

    // Least squares in the sines that were found.
    private static double[] Amplitudes(double[] sound, Complex[] poles)
    {
        if (poles.Length == 0)
        {
            return [];
        }

        var basis = Matrix<double>.Build.Dense(sound.Length, 2 * poles.Length);
        for (var k = 0; k < poles.Length; k++)
        {
            var z = Complex.One;
            for (var i = 0; i < sound.Length; i++)
            {
                (basis[i, 2 * k], basis[i, 2 * k + 1]) = (z.Real, z.Imaginary);
                z *= poles[k];
            }
        }

        var parts = basis.QR().Solve(RealVector.Build.Dense(sound));
        return [.. poles.Select((_, k) => double.Hypot(parts[2 * k], parts[2 * k + 1]))];
    }
}
