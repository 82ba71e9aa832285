using AirColumn.Plots.Drawing;

namespace AirColumn.Plots;

/// <summary>Pictures of the distances of resonances from notes, in cents, with their uncertainty if known.</summary>
public static class TuningPicture
{
    /// <summary>For each resonance the nearest note and the distance from it.</summary>
    /// <param name="resonances">The resonances, 1 Hz to 100 kHz; as many are shown as fit.</param>
    /// <param name="tuning">The tuning that names notes. Default: A4 = 440 Hz, equal temperament.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A resonance is not from 1 Hz to 100 kHz, where notes have names.</exception>
    public static Picture Of(IReadOnlyList<Resonance> resonances, Tuning? tuning = null)
    {
        ArgumentNullException.ThrowIfNull(resonances);
        tuning ??= Tuning.Concert;
        return Of([.. resonances.Select((r, i) => new TuningRow(i + 1, r, r.Nearest(tuning), null))], tuning);
    }

    /// <summary>For each resonance the nearest note and the distance from it, with the 95 % range of the resonance as a bar.</summary>
    /// <param name="budgets">The budgets of resonances of one column, from <see cref="Uncertainty.Budgets"/>.</param>
    /// <param name="tuning">The tuning that names notes. Default: A4 = 440 Hz, equal temperament.</param>
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
