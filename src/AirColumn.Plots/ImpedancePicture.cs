using System.Runtime.CompilerServices;
using AirColumn.Plots.Drawing;
using UnitsNet;

namespace AirColumn.Plots;

/// <summary>
/// Pictures of an input impedance: magnitude on a logarithmic scale and phase against frequency, resonances with their distance from a note in
/// cents, and lines at the notes.
/// </summary>
public static class ImpedancePicture
{
    private const int Points = 1200;
    private const int UsualResonances = 8;

    /// <summary>The impedance of a column with its resonances.</summary>
    /// <param name="column">The column.</param>
    /// <param name="view">The range and notes to show. Default: the first eight resonances with the nearest notes.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The view ends above <see cref="Column.HighestFrequency"/>, or begins where it ends or later.
    /// </exception>
    public static Picture Of(
        Column column,
        ImpedanceView? view = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        view ??= new ImpedanceView();
        var highest = column.HighestFrequency.Hertz * (1 - 1e-9);
        if (view.To is { } asked)
        {
            Require.InRange(asked.Hertz, 0, column.HighestFrequency.Hertz, "Hz", nameof(view));
        }

        var resonances = view.To is { } limit
            ? column.Resonances(Frequency.FromHertz(Math.Min(limit.Hertz, highest)), cancellationToken)
            : column.FirstResonances(UsualResonances, cancellationToken);
        var to =
            view.To?.Hertz
            ?? Math.Min(highest, resonances.Count > 0 ? 1.1 * resonances[^1].Frequency.Hertz : highest);
        var from =
            view.From?.Hertz
            ?? Math.Min(resonances.Count > 0 ? 0.4 * resonances[0].Frequency.Hertz : 0.01 * to, 0.5 * to);
        RequireOrder(from, to, nameof(view));
        var curve = column.Impedance(
            FrequencyGrid.FromHertz(Places(from, Math.Min(to, highest), resonances)),
            cancellationToken
        );
        return OfCurve(curve, resonances, view);
    }

    /// <summary>A curve of impedance, with resonances if there are some.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="resonances">The resonances to mark; those outside the view are not shown.</param>
    /// <param name="view">The range and notes to show. Default: the whole curve with the notes nearest to the resonances.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The view leaves less than two frequencies of the curve.</exception>
    public static Picture OfCurve(
        ImpedanceCurve curve,
        IReadOnlyList<Resonance>? resonances = null,
        ImpedanceView? view = null
    )
    {
        ArgumentNullException.ThrowIfNull(curve);
        view ??= new ImpedanceView();
        var shown = new ImpedanceData(curve, resonances ?? [], view);
        return new Picture(shown.Scene());
    }

    /// <summary>
    /// Several curves over the same axes, each as a level over the characteristic impedance at its blown end: one tube in different airs, or a tube
    /// before
    /// and after a change.
    /// </summary>
    /// <param name="curves">One to four curves, each with a name that is not empty.</param>
    /// <returns>The picture.</returns>
    /// <exception cref="ArgumentException">
    /// There are no curves or more than four, or a curve has no name or fewer than two frequencies.
    /// </exception>
    public static Picture Compare(params IReadOnlyList<(string Name, ImpedanceCurve Curve)> curves)
    {
        ArgumentNullException.ThrowIfNull(curves);
        if (curves.Count == 0 || curves.Count > CurveComparison.Most)
        {
            throw new ArgumentException(
                $"There are {curves.Count} curves; allowed is 1 to {CurveComparison.Most}.",
                nameof(curves)
            );
        }

        foreach (var (name, curve) in curves)
        {
            if (string.IsNullOrWhiteSpace(name) || curve is not { Count: >= 2 })
            {
                throw new ArgumentException(
                    $"The curve '{name}' needs a name and at least 2 frequencies.",
                    nameof(curves)
                );
            }
        }

        return new Picture(new CurveComparison(curves).Scene());
    }

    internal static void RequireOrder(
        double from,
        double to,
        [CallerArgumentExpression(nameof(from))] string parameter = ""
    )
    {
        if (!(from < to))
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                from,
                $"The view is from {Require.Show(from, "Hz")} to {Require.Show(to, "Hz")}; it has to end above where it begins."
            );
        }
    }

    // Evenly, and closer around each resonance, so that a sharp one is not missed.
    private static double[] Places(double from, double to, IReadOnlyList<Resonance> resonances)
    {
        var places = new SortedSet<double>();
        for (var i = 0; i < Points; i++)
        {
            places.Add(from + (to - from) * i / (Points - 1));
        }

        foreach (var resonance in resonances)
        {
            var hertz = resonance.Frequency.Hertz;
            var width = hertz / Math.Clamp(2 * resonance.QualityFactor, 1, 1e6);
            foreach (var n in new[] { -6, -3, -1.5, -0.75, -0.3, 0, 0.3, 0.75, 1.5, 3, 6 })
            {
                var at = hertz + n * width;
                if (at > from && at < to)
                {
                    places.Add(at);
                }
            }
        }

        return [.. places];
    }
}
