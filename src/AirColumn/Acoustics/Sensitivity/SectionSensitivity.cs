using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Kernels;
using AirColumn.Bores;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>
/// A section by Gauss collocation in pressure and flow: dp/dx = −Z'·U, dU/dx = −Y'·p with Z' and Y' as in
/// <see cref="SectionElement"/>.
/// </summary>
/// <remarks>
/// Steps are so short that the wave turns by 0.9 rad at most and the radius changes by a third at most; there the collocation is good to
/// rounding. In a cylinder the walls do the same everywhere.
/// </remarks>
internal sealed class SectionSensitivity : ElementSensitivity
{
    private const int N = GaussCollocation.Points;
    private const double LargestTurn = 0.9;

    private readonly SectionElement element;
    private readonly Link<SectionElement>[] links;
    private readonly SectionSpan[] spans; // from the inlet
    private readonly GasSlopes[] slopes; // of each link
    private readonly bool isStraight;

    public SectionSensitivity(SectionElement element, IEnumerable<Link<SectionElement>> links)
    {
        this.element = element;
        this.links = [.. links];
        slopes = [.. this.links.Select(GasSlopes.Of)];
        isStraight = element.Section is CylinderSection or BendSection;
        spans = SectionSpan.Of(element, this.links, slopes);
    }

    public override void Carry(
        in FrequencyLanes frequencies,
        ref ComplexLanes p,
        ref ComplexLanes u,
        Span<ComplexLanes> q
    )
    {
        var k = frequencies.Highest / element.Gas.SpeedOfSound;
        for (var i = spans.Length - 1; i >= 0; i--)
        {
            var span = spans[i];
            // Losses lengthen the wave number: |Γ/k|² = |1 + εv|·|1 + εt|, largest in the narrowest place at the lowest frequency.
            var (series, shunt) = element.FactorsAt(span.Narrowest, frequencies.Lowest);
            var turn = k * span.Length * Math.Sqrt((series * shunt).Magnitude);
            var steps = Math.Max(1, (int)Math.Ceiling(turn / LargestTurn));
            Carry(span.Table(steps), turn / steps, frequencies, ref p, ref u, q);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    [SkipLocalsInit]
    private void Carry(
        SectionTable table,
        double turn,
        in FrequencyLanes frequencies,
        ref ComplexLanes p,
        ref ComplexLanes u,
        Span<ComplexLanes> q
    )
    {
        var gas = element.Gas;
        var omega = frequencies.Omega;
        var rootPrandtl = Math.Sqrt(gas.PrandtlNumber);
        var excess = gas.HeatCapacityRatio - 1;
        var viscous = frequencies.Root * Math.Sqrt(gas.Density / gas.Viscosity);
        var rounds = Rounds(turn);
        Span<ComplexLanes> series = stackalloc ComplexLanes[N]; // Z' times the step
        Span<ComplexLanes> shunt = stackalloc ComplexLanes[N];
        Span<ComplexLanes> pressure = stackalloc ComplexLanes[N];
        Span<ComplexLanes> flow = stackalloc ComplexLanes[N];
        Span<LossLanes> losses = stackalloc LossLanes[N];
        for (var step = table.Steps - 1; step >= 0; step--)
        {
            for (var i = 0; i < N; i++)
            {
                ref readonly var node = ref table.Nodes[step * N + i];
                if (i > 0 && isStraight)
                {
                    (series[i], shunt[i], losses[i]) = (series[0], shunt[0], losses[0]);
                    continue;
                }

                if (step == table.Steps - 1 || !isStraight)
                {
                    losses[i] = LossLanes.At(element.Losses, viscous * node.Radius, rootPrandtl);
                }

                series[i] = (node.Series * omega * (1 + losses[i].Series)).TimesJ();
                shunt[i] = (node.Shunt * omega * (1 + excess * losses[i].Shunt)).TimesJ();
            }

            Collocate(series, shunt, ref p, ref u, pressure, flow, rounds);
            for (var i = 0; i < N; i++)
            {
                var weight = GaussCollocation.Weights[i];
                var kinetic = weight * series[i] * flow[i] * flow[i];
                var potential = weight * shunt[i] * pressure[i] * pressure[i];
                var viscousPart = kinetic * losses[i].SeriesSlope / (1 + losses[i].Series);
                var thermal = potential / (1 + excess * losses[i].Shunt);
                var thermalPart = excess * losses[i].ShuntSlope * thermal;
                var heat = losses[i].Shunt * thermal;
                var row = (step * N + i) * links.Length;
                for (var l = 0; l < links.Length; l++)
                {
                    ref readonly var slope = ref table.Slopes[row + l];
                    var sum = slope.Series * kinetic + slope.Viscous * viscousPart;
                    sum -= slope.Shunt * potential + slope.Thermal * thermalPart;
                    if (slopes[l].HeatCapacityRatio != 0)
                    {
                        sum -= slopes[l].HeatCapacityRatio * heat;
                    }

                    q[links[l].Parameter] += sum;
                }
            }
        }
    }

    // From the side of the far end: places are counted from there, and the walls lie mirrored, which Gauss points are.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    [SkipLocalsInit]
    private static void Collocate(
        ReadOnlySpan<ComplexLanes> series,
        ReadOnlySpan<ComplexLanes> shunt,
        ref ComplexLanes p,
        ref ComplexLanes u,
        Span<ComplexLanes> pressure,
        Span<ComplexLanes> flow,
        int rounds
    )
    {
        Span<ComplexLanes> rise = stackalloc ComplexLanes[N];
        for (var i = 0; i < N; i++)
        {
            (pressure[i], flow[i]) = (p, u);
        }

        var integrals = GaussCollocation.Integrals;
        for (var round = 0; round < rounds; round++)
        {
            for (var j = 0; j < N; j++)
            {
                rise[j] = shunt[j] * pressure[j];
            }

            for (var i = 0; i < N; i++)
            {
                flow[i] = Integral(integrals, i, rise, u);
            }

            for (var j = 0; j < N; j++)
            {
                rise[j] = series[j] * flow[j];
            }

            for (var i = 0; i < N; i++)
            {
                pressure[i] = Integral(integrals, i, rise, p);
            }
        }

        for (var i = 0; i < N; i++)
        {
            p += GaussCollocation.Weights[i] * (series[i] * flow[i]);
            u += GaussCollocation.Weights[i] * (shunt[i] * pressure[i]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ComplexLanes Integral(
        double[] integrals,
        int i,
        ReadOnlySpan<ComplexLanes> rise,
        in ComplexLanes start
    )
    {
        var (re, im) = (start.Re, start.Im);
        for (var j = 0; j < N; j++)
        {
            // Mirrored: the last point is the first from the far end.
            var weight = Vector512.Create(integrals[(N - 1 - i) * N + N - 1 - j]);
            re = Vector512.FusedMultiplyAdd(weight, rise[j].Re, re);
            im = Vector512.FusedMultiplyAdd(weight, rise[j].Im, im);
        }

        return new ComplexLanes(re, im);
    }

    // Each round of the iteration adds two terms of the exponential series of the turn.
    private static int Rounds(double turn)
    {
        var (rounds, term) = (1, turn * turn / 2);
        while (term > 1e-15)
        {
            rounds++;
            term *= turn * turn / (2 * rounds * (2 * rounds - 1));
        }

        return rounds;
    }
}
