using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace AirColumn;

/// <summary>Finds the bore that fits a measured impedance or measured resonances, given the bore as it is believed to be.</summary>
public static class BoreFit
{
    // Of standard deviations known beforehand: how near the end of a descent is to be.
    private const double CoarseStep = 0.03;
    private const double FinestStep = 1e-4;
    private const int Steps = 40; // in each stage

    /// <summary>Fits a column to a measured reflectance, or to measured resonances.</summary>
    /// <remarks>
    /// Finds the most likely bore, if the believed values have the given standard deviations and the noise is normal. It minimises a sum of
    /// squares of two kinds: deviations from the measurement, divided by its noise, and changes of the bore, divided by their standard
    /// deviations. It takes Levenberg–Marquardt steps with exact gradients. The lowest frequencies are fitted first. They depend on the bore
    /// as a whole, so the fit of the higher frequencies begins near its minimum. The uncertainty is the covariance of the least-squares
    /// problem (source: aster2018, ch. 11).
    /// </remarks>
    /// <param name="believed">The column as it is believed to be, with the air of the measurement; it is not changed.</param>
    /// <param name="measured">The measurement at its blown end.</param>
    /// <param name="tolerances">Dimensions and quantities of the air that are not known exactly.</param>
    /// <param name="profile">The diameters along the bore if they are not known exactly; null if they are.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The column that fits, and the uncertainty of each of its dimensions.</returns>
    /// <exception cref="ArgumentException">There is nothing to fit, a parameter is given twice, or the column does not have it.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is beyond the range that the column answers.</exception>
    public static BoreFitSolution Solve(
        Column believed,
        BoreMeasurement measured,
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
        var stages = measured.Stages;
        foreach (var stage in stages)
        {
            problem.Take(stage);
            var isLast = stage == stages[^1];
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

        return problem.Solution(problem.Polished(place), converged);
    }
}
