using AirColumn.Acoustics;
using MathNet.Numerics.LinearAlgebra;
using Complex = System.Numerics.Complex;

namespace AirColumn.Design;

/// <summary>
/// Reflectance over its noise, and what is believed over its standard deviation, as residuals over unknowns that are independent of each other
/// and of variance 1 beforehand.
/// </summary>
internal sealed class BoreFitProblem
{
    // In place of a residual where values make no bore: far worse than any that there is.
    private const double Missing = 1e5;

    private readonly Column believed;
    private readonly MeasuredReflectance measured;
    private readonly ColumnParameter[] parameters;
    private readonly double[] present; // their values beforehand
    private readonly Matrix<double> root; // of their covariance beforehand
    private readonly CancellationToken cancellationToken;
    private int count; // frequencies taken
    private FitPoint? last;

    public BoreFitProblem(
        Column believed,
        MeasuredReflectance measured,
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
                "No dimension is uncertain, so that there is nothing to fit; give a tolerance or a profile.",
                nameof(tolerances)
            );
        }

        if (parameters.GroupBy(parameter => parameter).FirstOrDefault(same => same.Count() > 1) is { } twice)
        {
            throw new ArgumentException($"The {twice.Key} is given twice; give it once.", nameof(tolerances));
        }

        if (measured.Hertz[^1] > believed.HighestFrequency.Hertz)
        {
            throw new ArgumentOutOfRangeException(
                nameof(measured),
                measured.Hertz[^1],
                $"The measurement goes up to {Require.Show(measured.Hertz[^1], "Hz")}, the column answers up to "
                    + $"{Require.Show(Math.Round(believed.HighestFrequency.Hertz, 1), "Hz")}; leave out what lies above."
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

        Take(measured.Hertz.Length);
    }

    public int Unknowns => parameters.Length;

    public int Residuals => 2 * count + Unknowns;

    /// <summary>Takes so many frequencies, the lowest.</summary>
    public void Take(int frequencies) => (count, last) = (frequencies, null);

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
        var slopes = Matrix<double>.Build.Dense(2 * count, Unknowns);
        if (point.Column is not null)
        {
            var hertz = measured.Hertz[..count];
            var gradient = point.Column.ImpedanceGradient(
                FrequencyGrid.FromHertz(hertz),
                parameters,
                cancellationToken: cancellationToken
            );
            for (var f = 0; f < count; f++)
            {
                var sum = gradient.Impedance[f] + measured.ReferenceImpedance;
                var rate = 2 * measured.ReferenceImpedance / (sum * sum) / measured.StandardDeviation;
                for (var n = 0; n < Unknowns; n++)
                {
                    var slope = rate * gradient.At(n, f);
                    (slopes[2 * f, n], slopes[2 * f + 1, n]) = (slope.Real, slope.Imaginary);
                }
            }
        }

        return (slopes * root).Stack(Matrix<double>.Build.DenseIdentity(Unknowns));
    }

    /// <summary>What was found at a place.</summary>
    public BoreFitSolution Solution(Vector<double> place, bool converged)
    {
        var point = At(place);
        var jacobian = Jacobian(place);
        var data = point.Residuals.SubVector(0, 2 * count);
        var noise = Math.Sqrt(data.DotProduct(data) / (2 * count));
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
            (point.Column ?? believed).WarningsUpTo(measured.Hertz[^1])
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
        residuals.SetSubVector(2 * count, Unknowns, place);
        if (ColumnAt(Values(place)) is not { } column)
        {
            return new FitPoint(place, null, residuals);
        }

        var (real, imaginary) = (new double[count], new double[count]);
        column.Impedance(measured.Hertz[..count], real, imaginary, cancellationToken);
        for (var f = 0; f < count; f++)
        {
            var off =
                MeasuredReflectance.Of(new Complex(real[f], imaginary[f]), measured.ReferenceImpedance)
                - measured.Values[f];
            residuals[2 * f] = off.Real / measured.StandardDeviation;
            residuals[2 * f + 1] = off.Imaginary / measured.StandardDeviation;
        }

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
            return column.HighestFrequency.Hertz >= measured.Hertz[count - 1] ? column : null;
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}

/// <summary>A place, the column there, null where there is none, and its residuals.</summary>
internal sealed record FitPoint(Vector<double> Place, Column? Column, Vector<double> Residuals);
