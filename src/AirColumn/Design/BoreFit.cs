using AirColumn.Acoustics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace AirColumn.Design;

/// <summary>Which bore was measured: from a measured impedance and the bore as it is believed to be, the one that fits both.</summary>
public static class BoreFit
{
    // Of standard deviations known beforehand: how near the end of a descent is to be.
    private const double CoarseStep = 0.03;
    private const double FinestStep = 1e-4;
    private const double FewestInBand = 8; // frequencies
    private const int Steps = 40; // in each band

    /// <summary>Fits a column to a measured reflectance.</summary>
    /// <remarks>
    /// The most likely bore, where what is believed of it has the standard deviations given and the noise is normal: least squares of the
    /// reflectance over its noise and of the changes over theirs, by Levenberg–Marquardt steps with exact gradients. The lowest octaves are fitted
    /// first, and each time one more: they see the bore as a whole, so that the upper ones, whose phase turns many times, begin near their
    /// minimum. How sure the result is, the covariance of that least-squares problem says (source: aster2018, ch. 11).
    /// </remarks>
    /// <param name="believed">The column as it is believed to be, with the air of the measurement; it is not changed.</param>
    /// <param name="measured">What was measured at its blown end.</param>
    /// <param name="tolerances">Dimensions and quantities of the air that are not known exactly.</param>
    /// <param name="profile">The diameters along the bore, where these are not known exactly; null where they are.</param>
    /// <param name="cancellationToken">Ends it early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The column that fits, and how sure each of its dimensions is.</returns>
    /// <exception cref="ArgumentException">There is nothing to fit, one parameter is given twice, or the column does not have it.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is beyond what the column answers.</exception>
    public static BoreFitSolution Solve(
        Column believed,
        MeasuredReflectance measured,
        IReadOnlyList<Tolerance> tolerances,
        BoreProfile? profile = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(believed);
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(tolerances);
        var problem = new BoreFitProblem(
            believed.Decided(cancellationToken),
            measured,
            tolerances,
            profile,
            cancellationToken
        );
        var place = Vector<double>.Build.Dense(problem.Unknowns);
        var converged = true;
        foreach (var count in Bands(measured.Hertz))
        {
            problem.Take(count);
            var isLast = count == measured.Hertz.Length;
            var result = new LevenbergMarquardtMinimizer(
                1e-3,
                1e-12,
                isLast ? FinestStep : CoarseStep,
                1e-12,
                Steps
            ).FindMinimum(
                ObjectiveFunction.NonlinearModel(
                    (point, _) => problem.At(point).Residuals,
                    (point, _) => problem.Jacobian(point),
                    Vector<double>.Build.Dense(problem.Residuals),
                    Vector<double>.Build.Dense(problem.Residuals)
                ),
                place
            );
            place = result.MinimizingPoint;
            converged = result.ReasonForExit != ExitCondition.ExceedIterations;
        }

        return problem.Solution(place, converged);
    }

    // How many frequencies each fit takes: an octave more each time.
    private static List<int> Bands(ReadOnlySpan<double> hertz)
    {
        var counts = new List<int> { hertz.Length };
        for (var high = hertz[^1] / 2; ; high /= 2)
        {
            var count = 0;
            while (hertz[count] < high)
            {
                count++;
            }

            if (count < FewestInBand)
            {
                counts.Reverse();
                return counts;
            }

            counts.Add(count);
        }
    }
}
