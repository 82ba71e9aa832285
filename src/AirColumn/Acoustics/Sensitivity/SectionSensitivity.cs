using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
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
    private const int Terms = 5;
    private const double LargestTurn = 0.9;

    private readonly SectionElement element;
    private readonly Link<SectionElement>[] links; // of what changes the wall
    private readonly GasSlopes[] slopes; // of each of them
    private readonly (int Parameter, GasSlopes Slopes)[] gasLinks; // of what changes the gas alone, everywhere alike
    private readonly SectionSpan[] spans; // from the inlet
    private readonly bool isStraight;

    public SectionSensitivity(SectionElement element, Link<SectionElement>[] links)
    {
        this.element = element;
        var inGas = links.ToLookup(link =>
            Array.TrueForAll(link.Parts, part => ReferenceEquals(part!.Section, element.Section))
        );
        this.links = [.. inGas[false]];
        slopes = Array.ConvertAll(this.links, GasSlopes.Of);
        gasLinks = [.. inGas[true].Select(link => (link.Parameter, GasSlopes.Of(link)))];
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
            var steps = Rounded(turn / LargestTurn);
            Carry(span.Table(steps), turn / steps, frequencies, ref p, ref u, q);
        }
    }

    // Upwards, to a few numbers: each has a table of its own, which takes longer to make than some steps more.
    private static int Rounded(double steps)
    {
        var rounded = 1;
        while (rounded < steps)
        {
            rounded += 1 + rounded / 5;
        }

        return rounded;
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
        Span<ComplexLanes> terms = stackalloc ComplexLanes[N * Terms];
        Span<ComplexLanes> sums = stackalloc ComplexLanes[Terms]; // over all points
        sums.Clear();
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
                var kinetic = weight * (series[i] * (flow[i] * flow[i]));
                var potential = weight * (shunt[i] * (pressure[i] * pressure[i]));
                PutTerms(kinetic, potential, losses[i], excess, terms[(i * Terms)..], sums);
            }

            for (var l = 0; l < links.Length; l++)
            {
                var slopesOfLink = table.Slopes.AsSpan((l * table.Steps + step) * N, N);
                q[links[l].Parameter] += Sum(slopesOfLink, slopes[l].HeatCapacityRatio, terms);
            }
        }

        foreach (var (parameter, slope) in gasLinks)
        {
            var everywhere = new NodeSlopes(
                slope.Density,
                slope.Viscous,
                -slope.Density - 2 * slope.SpeedOfSound,
                slope.Thermal
            );
            q[parameter] += Sum(new(in everywhere), slope.HeatCapacityRatio, sums);
        }
    }

    // What the logarithmic derivatives of a point are multiplied by.
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    private static void PutTerms(
        in ComplexLanes kinetic,
        in ComplexLanes potential,
        in LossLanes losses,
        double excess,
        Span<ComplexLanes> terms,
        Span<ComplexLanes> sums
    )
    {
        var thermal = potential / (1 + excess * losses.Shunt);
        terms[0] = kinetic;
        terms[1] = kinetic * losses.SeriesSlope / (1 + losses.Series);
        terms[2] = -potential;
        terms[3] = -excess * (losses.ShuntSlope * thermal);
        terms[4] = -(losses.Shunt * thermal);
        for (var n = 0; n < Terms; n++)
        {
            sums[n] += terms[n];
        }
    }

    // The terms of some points with what a parameter does there.
    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    private static ComplexLanes Sum(
        ReadOnlySpan<NodeSlopes> slopes,
        double heatCapacityRatio,
        ReadOnlySpan<ComplexLanes> terms
    )
    {
        var (re, im) = (Vector512<double>.Zero, Vector512<double>.Zero);
        for (var i = 0; i < slopes.Length; i++)
        {
            ref readonly var slope = ref slopes[i];
            var (series, viscous) = (Vector512.Create(slope.Series), Vector512.Create(slope.Viscous));
            re = Vector512.FusedMultiplyAdd(series, terms[i * Terms].Re, re);
            im = Vector512.FusedMultiplyAdd(series, terms[i * Terms].Im, im);
            re = Vector512.FusedMultiplyAdd(viscous, terms[i * Terms + 1].Re, re);
            im = Vector512.FusedMultiplyAdd(viscous, terms[i * Terms + 1].Im, im);
            var (shunt, thermal) = (Vector512.Create(slope.Shunt), Vector512.Create(slope.Thermal));
            re = Vector512.FusedMultiplyAdd(shunt, terms[i * Terms + 2].Re, re);
            im = Vector512.FusedMultiplyAdd(shunt, terms[i * Terms + 2].Im, im);
            re = Vector512.FusedMultiplyAdd(thermal, terms[i * Terms + 3].Re, re);
            im = Vector512.FusedMultiplyAdd(thermal, terms[i * Terms + 3].Im, im);
        }

        for (var i = 0; heatCapacityRatio != 0 && i < slopes.Length; i++)
        {
            var ratio = Vector512.Create(heatCapacityRatio);
            re = Vector512.FusedMultiplyAdd(ratio, terms[i * Terms + 4].Re, re);
            im = Vector512.FusedMultiplyAdd(ratio, terms[i * Terms + 4].Im, im);
        }

        return new ComplexLanes(re, im);
    }

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
        pressure.Fill(p);
        for (var round = 0; round < rounds; round++)
        {
            Integrate(shunt, pressure, u, flow);
            Integrate(series, flow, p, pressure);
        }

        for (var i = 0; i < N; i++)
        {
            p += GaussCollocation.Weights[i] * (series[i] * flow[i]);
            u += GaussCollocation.Weights[i] * (shunt[i] * pressure[i]);
        }
    }

    // The integral of slope·value from the side of the far end, where it is start.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Integrate(
        ReadOnlySpan<ComplexLanes> slope,
        ReadOnlySpan<ComplexLanes> value,
        in ComplexLanes start,
        Span<ComplexLanes> integral
    )
    {
        var rise0 = slope[0] * value[0];
        var rise1 = slope[1] * value[1];
        var rise2 = slope[2] * value[2];
        var rise3 = slope[3] * value[3];
        var rise4 = slope[4] * value[4];
        var rise5 = slope[5] * value[5];
        ref var weight = ref MemoryMarshal.GetReference(GaussCollocation.FromTheEnd);
        for (var i = 0; i < N; i++)
        {
            var (w0, w1) = (Vector512.Create(weight), Vector512.Create(Unsafe.Add(ref weight, 1)));
            var re = Vector512.FusedMultiplyAdd(w0, rise0.Re, start.Re);
            var im = Vector512.FusedMultiplyAdd(w0, rise0.Im, start.Im);
            var (re1, im1) = (w1 * rise1.Re, w1 * rise1.Im);
            var w2 = Vector512.Create(Unsafe.Add(ref weight, 2));
            re = Vector512.FusedMultiplyAdd(w2, rise2.Re, re);
            im = Vector512.FusedMultiplyAdd(w2, rise2.Im, im);
            var w3 = Vector512.Create(Unsafe.Add(ref weight, 3));
            re1 = Vector512.FusedMultiplyAdd(w3, rise3.Re, re1);
            im1 = Vector512.FusedMultiplyAdd(w3, rise3.Im, im1);
            var w4 = Vector512.Create(Unsafe.Add(ref weight, 4));
            re = Vector512.FusedMultiplyAdd(w4, rise4.Re, re);
            im = Vector512.FusedMultiplyAdd(w4, rise4.Im, im);
            var w5 = Vector512.Create(Unsafe.Add(ref weight, 5));
            re1 = Vector512.FusedMultiplyAdd(w5, rise5.Re, re1);
            im1 = Vector512.FusedMultiplyAdd(w5, rise5.Im, im1);
            integral[i] = new ComplexLanes(re + re1, im + im1);
            weight = ref Unsafe.Add(ref weight, N);
        }
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
