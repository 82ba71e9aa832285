using System.Numerics;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics;
using AirColumn.Acoustics.Kernels;
using AirColumn.Acoustics.Sensitivity;

namespace AirColumn.Resonances;

/// <summary>How resonances move with dimensions and air.</summary>
public static class ResonanceGradients
{
    private const int N = ComplexLanes.Count;

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
    /// <see cref="Column.ImpedanceGradient"/> are smooth around it, and a polynomial through eight frequencies gives their slopes.
    /// </remarks>
    /// <param name="column">The column.</param>
    /// <param name="resonances">Resonances of that column.</param>
    /// <param name="parameters">The parameters; if left out all of <see cref="ColumnParameter.AllOf"/>.</param>
    /// <returns>For each resonance its gradient.</returns>
    /// <exception cref="ArgumentException">
    /// The column does not have one of the parameters, or a resonance is not one of this column.
    /// </exception>
    public static IReadOnlyList<ResonanceGradient> Gradients(
        this Column column,
        IReadOnlyList<Resonance> resonances,
        IReadOnlyList<ColumnParameter>? parameters = null
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(resonances);
        ColumnParameter[] all = [.. parameters ?? ColumnParameter.AllOf(column)];
        var sensitivity = StateSensitivity.Of(column, all);
        return [.. resonances.Select(resonance => Gradient(column, resonance, all, sensitivity))];
    }

    private static ResonanceGradient Gradient(
        Column column,
        Resonance resonance,
        ColumnParameter[] parameters,
        StateSensitivity sensitivity
    )
    {
        ArgumentNullException.ThrowIfNull(resonance);
        var centre = resonance.Frequency.Hertz;
        var spacing = 0.5 / column.Waves.Delay;
        var width = Math.Min(Reach * Math.Min(spacing, centre), 0.999 * (column.HighestHertz - centre));
        // Not across a corner of a model, such as that where the mass of a step is held.
        foreach (var corner in column.Waves.Corners)
        {
            width = Math.Min(width, Math.Max(0.95 * Math.Abs(corner - centre), LeastReach * centre));
        }

        if (!(width > 0))
        {
            throw NotOfThisColumn(resonance);
        }

        var q = new ComplexLanes[parameters.Length];
        Span<double> omega = stackalloc double[N];
        for (var i = 0; i < N; i++)
        {
            omega[i] = 2 * Math.PI * (centre + width * Nodes[i]);
        }

        var (pressure, flow, _) = sensitivity.At(new FrequencyLanes(Vector512.Create<double>(omega)), q);
        var (p, p1, p2) = (At(pressure, 0), At(pressure, 1), At(pressure, 2));
        var (u, u1, u2) = (At(flow, 0), At(flow, 1), At(flow, 2));
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
            var (value, rise) = (At(q[n], 0), At(q[n], 1));
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

    private static Complex At(in ComplexLanes values, int order)
    {
        var weights = Vector512.Create(AtZero[order]);
        return new Complex(Vector512.Sum(weights * values.Re), Vector512.Sum(weights * values.Im));
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
