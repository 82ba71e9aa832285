using System.Numerics;
using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Losses;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>
/// A segment by Gauss collocation (<see cref="CollocationRun"/>), whose discrete solution has its exact discrete gradient in the same
/// points.
/// </summary>
internal sealed class SegmentSensitivity : PartSensitivity
{
    private const int N = GaussCollocation.Points;
    private const int Terms = 5;

    private readonly double excess; // γ − 1
    private readonly CollocationRun run;
    private readonly (int Parameter, double HeatCapacityRatio, NodeSlopes[] Slopes)[] links; // of what changes the wall
    private readonly (int Parameter, GasSlopes Slopes)[] gasLinks; // of what changes the gas alone, everywhere alike

    public SegmentSensitivity(BoreSegment segment, Link<BoreSegment>[] links, in Band band)
    {
        excess = segment.Gas.HeatCapacityRatio - 1;
        run = new CollocationRun(segment, band, Attenuation.IsStrong(segment, band));
        var nodes = run.Table.Nodes;
        var inGas = links.ToLookup(link =>
            Array.TrueForAll(link.Parts, part => ReferenceEquals(part!.Section, segment.Section))
        );
        this.links =
        [
            .. inGas[false]
                .Select(link =>
                {
                    var slopes = GasSlopes.Of(link);
                    return (
                        link.Parameter,
                        slopes.HeatCapacityRatio,
                        Array.ConvertAll(nodes, node => NodeSlopes.Of(link, slopes, node))
                    );
                }),
        ];
        gasLinks = [.. inGas[true].Select(link => (link.Parameter, GasSlopes.Of(link)))];
    }

    public override void Carry(in FrequencyVector frequency, ref WaveState state, Span<ComplexVector> q)
    {
        Span<ComplexVector> sums = stackalloc ComplexVector[Terms]; // over all points
        sums.Clear();
        var log = state.Log; // at whose scale q and the sums are
        run.Carry(frequency, ref state, new Observer(this, q, sums, ref log));
        Rescale(q, sums, log, state.Log);
        foreach (var (parameter, slope) in gasLinks)
        {
            var everywhere = slope.Everywhere;
            q[parameter] += Sum(new(in everywhere), slope.HeatCapacityRatio, sums);
        }
    }

    private static void Rescale(
        Span<ComplexVector> q,
        Span<ComplexVector> sums,
        RealVector from,
        RealVector to
    )
    {
        if (from == to)
        {
            return;
        }

        var scale = Vector.Exp(2 * (from - to));
        foreach (ref var each in q)
        {
            each = scale * each;
        }

        foreach (ref var each in sums)
        {
            each = scale * each;
        }
    }

    // What the logarithmic derivatives of a point are multiplied by.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private void PutTerms(
        in ComplexVector kinetic,
        in ComplexVector potential,
        in WallFunctions wall,
        Span<ComplexVector> terms,
        Span<ComplexVector> sums
    )
    {
        var thermal = potential / wall.T;
        terms[0] = kinetic;
        terms[1] = -(kinetic * wall.HSlope / wall.H);
        terms[2] = -potential;
        terms[3] = -excess * (wall.HeatSlope * thermal);
        terms[4] = -(wall.Heat * thermal);
        for (var n = 0; n < Terms; n++)
        {
            sums[n] += terms[n];
        }
    }

    // The terms of some points with what a parameter does there.
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    private static ComplexVector Sum(
        ReadOnlySpan<NodeSlopes> slopes,
        double heatCapacityRatio,
        ReadOnlySpan<ComplexVector> terms
    )
    {
        var (re, im) = (RealVector.Zero, RealVector.Zero);
        for (var i = 0; i < slopes.Length; i++)
        {
            ref readonly var slope = ref slopes[i];
            var (series, viscous) = (Vector.Create(slope.Series), Vector.Create(slope.Viscous));
            re = RealVectors.MultiplyAdd(series, terms[i * Terms].Re, re);
            im = RealVectors.MultiplyAdd(series, terms[i * Terms].Im, im);
            re = RealVectors.MultiplyAdd(viscous, terms[i * Terms + 1].Re, re);
            im = RealVectors.MultiplyAdd(viscous, terms[i * Terms + 1].Im, im);
            var (shunt, thermal) = (Vector.Create(slope.Shunt), Vector.Create(slope.Thermal));
            re = RealVectors.MultiplyAdd(shunt, terms[i * Terms + 2].Re, re);
            im = RealVectors.MultiplyAdd(shunt, terms[i * Terms + 2].Im, im);
            re = RealVectors.MultiplyAdd(thermal, terms[i * Terms + 3].Re, re);
            im = RealVectors.MultiplyAdd(thermal, terms[i * Terms + 3].Im, im);
        }

        for (var i = 0; heatCapacityRatio != 0 && i < slopes.Length; i++)
        {
            var ratio = Vector.Create(heatCapacityRatio);
            re = RealVectors.MultiplyAdd(ratio, terms[i * Terms + 4].Re, re);
            im = RealVectors.MultiplyAdd(ratio, terms[i * Terms + 4].Im, im);
        }

        return new ComplexVector(re, im);
    }

    private readonly ref struct Observer(
        SegmentSensitivity owner,
        Span<ComplexVector> q,
        Span<ComplexVector> sums,
        ref RealVector scale
    ) : ICollocationObserver
    {
        private readonly ref RealVector scale = ref scale;
        private readonly Span<ComplexVector> q = q;
        private readonly Span<ComplexVector> sums = sums;

        [SkipLocalsInit]
        public void See(
            int step,
            scoped ReadOnlySpan<ComplexVector> series,
            scoped ReadOnlySpan<ComplexVector> shunt,
            scoped ReadOnlySpan<ComplexVector> pressure,
            scoped ReadOnlySpan<ComplexVector> flow,
            scoped ReadOnlySpan<WallFunctions> walls,
            RealVector log
        )
        {
            Span<ComplexVector> terms = stackalloc ComplexVector[N * Terms];
            Rescale(q, sums, scale, log);
            scale = log;
            for (var i = 0; i < N; i++)
            {
                var weight = GaussCollocation.Weights[i];
                var kinetic = weight * (series[i] * (flow[i] * flow[i]));
                var potential = weight * (shunt[i] * (pressure[i] * pressure[i]));
                owner.PutTerms(kinetic, potential, walls[i], terms[(i * Terms)..], sums);
            }

            foreach (var (parameter, ratio, slopes) in owner.links)
            {
                q[parameter] += Sum(slopes.AsSpan(step * N, N), ratio, terms);
            }
        }
    }
}
