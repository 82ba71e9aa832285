using MathNet.Numerics.LinearAlgebra;
using Complex = System.Numerics.Complex;

namespace AirColumn.Recordings.Previews;

/// <summary>
/// Corrects the first taps of a reflection function so that it reflects what the column reflects over the band of its resonances, by
/// least squares: what a step or a taper at the blown end loses when the band limit spreads its reflection beyond time 0.
/// </summary>
internal static class FirstTaps
{
    private const int Count = 8;
    private const int Points = 60;
    private const int PointsAbove = 200;

    // Above the band the correction is to stay small. Found by trial: small enough to be passive with a cup and throat at the mouth,
    // and 0.1 cent off there; a tenth of that with the mouthpieces of drone tubes.
    private const double WeightAbove = 0.003;

    /// <summary>Changes the first of <paramref name="taps"/>.</summary>
    /// <param name="taps">The reflection function.</param>
    /// <param name="wanted">The reflection coefficient of the column at a frequency in Hz.</param>
    /// <param name="top">How far up it is to be met, Hz.</param>
    /// <param name="sampleRate">Samples per second.</param>
    public static void Correct(double[] taps, Func<double, Complex> wanted, double top, double sampleRate)
    {
        var matrix = Matrix<double>.Build.Dense(Count, Count);
        var right = Vector<double>.Build.Dense(Count);
        for (var i = 0; i < Points; i++)
        {
            var hertz = top * (i + 0.5) / Points;
            var error = wanted(hertz) - ReflectionFunction.Transform(taps, hertz / sampleRate);
            Add(matrix, hertz / sampleRate, 1.0 / Points);
            for (var k = 0; k < Count; k++)
            {
                right[k] += (Delay(-k * hertz / sampleRate) * error).Real / Points;
            }
        }

        for (var i = 0; i < PointsAbove; i++)
        {
            var hertz = top + (sampleRate / 2 - top) * (i + 0.5) / PointsAbove;
            Add(matrix, hertz / sampleRate, WeightAbove * WeightAbove / PointsAbove);
        }

        var correction = matrix.Cholesky().Solve(right);
        for (var k = 0; k < Count; k++)
        {
            taps[k] += correction[k];
        }
    }

    private static void Add(Matrix<double> matrix, double cycles, double weight)
    {
        for (var row = 0; row < Count; row++)
        {
            for (var column = 0; column < Count; column++)
            {
                matrix[row, column] += weight * Math.Cos(2 * Math.PI * cycles * (row - column));
            }
        }
    }

    private static Complex Delay(double cycles) => Complex.FromPolarCoordinates(1, -2 * Math.PI * cycles);
}
