using System.Numerics;
using AirColumn.Acoustics.Inside;
using AirColumn.Acoustics.Line;
using UnitsNet;

namespace AirColumn;

/// <summary>Questions about the inside of a column: standing waves, the transfer to the far end, and the balance of power.</summary>
public static class InsideColumn
{
    private const int MostPoints = 1_000_000;

    /// <summary>Pressure and flow at evenly spaced places from the blown end to the far end.</summary>
    /// <param name="column">The column.</param>
    /// <param name="frequency">0.001 Hz to <see cref="Column.HighestFrequency"/>.</param>
    /// <param name="points">The number of places, including both ends: 2 to 1 000 000.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The standing wave.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or the number of places is out of range.</exception>
    public static StandingWave StandingWaveAt(
        this Column column,
        Frequency frequency,
        int points,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        Require.InRange(points, 2, MostPoints, "");
        var length = column.Bore.LengthMetres;
        return StandingWave(
            column,
            frequency,
            [
                .. Enumerable
                    .Range(0, points)
                    .Select(i => i == points - 1 ? length : length * i / (points - 1)),
            ],
            cancellationToken
        );
    }

    /// <summary>Pressure and flow at given places.</summary>
    /// <param name="column">The column.</param>
    /// <param name="frequency">0.001 Hz to <see cref="Column.HighestFrequency"/>.</param>
    /// <param name="positions">Distances from the blown end along the axis, 0 to the length of the bore, in any order.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The standing wave.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency or a position is out of range.</exception>
    public static StandingWave StandingWaveAt(
        this Column column,
        Frequency frequency,
        IReadOnlyList<Length> positions,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(positions);
        var length = column.Bore.LengthMetres;
        // A length given in millimetres may come out a last digit beyond the end.
        var allowance = 1e-9 * length;
        return StandingWave(
            column,
            frequency,
            [
                .. positions.Select(position =>
                    Math.Clamp(
                        Require.InRange(
                            position.Meters,
                            -allowance,
                            length + allowance,
                            "m",
                            nameof(positions)
                        ),
                        0,
                        length
                    )
                ),
            ],
            cancellationToken
        );
    }

    /// <summary>The balance of the power sent into the column.</summary>
    /// <param name="column">The column.</param>
    /// <param name="frequency">0.001 Hz to <see cref="Column.HighestFrequency"/>.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The balance of power.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    public static PowerBalance PowerAt(
        this Column column,
        Frequency frequency,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        if (column.Wavefronts == Wavefronts.Multimodal)
        {
            return ModalInside.Power(column, frequency, cancellationToken);
        }

        var field = new ColumnField(column.Model, column.Omega(frequency), cancellationToken);
        var (viscous, thermal, side) = (0.0, 0.0, 0.0);
        var way = column.Model.Way;
        for (var i = 0; i < way.Length; i++)
        {
            if (way[i] is BoreSegment)
            {
                var (friction, heat) = field.WallPower(i);
                viscous += friction;
                thermal += heat;
            }
            else if (way[i] is SideColumn)
            {
                side += field.Power(field.Joint(i)) - field.Power(field.Joint(i + 1));
            }
        }

        return new PowerBalance(
            frequency,
            field.Power(field.Joint(0)),
            field.Power(field.Joint(column.Model.Way.Length)),
            viscous,
            thermal,
            side
        );
    }

    /// <summary>Pressure and flow that arrive at the far end from the blown end.</summary>
    /// <param name="column">The column.</param>
    /// <param name="frequency">0.001 Hz to <see cref="Column.HighestFrequency"/>.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>The transfer from the blown end to the far end.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is out of range.</exception>
    public static TransferFunction TransferAt(
        this Column column,
        Frequency frequency,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        if (column.Wavefronts == Wavefronts.Multimodal)
        {
            return ModalInside.Transfer(column, frequency, cancellationToken);
        }

        var field = new ColumnField(column.Model, column.Omega(frequency), cancellationToken);
        var (near, far) = (field.Joint(0), field.Joint(column.Model.Way.Length));
        var scale = Math.Exp(far.LogScale - near.LogScale);
        return new TransferFunction(
            far.Pressure / near.Pressure * scale,
            far.Flow / near.Flow * scale,
            far.Pressure / near.Flow * scale,
            (far.Pressure * Complex.Conjugate(far.Flow)).Real
                / (near.Pressure * Complex.Conjugate(near.Flow)).Real
                * scale
                * scale
        );
    }

    /// <summary>Pressure and flow that arrive at the far end, over a grid of frequencies.</summary>
    /// <param name="column">The column.</param>
    /// <param name="grid">The frequencies; 0.001 Hz to <see cref="Column.HighestFrequency"/>.</param>
    /// <param name="progress">Is told the share that is done, 0 to 1.</param>
    /// <param name="cancellationToken">Ends the computation early with an <see cref="OperationCanceledException"/>.</param>
    /// <returns>One transfer function for each frequency, in order.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is out of range.</exception>
    public static IReadOnlyList<TransferFunction> Transfer(
        this Column column,
        FrequencyGrid grid,
        IProgress<double>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(column);
        ArgumentNullException.ThrowIfNull(grid);
        var transfers = new TransferFunction[grid.Count];
        for (var i = 0; i < transfers.Length; i++)
        {
            transfers[i] = column.TransferAt(Frequency.FromHertz(grid.Hertz[i]), cancellationToken);
            progress?.Report((i + 1.0) / transfers.Length);
        }

        return transfers;
    }

    private static StandingWave StandingWave(
        Column column,
        Frequency frequency,
        double[] metres,
        CancellationToken cancellationToken
    )
    {
        var omega = column.Omega(frequency);
        if (column.Wavefronts == Wavefronts.Multimodal)
        {
            var (p, u) = ModalInside.At(column, omega, metres, cancellationToken);
            return new StandingWave(frequency, metres, p, u, column.WarningsUpTo(frequency.Hertz));
        }

        var field = new ColumnField(column.Model, omega, cancellationToken);
        var (pressure, flow) = (new Complex[metres.Length], new Complex[metres.Length]);
        var (sections, starts) = Sections(column);
        for (var n = 0; n < metres.Length; n++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var x = metres[n];
            var found = Array.BinarySearch(starts, x);
            var s = found >= 0 ? found : ~found - 1;
            var element = (BoreSegment)column.Model.Way[sections[s]];
            var inside = Math.Min(x - starts[s], element.Length);
            (pressure[n], flow[n]) = field.PerSource(field.Within(sections[s], inside));
        }

        return new StandingWave(frequency, metres, pressure, flow, column.WarningsUpTo(frequency.Hertz));
    }

    // Which elements are sections, and where they begin, m.
    private static (int[] Indices, double[] Starts) Sections(Column column)
    {
        var (indices, starts, x) = (new List<int>(), new List<double>(), 0.0);
        for (var i = 0; i < column.Model.Way.Length; i++)
        {
            if (column.Model.Way[i] is BoreSegment section)
            {
                indices.Add(i);
                starts.Add(x);
                x += section.Section.LengthMetres;
            }
        }

        return ([.. indices], [.. starts]);
    }
}
