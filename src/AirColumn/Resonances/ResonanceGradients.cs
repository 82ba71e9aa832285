using System.Numerics;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Sensitivity;
using AirColumn.Acoustics.Vectors;

namespace AirColumn;

/// <summary>Gradients of resonances: how each resonance changes with the dimensions and with the air.</summary>
public static class ResonanceGradients
{
    // Of the frequency: a sixth of a cent. Resonances are far better; others are not as near.
    private const double NearEnough = 1e-4;

    // Of the frequency: beside a corner; nearer to it the derivative is that of both sides mixed.
    private const double LeastReach = 1e-5;

    // Of the frequency: where flow or pressure vanishes closer by, as without losses, the resonance is that zero.
    private const double Undamped = 1e-7;

    // Of frequencies that are prepared for together: steps short enough for the highest are many for the lowest.
    private const double MostRatio = 16;

    // Relative, of q: what a derivative is good to.
    private const double Enough = 1e-8;

    // Close enough for a polynomial of seventh degree, far enough for its curvature not to be rounding.
    private static readonly NodesAround Nodes = new(8, 0.03);

    /// <summary>The gradients of resonances of a column, each from one pass through it.</summary>
    /// <remarks>
    /// A resonance is an extremum of |Z|, so the derivative of its frequency is −∂²ln|Z|/∂f∂θ over ∂²ln|Z|/∂f². Around the extremum, three
    /// functions of frequency are smooth: pressure, flow and q = U·δp − p·δU, where δZ = q/U². A polynomial through their values at eight
    /// frequencies gives their slopes.
    /// </remarks>
    /// <param name="column">The column.</param>
    /// <param name="resonances">Resonances of that column.</param>
    /// <param name="parameters">The parameters. Default: all of <see cref="ColumnParameter.AllOf"/>.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The gradient of each resonance, in their order.</returns>
    /// <exception cref="ArgumentException">
    /// The column does not have one of the parameters, or a resonance is not one of this column.
    /// </exception>
    public static IReadOnlyList<ResonanceGradient> Gradients(
        this Column column,
        IReadOnlyList<Resonance> resonances,
        IReadOnlyList<ColumnParameter>? parameters = null,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(resonances);
        ColumnParameter[] all = [.. parameters ?? ColumnParameter.AllOf(column)];
        var sensitivity = StateSensitivities.Of(column, all, cancellationToken);
        var wave = column.Answers(cancellationToken).Wave;
        var around = resonances.Select(resonance => Surroundings(column, wave, resonance)).ToArray();
        var gradients = new ResonanceGradient[around.Length];
        for (var from = 0; from < around.Length; )
        {
            var end = EndOfGroup(around, from, out var band, column.Options.RelativeTolerance);
            var sensitivities = sensitivity.Prepare(
                band with
                {
                    Tolerance = Math.Max(band.Tolerance, Enough),
                },
                cancellationToken
            );
            for (var i = from; i < end; i++)
            {
                gradients[i] = Gradient(column, around[i], all, sensitivities, cancellationToken);
                progress?.Report((i + 1.0) / around.Length);
            }

            from = end;
        }

        return gradients;
    }

    private static Around Surroundings(Column column, InputWave wave, Resonance resonance)
    {
        ArgumentNullException.ThrowIfNull(resonance);
        var centre = resonance.Frequency.Hertz;
        var spacing = Math.Min(0.5 / wave.Delay, centre);
        var width = Math.Min(Nodes.Reach * spacing, 0.999 * (column.HighestHertz - centre));
        // Not across a corner of a model, such as that where the mass of a step is held.
        foreach (var corner in wave.Corners)
        {
            width = Math.Min(width, Math.Max(0.95 * Math.Abs(corner - centre), LeastReach * centre));
        }

        return width > 0 ? new Around(resonance, centre, width) : throw NotOfThisColumn(resonance);
    }

    private static int EndOfGroup(Around[] around, int from, out Band band, double tolerance)
    {
        var (low, high, end) = (around[from].Low, around[from].High, from + 1);
        while (
            end < around.Length
            && Math.Max(high, around[end].High) <= MostRatio * Math.Min(low, around[end].Low)
        )
        {
            (low, high) = (Math.Min(low, around[end].Low), Math.Max(high, around[end].High));
            end++;
        }

        band = new Band(2 * Math.PI * low, 2 * Math.PI * high, tolerance);
        return end;
    }

    private static ResonanceGradient Gradient(
        Column column,
        in Around around,
        ColumnParameter[] parameters,
        SensitivityPath sensitivities,
        CancellationToken cancellationToken
    )
    {
        // [row·nodes + node]: p, U and each q.
        var rows = new Complex[(parameters.Length + 2) * Nodes.Count];
        if (!TryRows(sensitivities, around, rows, cancellationToken))
        {
            throw NotOfThisColumn(around.Resonance);
        }

        var (centre, width) = (around.Centre, around.Width);
        var (p, p1, p2) = (Row(0, 0), Row(0, 1), Row(0, 2));
        var (u, u1, u2) = (Row(1, 0), Row(1, 1), Row(1, 2));
        var isOpen = column.Options.BlownEnd.IsOpen;
        var isUndamped = isOpen
            ? Complex.Abs(p) < Undamped * centre * Complex.Abs(p1)
            : Complex.Abs(u) < Undamped * centre * Complex.Abs(u1);
        // d/df and d²/df² of ln|Z|.
        var slope = (p1 / p - u1 / u).Real;
        var bend = (p2 / p - p1 / p * (p1 / p) - u2 / u + u1 / u * (u1 / u)).Real;
        if (!isUndamped && !(Math.Abs(slope / bend) < NearEnough * centre && (bend > 0) == isOpen))
        {
            throw NotOfThisColumn(around.Resonance);
        }

        var turn = p1 / p + u1 / u;
        var (hertz, magnitude) = (new double[parameters.Length], new double[parameters.Length]);
        for (var n = 0; n < hertz.Length; n++)
        {
            var value = Row(n + 2, 0);
            hertz[n] = isUndamped
                ? (isOpen ? -value / (u * p1) : value / (p * u1)).Real
                : -((Row(n + 2, 1) - value * turn) / (p * u)).Real / bend;
            // At the extremum its own shift does not count.
            magnitude[n] = isUndamped ? double.NaN : (value / (p * u)).Real;
        }

        return new ResonanceGradient(around.Resonance, parameters, hertz, magnitude);

        Complex Row(int row, int order) =>
            Nodes.Derivative(order, rows.AsSpan(row * Nodes.Count, Nodes.Count), width);
    }

    private static ArgumentException NotOfThisColumn(Resonance resonance) =>
        new(
            $"The resonance at {Require.Show(resonance.Frequency.Hertz, "Hz")} is not one of this column; find its resonances first.",
            nameof(resonance)
        );

    // False where the scale of the state differs from node to node.
    private static bool TryRows(
        SensitivityPath path,
        in Around around,
        Complex[] rows,
        CancellationToken cancellationToken
    )
    {
        var nodes = Nodes.Count;
        var q = new ComplexVector[rows.Length / nodes - 2];
        Span<double> hertz = stackalloc double[nodes];
        Nodes.Put(around.Centre, around.Width, hertz);
        for (var from = 0; from < nodes; from += RealVectors.Count)
        {
            var state = path.At(FrequencyVector.OfHertz(hertz[from..]), q, cancellationToken);
            if (state.Log != RealVector.Zero)
            {
                return false;
            }

            for (var i = from; i < Math.Min(nodes, from + RealVectors.Count); i++)
            {
                var lane = i - from;
                (rows[i], rows[nodes + i]) = (state.P.At(lane), state.U.At(lane));
                for (var n = 0; n < q.Length; n++)
                {
                    rows[(n + 2) * nodes + i] = q[n].At(lane);
                }
            }
        }

        return true;
    }

    // A resonance, and half the span around it, Hz.
    private readonly record struct Around(Resonance Resonance, double Centre, double Width)
    {
        public double Low => Centre - Width;
        public double High => Centre + Width;
    }
}
