using System.Globalization;

namespace AirColumn;

/// <summary>The uncertainty of computed resonances, given tolerances.</summary>
public static class Uncertainty
{
    // Of the range: less is not worth a word.
    private const double Negligible = 0.05;

    // Of its frequency: nearer ones are the same, found another way.
    private const double SameResonance = 1e-5;

    // Cents: nobody hears less, and rounding is not far below.
    private const double Inaudible = 1e-3;

    /// <summary>Computes for each resonance its standard deviation, its 95 % range and the contribution of each tolerance.</summary>
    /// <returns>One budget for each resonance, in their order.</returns>
    /// <remarks>
    /// The budget is of first order in the tolerances, from the exact gradients (source: jcgm100, 5.1). The column is also computed at both
    /// ends of each tolerance. This shows whether first order is enough; if it is not, <see cref="ResonanceBudget.Remark"/> states what it
    /// leaves out. The resonances of a column with radial modes are taken to move as those of its one-dimensional waves do; the difference is
    /// a few hundredths of the movement.
    /// </remarks>
    /// <param name="column">The column.</param>
    /// <param name="resonances">Resonances of that column.</param>
    /// <param name="tolerances">At least one tolerance; no parameter twice.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="ArgumentException">
    /// There is no tolerance, a parameter has two, the column does not have it, or a resonance is not one of this column.
    /// </exception>
    public static IReadOnlyList<ResonanceBudget> Budgets(
        this Column column,
        IReadOnlyList<Resonance> resonances,
        IReadOnlyList<Tolerance> tolerances,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(resonances);
        ArgumentNullException.ThrowIfNull(tolerances);
        var (moving, counterparts) = Moving(column, resonances, cancellationToken);
        var budgets = FirstOrder(moving, counterparts, resonances, tolerances, cancellationToken);
        var numbers = Numbers(moving, counterparts, cancellationToken);
        var count = numbers.DefaultIfEmpty(-1).Max() + 1;
        var ends = new List<(ResonanceList Low, ResonanceList High)?>();
        foreach (var tolerance in tolerances)
        {
            ends.Add(Ends(moving, tolerance, count, cancellationToken));
            progress?.Report((double)ends.Count / tolerances.Count);
        }

        return
        [
            .. budgets.Select(
                (budget, n) =>
                    budget with
                    {
                        Remark = Remark(budget, counterparts[n], numbers[n], tolerances, ends),
                    }
            ),
        ];
    }

    /// <summary>Draws columns at random: each parameter with a tolerance takes a value from its distribution, independently of the others.</summary>
    /// <remarks>
    /// Use random columns where first order is not enough, such as for a distribution that is not symmetric. The same seed gives the same
    /// columns. Give the columns to <see cref="Batch"/>, which computes them on all cores.
    /// </remarks>
    /// <param name="column">The column; it is not changed.</param>
    /// <param name="tolerances">At least one tolerance; no parameter twice.</param>
    /// <param name="count">The number of columns: 1 to 10 000 000.</param>
    /// <param name="seed">The seed of the random numbers. Default: 1.</param>
    /// <returns>The columns, each made when it is asked for.</returns>
    /// <exception cref="ArgumentException">
    /// There is no tolerance, a parameter has two, or the column does not have it. While the columns are read: a drawn value is one that no
    /// column can
    /// have, such as a negative length.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">The count is out of range.</exception>
    public static IEnumerable<Column> RandomColumns(
        this Column column,
        IReadOnlyList<Tolerance> tolerances,
        int count,
        int seed = 1
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        RequireEachOnce(tolerances);
        Require.InRange(count, 1, 10_000_000, "");
        var values = tolerances.Select(tolerance => tolerance.Parameter.Of(column)).ToArray();
        return Drawn();

        IEnumerable<Column> Drawn()
        {
            var random = new Random(seed);
            for (var i = 0; i < count; i++)
            {
                yield return ColumnParameter.WithAll(
                    column,
                    [
                        .. tolerances.Select(
                            (tolerance, n) => (tolerance.Parameter, values[n] + tolerance.Draw(random))
                        ),
                    ]
                );
            }
        }
    }

    private static void RequireEachOnce(IReadOnlyList<Tolerance> tolerances)
    {
        ArgumentNullException.ThrowIfNull(tolerances);
        var parameters = tolerances.DistinctBy(tolerance => tolerance.Parameter).Count();
        if (tolerances.Count == 0 || parameters != tolerances.Count)
        {
            throw new ArgumentException(
                $"There are {tolerances.Count} tolerances of {parameters} parameters; give at least one, and at most one for each parameter.",
                nameof(tolerances)
            );
        }
    }

    // What tells how the resonances move: the column itself, or for one of several modes its one-dimensional waves, and which of their resonances
    // those are. The column again where they do not show as many.
    private static (Column Column, IReadOnlyList<Resonance> Resonances) Moving(
        Column column,
        IReadOnlyList<Resonance> resonances,
        CancellationToken cancellationToken
    )
    {
        if (column.Wavefronts != Wavefronts.Multimodal || resonances.Count == 0)
        {
            return (column.Decided(cancellationToken), resonances);
        }

        var numbers = Numbers(column, resonances, cancellationToken);
        var plain = column.With(
            column.Parts with
            {
                Options = column.Options with { Wavefronts = Wavefronts.Curved, Modes = null },
            }
        );
        var found = plain.FirstResonances(numbers.Max() + 1, cancellationToken);
        return found.Count > numbers.Max()
            ? (plain, [.. numbers.Select(n => found[n])])
            : (column.Decided(cancellationToken), resonances);
    }

    /// <summary>The same without the test of linearity.</summary>
    internal static IReadOnlyList<ResonanceBudget> FirstOrder(
        Column column,
        IReadOnlyList<Resonance> resonances,
        IReadOnlyList<Tolerance> tolerances,
        CancellationToken cancellationToken
    )
    {
        var (moving, counterparts) = Moving(column, resonances, cancellationToken);
        return FirstOrder(moving, counterparts, resonances, tolerances, cancellationToken);
    }

    private static IReadOnlyList<ResonanceBudget> FirstOrder(
        Column moving,
        IReadOnlyList<Resonance> counterparts,
        IReadOnlyList<Resonance> resonances,
        IReadOnlyList<Tolerance> tolerances,
        CancellationToken cancellationToken
    )
    {
        RequireEachOnce(tolerances);
        var gradients = moving.Gradients(
            counterparts,
            [.. tolerances.Select(t => t.Parameter)],
            cancellationToken: cancellationToken
        );
        return [.. gradients.Select((gradient, n) => Budget(gradient, resonances[n], tolerances))];
    }

    // Which of the column's own resonances these are, from 0.
    private static List<int> Numbers(
        Column column,
        IReadOnlyList<Resonance> resonances,
        CancellationToken cancellationToken
    )
    {
        if (resonances.Count == 0)
        {
            return [];
        }

        // Damping may put a resonance far below its mode, so that a search to its own frequency ends before the mode: then further.
        var highest = resonances.Max(resonance => resonance.Frequency.Hertz);
        var below = Math.Min(highest * (1 + 1e-6), column.HighestHertz);
        var all = column.Resonances(UnitsNet.Frequency.FromHertz(below), cancellationToken);
        while (
            below < column.HighestHertz && (all.Count == 0 || all[^1].Frequency.Hertz < highest * (1 - 1e-6))
        )
        {
            below = Math.Min(below * 1.5, column.HighestHertz);
            all = column.Resonances(UnitsNet.Frequency.FromHertz(below), cancellationToken);
        }

        return
        [
            .. resonances.Select(resonance =>
            {
                var f = resonance.Frequency.Hertz;
                var n =
                    all.Count == 0
                        ? -1
                        : Enumerable.Range(0, all.Count).MinBy(n => Math.Abs(all[n].Frequency.Hertz - f));
                return n >= 0 && Math.Abs(all[n].Frequency.Hertz - f) < SameResonance * f
                    ? n
                    : throw new ArgumentException(
                        $"The resonance at {Require.Show(f, "Hz")} is not one of this column; find its resonances first.",
                        nameof(resonances)
                    );
            }),
        ];
    }

    private static ResonanceBudget Budget(
        ResonanceGradient gradient,
        Resonance resonance,
        IReadOnlyList<Tolerance> tolerances
    )
    {
        var each = tolerances
            .Select((t, i) => Math.Abs(gradient.CentsPerUnit(i)) * t.StandardDeviation)
            .ToList();
        var variance = each.Sum(s => s * s);
        var normal = Math.Sqrt(each.Where((_, i) => tolerances[i].IsNormal).Sum(s => s * s));
        var sigma = Math.Sqrt(variance);
        return new ResonanceBudget
        {
            Resonance = resonance,
            StandardDeviationCents = sigma,
            PlusMinusCents =
                sigma * Coverage.Factor([.. each.Where((_, i) => !tolerances[i].IsNormal)], normal),
            Contributions =
            [
                .. tolerances
                    .Select(
                        (t, i) =>
                            new Contribution(
                                t,
                                gradient.CentsPerUnit(i),
                                each[i],
                                variance > 0 ? each[i] * each[i] / variance : 0
                            )
                    )
                    .OrderByDescending(c => c.StandardDeviationCents),
            ],
            Remark = null,
        };
    }

    // The resonances at both ends of a tolerance; null where there is no such column, or not as many of them.
    private static (ResonanceList Low, ResonanceList High)? Ends(
        Column column,
        Tolerance tolerance,
        int count,
        CancellationToken cancellationToken
    )
    {
        var value = tolerance.Parameter.Of(column);
        var reach = Math.Sqrt(3) * tolerance.StandardDeviation;
        try
        {
            var low = tolerance
                .Parameter.With(column, value - reach)
                .FirstResonances(count, cancellationToken);
            var high = tolerance
                .Parameter.With(column, value + reach)
                .FirstResonances(count, cancellationToken);
            return low.Count == count && high.Count == count ? (low, high) : null;
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static string? Remark(
        ResonanceBudget budget,
        Resonance resonance,
        int n,
        IReadOnlyList<Tolerance> tolerances,
        List<(ResonanceList Low, ResonanceList High)?> ends
    )
    {
        var (shift, extra, sigma) = (0.0, 0.0, budget.StandardDeviationCents);
        foreach (var contribution in budget.Contributions)
        {
            var i = tolerances.ToList().IndexOf(contribution.Tolerance);
            if (ends[i] is not var (low, high))
            {
                return $"At an end of the tolerance of the {tolerances[i].Parameter} the column or the resonance does not exist, so the budget "
                    + "holds for smaller changes only.";
            }

            // To second order cents = a·d + b·d², d in standard deviations, 1.7 of them away.
            var here = resonance.Frequency;
            var (minus, plus) = (
                Cents.Between(here, low[n].Frequency),
                Cents.Between(here, high[n].Frequency)
            );
            var (a, b) = ((plus - minus) / (2 * Math.Sqrt(3)), (plus + minus) / 6);
            shift += b;
            // The variance of d² is 2 if d is normal and 0.8 if it is uniform.
            extra +=
                a * a
                - contribution.StandardDeviationCents * contribution.StandardDeviationCents
                + b * b * (tolerances[i].IsNormal ? 2 : 0.8);
        }

        var full = Math.Sqrt(Math.Max(0, sigma * sigma + extra));
        return
            Math.Abs(full - sigma) <= Math.Max(Inaudible, Negligible * sigma)
            && Math.Abs(shift) <= Math.Max(Inaudible, Negligible * budget.PlusMinusCents)
            ? null
            : string.Create(
                CultureInfo.InvariantCulture,
                $"The resonance does not follow these tolerances in proportion: to second order its standard deviation is {full:0.#} cents "
                    + $"instead of {sigma:0.#}, and its mean lies {Wording.CentsOf(shift)} off. Narrow the tolerances, or draw columns at random."
            );
    }
}
