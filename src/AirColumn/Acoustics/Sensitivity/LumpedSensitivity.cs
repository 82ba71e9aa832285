using System.Numerics;
using System.Runtime.Intrinsics;
using AirColumn.Acoustics.Elements;
using AirColumn.Acoustics.Kernels;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>A mass in series.</summary>
internal sealed class MassSensitivity(InertanceElement mass, IReadOnlyList<Link<InertanceElement>> links)
    : ElementSensitivity
{
    public override void Carry(
        in FrequencyLanes frequencies,
        ref ComplexLanes p,
        ref ComplexLanes u,
        Span<ComplexLanes> q
    )
    {
        var omega = frequencies.Omega;
        var square = u * u;
        foreach (var link in links)
        {
            q[link.Parameter] += link.Derivative(omega, Impedance) * square;
        }

        p += ComplexLanes.Each(i => Impedance(mass, omega.GetElement(i))) * u;
    }

    private static Complex Impedance(InertanceElement mass, double omega) =>
        new(0, omega * mass.InertanceAt(omega));
}

/// <summary>A hole or branch: half its series mass, the branch in shunt, the other half.</summary>
internal sealed class SideSensitivity(SideElement side, IReadOnlyList<Link<SideElement>> links)
    : ElementSensitivity
{
    public override void Carry(
        in FrequencyLanes frequencies,
        ref ComplexLanes p,
        ref ComplexLanes u,
        Span<ComplexLanes> q
    )
    {
        var omega = frequencies.Omega;
        var halfMass = 0.5 * side.SeriesMass * omega;
        var middle = p + (halfMass * u).TimesJ();
        Span<Complex> pressures = stackalloc Complex[ComplexLanes.Count];
        Span<Complex> flows = stackalloc Complex[ComplexLanes.Count];
        Span<double> logs = stackalloc double[ComplexLanes.Count];
        for (var i = 0; i < ComplexLanes.Count; i++)
        {
            (pressures[i], flows[i], logs[i]) = side.StateAtFoot(omega.GetElement(i));
        }

        var (pressure, branchFlow) = (ComplexLanes.Of(pressures), ComplexLanes.Of(flows));
        var flow = ComplexLanes.MultiplyAdd(branchFlow / pressure, middle, u);
        var squares = (0.5 * omega * ComplexLanes.MultiplyAdd(u, u, flow * flow)).TimesJ();
        var across = middle / pressure;
        across *= across;
        Span<Complex> shunt = stackalloc Complex[ComplexLanes.Count];
        foreach (var link in links)
        {
            // For a fixed state at its far end, p²·δY = p·δU − U·δp at the foot.
            for (var i = 0; i < ComplexLanes.Count; i++)
            {
                var (dp, du) = (link.Weight * pressures[i], link.Weight * flows[i]);
                for (var n = 0; n < link.Parts.Length; n++)
                {
                    var (p1, u1, log) = link.Parts[n]!.StateAtFoot(omega.GetElement(i));
                    var scale = link.Weights[n] * Math.Exp(log - logs[i]);
                    (dp, du) = (dp + scale * p1, du + scale * u1);
                }

                shunt[i] = pressures[i] * du - flows[i] * dp;
            }

            q[link.Parameter] +=
                link.Derivative(part => part.SeriesMass) * squares - ComplexLanes.Of(shunt) * across;
        }

        p = middle + (halfMass * flow).TimesJ();
        u = flow;
    }
}
