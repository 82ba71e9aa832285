using System.Numerics;
using AirColumn.Acoustics;
using AirColumn.Acoustics.Sensitivity;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Resonances;

/// <summary>How resonances move with dimensions and air.</summary>
public static class ResonanceGradients
{
    private const int N = 8; // nodes

    // Half the span of the nodes, over the spacing of modes: small enough for a polynomial of seventh degree in q, large enough for its
    // slope not to be rounding.
    private const double Reach = 0.03;

    // Of the frequency: a sixth of a cent. Resonances are far better; others are not as near.
    private const double NearEnough = 1e-4;

    // Of the frequency: beside a corner; nearer to it the derivative is that of both sides mixed.
    private const double LeastReach = 1e-5;

    // Of the frequency: where flow or pressure vanishes closer by, as without losses, the resonance is that zero.
    private const double Undamped = 1e-7;

    private static readonly double[] Nodes =
    [
        .. Enumerable.Range(0, N).Select(i => Math.Cos(Math.PI * (i + 0.5) / N)),
    ];

    // Value, slope and curvature at 0 of the polynomial through values at the nodes.
    private static readonly double[][] AtZero = Functionals();

    /// <summary>The gradients of resonances of a column, each from one pass through it.</summary>
    /// <remarks>
    /// A resonance is an extremum of |Z|, so its derivative is −∂²ln|Z|/∂f∂θ over ∂²ln|Z|/∂f². Pressure, flow and the q of
    /// <see cref="ImpedanceGradients.ImpedanceGradient"/> are smooth around it, and a polynomial through eight frequencies gives their slopes.
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
        var gradients = new ResonanceGradient[resonances.Count];
        for (var i = 0; i < gradients.Length; i++)
        {
            gradients[i] = Gradient(column, resonances[i], all, sensitivity, cancellationToken);
            progress?.Report((i + 1.0) / gradients.Length);
        }

        return gradients;
    }

    private static ResonanceGradient Gradient(
        Column column,
        Resonance resonance,
        ColumnParameter[] parameters,
        StateSensitivity sensitivity,
        CancellationToken cancellationToken
    )
    {
        ArgumentNullException.ThrowIfNull(resonance);
        var centre = resonance.Frequency.Hertz;
        var wave = column.Answers(cancellationToken).Wave;
        var spacing = 0.5 / wave.Delay;
        var width = Math.Min(Reach * Math.Min(spacing, centre), 0.999 * (column.HighestHertz - centre));
        // Not across a corner of a model, such as that where the mass of a step is held.
        foreach (var corner in wave.Corners)
        {
            width = Math.Min(width, Math.Max(0.95 * Math.Abs(corner - centre), LeastReach * centre));
        }

        if (!(width > 0))
        {
            throw NotOfThisColumn(resonance);
        }

        // [row·N + node]: p, U and each q.
        var rows = new Complex[(parameters.Length + 2) * N];
        if (!TryRows(sensitivity, centre, width, rows, cancellationToken))
        {
            throw NotOfThisColumn(resonance);
        }

        var (p, p1, p2) = (At(rows, 0, 0), At(rows, 0, 1), At(rows, 0, 2));
        var (u, u1, u2) = (At(rows, 1, 0), At(rows, 1, 1), At(rows, 1, 2));
        var isOpen = column.Options.BlownEnd.IsOpen;
        var (zero, zeroSlope) = isOpen ? (p, p1) : (u, u1);
        var isUndamped = Complex.Abs(zero) * width < Undamped * centre * Complex.Abs(zeroSlope);
        // d/df and d²/df² of ln|Z|, per width.
        var slope = (p1 / p - u1 / u).Real;
        var bend = (p2 / p - p1 / p * (p1 / p) - u2 / u + u1 / u * (u1 / u)).Real;
        if (!isUndamped && !(Math.Abs(slope / bend) * width < NearEnough * centre && (bend > 0) == isOpen))
        {
            throw NotOfThisColumn(resonance);
        }

        var (hertz, magnitude) = (new double[parameters.Length], new double[parameters.Length]);
        for (var n = 0; n < hertz.Length; n++)
        {
            var (value, rise) = (At(rows, n + 2, 0), At(rows, n + 2, 1));
            var moved = isUndamped
                ? (isOpen ? -value / (u * p1) : value / (p * u1)).Real
                : -((rise - value * (p1 / p + u1 / u)) / (p * u)).Real / bend;
            hertz[n] = width * moved;
            // At the extremum its own shift does not count.
            magnitude[n] = isUndamped ? double.NaN : (value / (p * u)).Real;
        }

        return new ResonanceGradient(resonance, parameters, hertz, magnitude);
    }

    private static ArgumentException NotOfThisColumn(Resonance resonance) =>
        new(
            $"The resonance at {Require.Show(resonance.Frequency.Hertz, "Hz")} is not one of this column; find its resonances first.",
            nameof(resonance)
        );

    // False where the scale of the state differs from node to node.
    private static bool TryRows(
        StateSensitivity sensitivity,
        double centre,
        double width,
        Complex[] rows,
        CancellationToken cancellationToken
    )
    {
        var q = new ComplexVector[rows.Length / N - 2];
        Span<double> hertz = stackalloc double[RealVectors.Count];
        for (var from = 0; from < N; from += hertz.Length)
        {
            for (var lane = 0; lane < hertz.Length; lane++)
            {
                hertz[lane] = centre + width * Nodes[from + lane];
            }

            var state = sensitivity.At(FrequencyVector.OfHertz(hertz), q, cancellationToken);
            if (state.Log != RealVector.Zero)
            {
                return false;
            }

            for (var lane = 0; lane < hertz.Length; lane++)
            {
                (rows[from + lane], rows[N + from + lane]) = (state.P.At(lane), state.U.At(lane));
                for (var n = 0; n < q.Length; n++)
                {
                    rows[(n + 2) * N + from + lane] = q[n].At(lane);
                }
            }
        }

        return true;
    }

    private static Complex At(Complex[] rows, int row, int order)
    {
        var sum = Complex.Zero;
        for (var i = 0; i < N; i++)
        {
            sum += AtZero[order][i] * rows[row * N + i];
        }

        return sum;
    }

    private static double[][] Functionals()
    {
        double[][] functionals = [new double[N], new double[N], new double[N]];
        for (var i = 0; i < N; i++)
        {
            // The Lagrange polynomial of node i in powers of t, as far as the square.
            var (value, slope, bend, scale) = (1.0, 0.0, 0.0, 1.0);
            for (var j = 0; j < N; j++)
            {
                if (j != i)
                {
                    (value, slope, bend) = (
                        -Nodes[j] * value,
                        value - Nodes[j] * slope,
                        slope - Nodes[j] * bend
                    );
                    scale *= Nodes[i] - Nodes[j];
                }
            }

            (functionals[0][i], functionals[1][i], functionals[2][i]) = (
                value / scale,
                slope / scale,
                2 * bend / scale
            );
        }

        return functionals;
    }
}
