using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>
/// A segment of any wall: dp/dx = −Z'·U, dU/dx = −Y'·p by Gauss collocation of order 12 (<see cref="GaussCollocation"/>).
/// </summary>
/// <param name="segment">The segment.</param>
/// <param name="band">The frequencies.</param>
/// <param name="isStrong">Whether growth is to be taken out of the state.</param>
internal sealed class CollocationRun(BoreSegment segment, in Band band, bool isStrong) : Propagator
{
    private const int N = GaussCollocation.Points;

    private readonly CollocationTable table = CollocationTable.Of(segment, band);

    /// <summary>The walls at its points.</summary>
    public CollocationTable Table => table;

    /// <inheritdoc/>
    public override void Carry(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states)
    {
        for (var i = 0; i < frequencies.Length; i++)
        {
            Carry(frequencies[i], ref states[i]);
        }
    }

    [SkipLocalsInit]
    private void Carry(in FrequencyVector frequency, ref WaveState state)
    {
        Span<ComplexVector> series = stackalloc ComplexVector[N];
        Span<ComplexVector> shunt = stackalloc ComplexVector[N];
        Span<ComplexVector> pressure = stackalloc ComplexVector[N];
        Span<ComplexVector> flow = stackalloc ComplexVector[N];
        for (var step = table.Steps - 1; step >= 0; step--)
        {
            var nodes = table.Nodes.AsSpan(step * N, N);
            for (var i = 0; i < N; i++)
            {
                segment.Medium.Wall.At(nodes[i].Radius, frequency, out var h, out var t);
                series[i] = (nodes[i].Series * frequency.Omega * h.Inverse()).TimesJ();
                shunt[i] = (nodes[i].Shunt * frequency.Omega * t).TimesJ();
            }

            GaussCollocation.Step(
                series,
                shunt,
                ref state.P,
                ref state.U,
                pressure,
                flow,
                table.Rounds[step]
            );
            if (isStrong)
            {
                Calm(series[N / 2] * shunt[N / 2], ref state);
            }
        }
    }

    /// <summary>The same for one vector of frequencies, what happens in each step being shown on the way.</summary>
    /// <param name="frequency">In the band.</param>
    /// <param name="state">On the far side, then on the near one.</param>
    /// <param name="observer">Sees the steps, from the far end.</param>
    [SkipLocalsInit]
    public void Carry<TObserver>(in FrequencyVector frequency, ref WaveState state, TObserver observer)
        where TObserver : ICollocationObserver, allows ref struct
    {
        Span<ComplexVector> series = stackalloc ComplexVector[N];
        Span<ComplexVector> shunt = stackalloc ComplexVector[N];
        Span<ComplexVector> pressure = stackalloc ComplexVector[N];
        Span<ComplexVector> flow = stackalloc ComplexVector[N];
        Span<WallFunctions> walls = stackalloc WallFunctions[N];
        for (var step = table.Steps - 1; step >= 0; step--)
        {
            var nodes = table.Nodes.AsSpan(step * N, N);
            for (var i = 0; i < N; i++)
            {
                if (segment.IsStraight && (i > 0 || step < table.Steps - 1))
                {
                    walls[i] = walls[0];
                }
                else
                {
                    segment.Medium.Wall.At(nodes[i].Radius, frequency, out walls[i]);
                }

                series[i] = (nodes[i].Series * frequency.Omega * walls[i].H.Inverse()).TimesJ();
                shunt[i] = (nodes[i].Shunt * frequency.Omega * walls[i].T).TimesJ();
            }

            GaussCollocation.Step(
                series,
                shunt,
                ref state.P,
                ref state.U,
                pressure,
                flow,
                table.Rounds[step]
            );
            observer.See(step, series, shunt, pressure, flow, walls, state.Log);
            if (isStrong)
            {
                Calm(series[N / 2] * shunt[N / 2], ref state);
            }
        }
    }

    // Takes out what the step grows by: Γ² times the step squared is what is given.
    private static void Calm(in ComplexVector square, ref WaveState state)
    {
        var growth = square.Root().Re;
        var scale = System.Numerics.Vector.Exp(-growth);
        (state.P, state.U) = (scale * state.P, scale * state.U);
        state.Log += growth;
    }
}
