using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

namespace AirColumn;

/// <summary>
/// A measurement from which a bore can be found: a <see cref="MeasuredReflectance"/> or <see cref="MeasuredResonances"/>. Immutable.
/// </summary>
public abstract class BoreMeasurement
{
    private protected BoreMeasurement() { }

    /// <summary>The highest frequency measured; a column that is fitted must answer up to it.</summary>
    public Frequency HighestFrequency => Frequency.FromHertz(HighestHertz);

    /// <summary>The same in Hz.</summary>
    internal abstract double HighestHertz { get; }

    /// <summary>How much of it is fitted, one after another: the last is all.</summary>
    internal abstract IReadOnlyList<int> Stages { get; }

    /// <summary>How many numbers so much of it has.</summary>
    internal abstract int NumbersOf(int stage);

    /// <summary>The highest frequency, Hz, that a column must answer for so much of it.</summary>
    internal abstract double HighestHertzOf(int stage);

    /// <summary>What a column has more than was measured, each number over its standard deviation; null where the column has it not.</summary>
    internal abstract Vector<double>? Residuals(
        Column column,
        int stage,
        CancellationToken cancellationToken
    );

    /// <summary>The derivatives of those with parameters, [number, parameter].</summary>
    internal abstract Matrix<double> Slopes(
        Column column,
        ColumnParameter[] parameters,
        int stage,
        CancellationToken cancellationToken
    );
}
