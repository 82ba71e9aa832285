using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

namespace AirColumn;

/// <summary>
/// Measured resonances of a column, each with its number. They are heard after a slap or found in a sweep, or they are a player's drone and
/// overblown notes minus the player's correction. Immutable.
/// </summary>
public sealed class MeasuredResonances : BoreMeasurement
{
    private const double LargestDeviation = 300; // cents: resonances would be taken for their neighbours
    private const int HighestNumber = 200;

    private readonly MeasuredResonance[] resonances;

    /// <summary>Takes resonances.</summary>
    /// <param name="resonances">At least one resonance, each number once.</param>
    /// <exception cref="ArgumentException">
    /// There is no resonance, a number is given twice, or a frequency is not above the frequency of the number before it.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A number, frequency or uncertainty is outside its range.</exception>
    public MeasuredResonances(IEnumerable<MeasuredResonance> resonances)
    {
        ArgumentNullException.ThrowIfNull(resonances);
        this.resonances = [.. resonances.OrderBy(resonance => resonance.Number)];
        if (this.resonances.Length == 0)
        {
            throw new ArgumentException("There is no resonance; give at least one.", nameof(resonances));
        }

        foreach (var (number, frequency, cents) in this.resonances)
        {
            Require.InRange(number, 1, HighestNumber, "", nameof(resonances));
            Require.Positive(frequency.Hertz, "Hz", nameof(resonances));
            Require.InRange(cents, 1e-6, LargestDeviation, "cents", nameof(resonances));
        }

        foreach (var (before, after) in this.resonances.Zip(this.resonances.Skip(1)))
        {
            if (before.Number == after.Number)
            {
                throw new ArgumentException(
                    $"Resonance {after.Number} is given twice; give it once.",
                    nameof(resonances)
                );
            }

            if (!(after.Frequency > before.Frequency))
            {
                throw new ArgumentException(
                    $"Resonance {after.Number} is at {Require.Show(after.Frequency.Hertz, "Hz")}, not above resonance {before.Number} at "
                        + $"{Require.Show(before.Frequency.Hertz, "Hz")}; number them from the lowest.",
                    nameof(resonances)
                );
            }
        }
    }

    /// <summary>The resonances, by number.</summary>
    public IReadOnlyList<MeasuredResonance> Resonances => resonances;

    internal override double HighestHertz => resonances[^1].Frequency.Hertz;

    // The lowest say where the others are.
    internal override IReadOnlyList<int> Stages =>
        resonances.Length > 2 ? [1, resonances.Length] : [resonances.Length];

    internal override int NumbersOf(int stage) => stage;

    internal override double HighestHertzOf(int stage) => resonances[stage - 1].Frequency.Hertz;

    internal override Vector<double>? Residuals(
        Column column,
        int stage,
        CancellationToken cancellationToken
    ) =>
        Of(column, stage, cancellationToken) is { } found
            ? Vector<double>.Build.Dense(
                stage,
                n =>
                    1200
                    * Math.Log2(found[n].Frequency.Hertz / resonances[n].Frequency.Hertz)
                    / resonances[n].StandardDeviationCents
            )
            : null;

    internal override Matrix<double> Slopes(
        Column column,
        ColumnParameter[] parameters,
        int stage,
        CancellationToken cancellationToken
    )
    {
        var gradients = column.Gradients(
            Of(column, stage, cancellationToken)!,
            parameters,
            cancellationToken: cancellationToken
        );
        return Matrix<double>.Build.Dense(
            stage,
            parameters.Length,
            (n, parameter) => gradients[n].CentsPerUnit(parameter) / resonances[n].StandardDeviationCents
        );
    }

    private Resonance[]? Of(Column column, int stage, CancellationToken cancellationToken)
    {
        var all = column.FirstResonances(resonances[stage - 1].Number, cancellationToken: cancellationToken);
        return all.Count < resonances[stage - 1].Number
            ? null
            : [.. resonances.Take(stage).Select(resonance => all[resonance.Number - 1])];
    }

    /// <summary>Number of resonances and their range, in the invariant culture.</summary>
    /// <returns>Number and range, as text.</returns>
    public override string ToString() =>
        FormattableString.Invariant(
            $"{resonances.Length} resonances, {resonances[0].Frequency.Hertz:0.##} Hz to {resonances[^1].Frequency.Hertz:0.##} Hz"
        );
}

/// <summary>One measured resonance. Immutable, equal by value.</summary>
/// <param name="Number">Its number in the column, counted from 1, the lowest.</param>
/// <param name="Frequency">The measured frequency.</param>
/// <param name="StandardDeviationCents">The standard deviation of the frequency, cents.</param>
public sealed record MeasuredResonance(int Number, Frequency Frequency, double StandardDeviationCents)
{
    /// <summary>A resonance whose 95 % range is known.</summary>
    /// <param name="number">Its number in the column, counted from 1, the lowest.</param>
    /// <param name="frequency">The measured frequency.</param>
    /// <param name="plusMinusCents">Half the width of the range.</param>
    /// <returns>The resonance.</returns>
    public static MeasuredResonance Within(int number, Frequency frequency, double plusMinusCents) =>
        new(number, frequency, plusMinusCents / Coverage.OfNormal);
}
