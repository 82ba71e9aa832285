using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace AirColumn;

/// <summary>Searches for a shape: chooses diameters, lengths and holes between bounds so that targets are met.</summary>
/// <remarks>
/// A search takes minutes where <see cref="Wavefronts.Automatic"/> chooses radial modes, as for wide flares, and about a second with
/// <see cref="Wavefronts.Curved"/>. Search with curved fronts first; then search again from the column found with automatic fronts, or check
/// that column with automatic fronts.
/// </remarks>
public static class ShapeSearch
{
    // Inside the bounds, where the change of variables that keeps it between them has a slope.
    private const double Margin = 1e-3;

    /// <summary>Chooses the variables so that the targets are met as nearly as possible, in the sense of least squares.</summary>
    /// <remarks>
    /// The search takes Levenberg–Marquardt steps with the exact gradients of the resonances. It starts from the column as it is, then from
    /// random places between the bounds. If no start meets the targets, some other shape may still meet them. The exponent of a Bessel horn
    /// is not a parameter: to vary how a flare opens, take a <see cref="ProfileSection"/> or several cones.
    /// </remarks>
    /// <param name="column">The column to begin with; it is not changed.</param>
    /// <param name="variables">The parameters to choose and their bounds; at least one.</param>
    /// <param name="targets">The targets; at least one.</param>
    /// <param name="options">The options of the search. Default: those of a new <see cref="ShapeOptions"/>.</param>
    /// <param name="progress">Is told the share of all starts and steps that is done, 0 to 1; it jumps to 1 when the targets are met early.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The best shape found, and the amount by which it misses each target.</returns>
    /// <exception cref="ArgumentException">
    /// There is no variable or no target, the column does not have a parameter, or a fingering is for another number of holes.
    /// </exception>
    public static ShapeSolution Solve(
        Column column,
        IReadOnlyList<DesignVariable> variables,
        IReadOnlyList<ShapeTarget> targets,
        ShapeOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(variables);
        ArgumentNullException.ThrowIfNull(targets);
        var done = 0.0;
        var solution = FrontsOfSearch.Keep(
            column,
            from =>
                new Search(
                    new ShapeProblem(from, variables, targets, cancellationToken),
                    options ?? new ShapeOptions(),
                    Report
                ).Run(),
            solution => solution.Column,
            (solution, same) => solution with { Column = same },
            cancellationToken
        );
        Report(1);
        return solution;

        // A search that begins again with other wave fronts does not go back.
        void Report(double share)
        {
            if (share > done)
            {
                progress?.Report(done = share);
            }
        }
    }

    private sealed class Search(ShapeProblem problem, ShapeOptions options, Action<double> report)
    {
        private readonly List<ShapeStart> starts = [];
        private ShapePoint? best;
        private bool bestConverged;
        private int before; // evaluations of the starts that are done

        public ShapeSolution Run()
        {
            var random = new Random(options.Seed);
            for (var i = 0; i < options.Starts; i++)
            {
                var from =
                    i == 0 && options.FromColumn
                        ? problem.Present
                        : [.. Enumerable.Range(0, problem.Variables.Count).Select(_ => random.NextDouble())];
                if (Descend(from) && !options.AllStarts)
                {
                    break;
                }
            }

            return End(best!);
        }

        // Whether the targets are met.
        private bool Descend(double[] from)
        {
            before = problem.Evaluations;
            var start = Vector<double>.Build.Dense([.. from.Select(x => Math.Clamp(x, Margin, 1 - Margin))]);
            var count = problem.Residuals;
            var model = ObjectiveFunction.NonlinearModel(
                (point, _) => Vector<double>.Build.Dense(At(point).Residuals),
                (point, _) => Matrix<double>.Build.DenseOfArray(problem.Jacobian(At(point))),
                Vector<double>.Build.Dense(count),
                Vector<double>.Build.Dense(count)
            );
            var found = At(start);
            var converged = true;
            if (!IsSolved(found))
            {
                var negligible = 0.01 * options.Within;
                var result = new LevenbergMarquardtMinimizer(
                    1e-3,
                    1e-15,
                    1e-13,
                    negligible * negligible,
                    options.Steps
                ).FindMinimum(
                    model,
                    start,
                    Vector<double>.Build.Dense(start.Count),
                    Vector<double>.Build.Dense(start.Count, 1)
                );
                converged = result.ReasonForExit != ExitCondition.None && result.Iterations < options.Steps;
                found = At(result.MinimizingPoint);
            }

            var isSolved = IsSolved(found);
            starts.Add(new ShapeStart(isSolved, problem.LargestError(found), problem.Evaluations - before));
            if (best is null || (found.IsComplete, -found.Cost).CompareTo((best.IsComplete, -best.Cost)) > 0)
            {
                (best, bestConverged) = (found, converged);
            }

            return isSolved;
        }

        private ShapePoint At(Vector<double> point)
        {
            var here = problem.At(point);
            // Each step asks for one shape, or a few where it has to be shortened.
            var share = Math.Min((double)(problem.Evaluations - before) / (options.Steps + 1), 1);
            report(0.99 * (starts.Count + share) / options.Starts);
            return here;
        }

        private bool IsSolved(ShapePoint point) => problem.LargestError(point) <= options.Within;

        private ShapeSolution End(ShapePoint point)
        {
            var errors = problem.Errors(point);
            var values = problem.Values(point);
            var status =
                IsSolved(point) ? SolveStatus.Solved
                : point.Column is null ? SolveStatus.NoBore
                : Array.Exists(errors, error => double.IsNaN(error.Error)) ? SolveStatus.NoResonance
                : bestConverged ? SolveStatus.OutOfReach
                : SolveStatus.NotConverged;
            return new ShapeSolution
            {
                Status = status,
                Column = point.Column ?? problem.Column,
                Values = values,
                Errors = errors,
                Starts = starts,
                Explanation = Explain(status, values, errors),
            };
        }

        private string Explain(SolveStatus status, ChosenValue[] values, TargetError[] errors)
        {
            if (status == SolveStatus.Solved)
            {
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"All {errors.Length} targets are met within {options.Within:0.######} (cents, tenths of a decibel or of a millimetre)."
                );
            }

            var starts = options.Starts == 1 ? "The start" : $"None of {options.Starts} starts";
            if (status == SolveStatus.NoBore)
            {
                return $"{starts} led to values that make a bore. {best!.Problem}";
            }

            if (status == SolveStatus.NoResonance)
            {
                var missing = errors.First(error => double.IsNaN(error.Error)).Target;
                return $"{starts} led to a column that shows all resonances asked for: {missing} is missing.";
            }

            var worst = errors.MaxBy(error => Math.Abs(error.Error * error.Target.Weight));
            var bounds = string.Join(
                "; ",
                values.Where(value => value.IsAtBound).Select(value => value.Variable.ToString())
            );
            return string.Create(
                    CultureInfo.InvariantCulture,
                    $"{starts} met all targets: the best misses the {worst.Target} by {Math.Abs(worst.Error):0.###} {worst.Target.ErrorUnit}."
                )
                + (
                    bounds.Length > 0 ? $" At a bound: {bounds}. Wider bounds may help."
                    : status == SolveStatus.NotConverged
                        ? " The search was still improving; more steps may help."
                    : " Another variable may be needed."
                );
        }
    }
}
