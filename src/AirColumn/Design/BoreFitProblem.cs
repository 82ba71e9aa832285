using MathNet.Numerics.LinearAlgebra;

namespace AirColumn;

/// <summary>
/// A measurement over its noise, and what is believed over its standard deviation, as residuals over unknowns that are independent of each other
/// and of variance 1 beforehand.
/// </summary>
internal sealed class BoreFitProblem
{
    // In place of a residual where values make no bore: far worse than any that there is.
    private const double Missing = 1e5;

    private const int PolishingSteps = 4;
    private const double NearEnough = 1e-3;

    private readonly Column believed;
    private readonly BoreMeasurement measured;
    private readonly ColumnParameter[] parameters;
    private readonly double[] present; // their values beforehand
    private readonly Matrix<double> root; // of their covariance beforehand
    private readonly CancellationToken cancellationToken;
    private int stage; // how much of it is taken
    private FitPoint? last;

    public BoreFitProblem(
        Column believed,
        BoreMeasurement measured,
        IReadOnlyList<Tolerance> tolerances,
        BoreProfile? profile,
        CancellationToken cancellationToken
    )
    {
        (this.believed, this.measured, this.cancellationToken) = (believed, measured, cancellationToken);
        var along = profile?.Parameters.Count ?? 0;
        parameters = [.. profile?.Parameters ?? [], .. tolerances.Select(tolerance => tolerance.Parameter)];
        if (parameters.Length == 0)
        {
            throw new ArgumentException(
                "No dimension is uncertain, so there is nothing to fit; give a tolerance or a profile.",
                nameof(tolerances)
            );
        }

        if (parameters.GroupBy(parameter => parameter).FirstOrDefault(same => same.Count() > 1) is { } twice)
        {
            throw new ArgumentException($"The {twice.Key} is given twice; give it once.", nameof(tolerances));
        }

        if (measured.HighestHertz > believed.HighestFrequency.Hertz)
        {
            throw new ArgumentOutOfRangeException(
                nameof(measured),
                measured.HighestHertz,
                $"The measurement goes up to {Require.Show(measured.HighestHertz, "Hz")}, the column answers up to "
                    + $"{Require.Show(Math.Round(believed.HighestFrequency.Hertz, 1), "Hz")}; leave out the higher frequencies."
            );
        }

        present = Array.ConvertAll(parameters, parameter => parameter.Of(believed));
        root = Matrix<double>.Build.Dense(parameters.Length, parameters.Length);
        if (profile is not null)
        {
            root.SetSubMatrix(
                0,
                0,
                Matrix<double>.Build.DenseOfArray(profile.Covariance()).Cholesky().Factor
            );
        }

        for (var i = 0; i < tolerances.Count; i++)
        {
            root[along + i, along + i] = tolerances[i].StandardDeviation;
        }

        Take(measured.Stages[^1]);
    }

    public int Unknowns => parameters.Length;

    public int Residuals => Numbers + Unknowns;

    private int Numbers => measured.NumbersOf(stage);

    /// <summary>Takes so much of the measurement.</summary>
    public void Take(int much) => (stage, last) = (much, null);

    public FitPoint At(Vector<double> place)
    {
        if (last is null || !last.Place.Equals(place))
        {
            last = Evaluate(place.Clone());
        }

        return last;
    }

    /// <summary>[residual, unknown].</summary>
    public Matrix<double> Jacobian(Vector<double> place)
    {
        var point = At(place);
        var slopes = point.Column is null
            ? Matrix<double>.Build.Dense(Numbers, Unknowns)
            : measured.Slopes(point.Column, parameters, stage, cancellationToken);
        return (slopes * root).Stack(Matrix<double>.Build.DenseIdentity(Unknowns));
    }

    /// <summary>
    /// Gauss–Newton steps to the minimum from near it: an end by steps small against what was known beforehand may be far from it against what is
    /// known now.
    /// </summary>
    public Vector<double> Polished(Vector<double> place)
    {
        for (var step = 0; step < PolishingSteps; step++)
        {
            var point = At(place);
            var jacobian = Jacobian(place);
            var move = jacobian
                .TransposeThisAndMultiply(jacobian)
                .Cholesky()
                .Solve(-jacobian.TransposeThisAndMultiply(point.Residuals));
            if (At(place + move).Residuals.L2Norm() > point.Residuals.L2Norm())
            {
                return place;
            }

            place += move;
            // In standard deviations of what is known now.
            if ((jacobian * move).L2Norm() < NearEnough)
            {
                return place;
            }
        }

        return place;
    }

    /// <summary>What was found at a place.</summary>
    public BoreFitSolution Solution(Vector<double> place, bool converged)
    {
        var point = At(place);
        var jacobian = Jacobian(place);
        var data = point.Residuals.SubVector(0, Numbers);
        var noise = Math.Sqrt(data.DotProduct(data) / Numbers);
        // The last rows of the Jacobian are what was known beforehand.
        var covariance =
            root * (jacobian.TransposeThisAndMultiply(jacobian)).Cholesky().Solve(root.Transpose());
        var before = root * root.Transpose();
        var values = new FittedValue[Unknowns];
        var found = Values(place);
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = new FittedValue(
                parameters[i],
                present[i],
                Math.Sqrt(before[i, i]),
                found[i],
                Math.Sqrt(covariance[i, i])
            );
        }

        var status =
            point.Column is null ? SolveStatus.NoBore
            : converged ? SolveStatus.Solved
            : SolveStatus.NotConverged;
        return new BoreFitSolution(
            status,
            point.Column ?? believed,
            values,
            covariance.ToArray(),
            noise,
            (point.Column ?? believed).WarningsUpTo(measured.HighestHertz)
        );
    }

    private double[] Values(Vector<double> place)
    {
        var change = root * place;
        return [.. present.Select((value, i) => value + change[i])];
    }

    private FitPoint Evaluate(Vector<double> place)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var residuals = Vector<double>.Build.Dense(Residuals, Missing);
        residuals.SetSubVector(Numbers, Unknowns, place);
        if (
            ColumnAt(Values(place)) is not { } column
            || measured.Residuals(column, stage, cancellationToken) is not { } off
        )
        {
            return new FitPoint(place, null, residuals);
        }

        residuals.SetSubVector(0, Numbers, off);
        return new FitPoint(place, column, residuals);
    }

    private Column? ColumnAt(double[] values)
    {
        try
        {
            var parts = believed.Parts;
            for (var i = 0; i < values.Length; i++)
            {
                parts = parameters[i].With(parts, values[i]);
            }

            var column = believed.With(parts);
            return column.HighestFrequency.Hertz >= measured.HighestHertzOf(stage) ? column : null;
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}

/// <summary>A place, the column there, null where there is none, and its residuals.</summary>
internal sealed record FitPoint(Vector<double> Place, Column? Column, Vector<double> Residuals);
