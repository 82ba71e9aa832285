using AirColumn.Acoustics;
using AirColumn.Design;
using AirColumn.Pitches;
using AirColumn.Plots.Drawing;
using AirColumn.Resonances;

namespace AirColumn.Plots;

/// <summary>Pictures of how far resonances are from notes, in cents; with their uncertainty where it is known.</summary>
public static class TuningPicture
{
    /// <summary>For each resonance the nearest note and the distance from it.</summary>
    /// <param name="resonances">The resonances, 1 Hz to 100 kHz; as many as there is room for are shown.</param>
    /// <param name="tuning">The tuning that names notes; A4 = 440 Hz in equal temperament if left out.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A resonance is not from 1 Hz to 100 kHz, where notes have names.</exception>
    public static Picture Of(IReadOnlyList<Resonance> resonances, Tuning? tuning = null)
    {
        ArgumentNullException.ThrowIfNull(resonances);
        tuning ??= Tuning.Concert;
        return Of([.. resonances.Select((r, i) => new TuningRow(i + 1, r, r.Nearest(tuning), null))], tuning);
    }

    /// <summary>The same with the 95 % range of each resonance as a bar.</summary>
    /// <param name="budgets">What <see cref="Uncertainty.Budgets"/> found for resonances of one column.</param>
    /// <param name="tuning">The tuning that names notes; A4 = 440 Hz in equal temperament if left out.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A resonance is not from 1 Hz to 100 kHz, where notes have names.</exception>
    public static Picture WithUncertainty(IReadOnlyList<ResonanceBudget> budgets, Tuning? tuning = null)
    {
        ArgumentNullException.ThrowIfNull(budgets);
        tuning ??= Tuning.Concert;
        return Of(
            [
                .. budgets.Select(
                    (b, i) => new TuningRow(i + 1, b.Resonance, b.Resonance.Nearest(tuning), b.PlusMinusCents)
                ),
            ],
            tuning
        );
    }

    private static Picture Of(IReadOnlyList<TuningRow> rows, Tuning tuning) =>
        new(new TuningRows(rows, tuning).Scene());
}
