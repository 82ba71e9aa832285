using System.Numerics;
using AirColumn.Acoustics;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Sensitivity;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Resonances;

/// <summary>How resonances move with dimensions and air.</summary>
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

    // For pressure and flow, whose curvature is wanted: close enough for a polynomial of seventh degree, far enough for its curvature not to
    // be rounding.
    private static readonly NodesAround Wide = new(8, 0.03);

    // For q, of which the slope is enough.
    private static readonly NodesAround Close = new(4, 0.006);

    /// <summary>The gradients of resonances of a column, each from one pass through it.</summary>
    /// <remarks>
    /// A resonance is an extremum of |Z|, so its derivative is −∂²ln|Z|/∂f∂θ over ∂²ln|Z|/∂f². Pressure, flow and the q of
    /// <see cref="ImpedanceGradients.ImpedanceGradient"/> are smooth around it, and polynomials through a few frequencies give their slopes.
    /// </remarks>
    /// <param name="column">The column.</param>
    /// <param name="resonances">Resonances of that column.</param>
    /// <param name="parameters">The parameters; if left out all of <see cref="ColumnParameter.AllOf"/>.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends it early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>For each resonance its gradient.</returns>
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
            var end = EndOfGroup(around, from, out var band, column.Options.Tolerance);
            var waves = wave.Prepare(band);
            var sensitivities = sensitivity.Prepare(
                band with
                {
                    Tolerance = Math.Max(band.Tolerance, Enough),
                },
                cancellationToken
            );
            for (var i = from; i < end; i++)
            {
                gradients[i] = Gradient(column, around[i], all, waves, sensitivities, cancellationToken);
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
        var width = Math.Min(Wide.Reach * spacing, 0.999 * (column.HighestHertz - centre));
        // Not across a corner of a model, such as that where the mass of a step is held.
        foreach (var corner in wave.Corners)
        {
            width = Math.Min(width, Math.Max(0.95 * Math.Abs(corner - centre), LeastReach * centre));
        }

        return width > 0
            ? new Around(resonance, centre, width, Math.Min(width, Close.Reach * spacing))
            : throw NotOfThisColumn(resonance);
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
        WavePath waves,
        SensitivityPath sensitivities,
        CancellationToken cancellationToken
    )
    {
        Span<Complex> pressure = stackalloc Complex[Wide.Count];
        Span<Complex> flow = stackalloc Complex[Wide.Count];
        // [row·nodes + node]: p, U and each q.
        var rows = new Complex[(parameters.Length + 2) * Close.Count];
        if (
            !TryWaves(waves, around, pressure, flow, cancellationToken)
            || !TryRows(sensitivities, around, rows, cancellationToken)
        )
        {
            throw NotOfThisColumn(around.Resonance);
        }

        var (centre, width, close) = (around.Centre, around.Wide, around.Close);
        var (p, p1, p2) = Derivatives(pressure, width);
        var (u, u1, u2) = Derivatives(flow, width);
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

        // The one path's pressure and flow are the other's times a factor that changes with frequency, and q goes with its square: each with its
        // own.
        var (closeP, closeU) = (Row(0, 0), Row(1, 0));
        var turn = Row(0, 1) / closeP + Row(1, 1) / closeU;
        var (hertz, magnitude) = (new double[parameters.Length], new double[parameters.Length]);
        for (var n = 0; n < hertz.Length; n++)
        {
            var value = Row(n + 2, 0);
            hertz[n] = isUndamped
                ? (isOpen ? -value / (closeU * Row(0, 1)) : value / (closeP * Row(1, 1))).Real
                : -((Row(n + 2, 1) - value * turn) / (closeP * closeU)).Real / bend;
            // At the extremum its own shift does not count.
            magnitude[n] = isUndamped ? double.NaN : (value / (closeP * closeU)).Real;
        }

        return new ResonanceGradient(around.Resonance, parameters, hertz, magnitude);

        Complex Row(int row, int order) =>
            Close.Derivative(order, rows.AsSpan(row * Close.Count, Close.Count), close);
    }

    private static (Complex Value, Complex Slope, Complex Bend) Derivatives(
        ReadOnlySpan<Complex> values,
        double width
    ) =>
        (
            Wide.Derivative(0, values, width),
            Wide.Derivative(1, values, width),
            Wide.Derivative(2, values, width)
        );

    private static ArgumentException NotOfThisColumn(Resonance resonance) =>
        new(
            $"The resonance at {Require.Show(resonance.Frequency.Hertz, "Hz")} is not one of this column; find its resonances first.",
            nameof(resonance)
        );

    // False where the scale of the state differs from node to node.
    private static bool TryWaves(
        WavePath path,
        in Around around,
        Span<Complex> pressure,
        Span<Complex> flow,
        CancellationToken cancellationToken
    )
    {
        Span<double> hertz = stackalloc double[Wide.Count];
        Wide.Put(around.Centre, around.Wide, hertz);
        var lanes = RealVectors.Count;
        Span<FrequencyVector> frequencies = stackalloc FrequencyVector[(hertz.Length + lanes - 1) / lanes];
        Span<WaveState> states = stackalloc WaveState[frequencies.Length];
        for (var v = 0; v < frequencies.Length; v++)
        {
            frequencies[v] = FrequencyVector.OfHertz(hertz[(v * lanes)..]);
        }

        path.Carry(frequencies, states, cancellationToken);
        for (var i = 0; i < hertz.Length; i++)
        {
            var state = states[i / lanes];
            if (state.Log != RealVector.Zero)
            {
                return false;
            }

            (pressure[i], flow[i]) = (state.P.At(i % lanes), state.U.At(i % lanes));
        }

        return true;
    }

    private static bool TryRows(
        SensitivityPath path,
        in Around around,
        Complex[] rows,
        CancellationToken cancellationToken
    )
    {
        var nodes = Close.Count;
        var q = new ComplexVector[rows.Length / nodes - 2];
        Span<double> hertz = stackalloc double[nodes];
        Close.Put(around.Centre, around.Close, hertz);
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

    // A resonance, and half the spans around it, Hz.
    private readonly record struct Around(Resonance Resonance, double Centre, double Wide, double Close)
    {
        public double Low => Centre - Wide;
        public double High => Centre + Wide;
    }
}
