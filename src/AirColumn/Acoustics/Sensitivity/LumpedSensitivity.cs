using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>A mass in series.</summary>
internal sealed class MassSensitivity(SeriesMass mass, IReadOnlyList<Link<SeriesMass>> links)
    : PartSensitivity
{
    public override void Carry(in FrequencyVector frequency, ref WaveState state, Span<ComplexVector> q)
    {
        var omega = frequency.Omega;
        var square = state.U * state.U;
        foreach (var link in links)
        {
            q[link.Parameter] += link.DerivativeAt(omega, Impedance) * square;
        }

        MassPropagator.Put(omega * mass.InertanceAt(omega), ref state);
    }

    private static ComplexVector Impedance(SeriesMass mass, in RealVector omega) =>
        new(RealVector.Zero, omega * mass.InertanceAt(omega));
}

/// <summary>
/// A hole or branch: half its series mass, the branch in shunt, the other half; all times the pressure at its foot, as
/// <see cref="SidePropagator"/> does it.
/// </summary>
internal sealed class SideSensitivity : PartSensitivity
{
    private readonly SideColumn side;
    private readonly PlanePath branch;
    private readonly double unit; // of the wave at the foot, the same in all
    private readonly (Link<SideColumn> Link, PlanePath?[] Branches)[] links;

    public SideSensitivity(SideColumn side, IReadOnlyList<Link<SideColumn>> links, in Band band)
    {
        this.side = side;
        var within = band;
        branch = Path(side);
        unit = new SidePropagator(side, band).Unit;
        this.links =
        [
            .. links.Select(link =>
                (link, Array.ConvertAll(link.Parts, part => part is null ? null : Path(part)))
            ),
        ];

        PlanePath Path(SideColumn of) => new(of.Parts, of.End, of.Impedance, within);
    }

    /// <summary>Whether it is a tone hole that is open.</summary>
    public bool IsOpenHole => side.IsOpenHole;

    /// <summary>Past a hole that hears others; then all has the scale of what passes at its mouth.</summary>
    public void Carry(
        in FrequencyVector frequency,
        in Mouth mouth,
        ref WaveState state,
        Span<ComplexVector> q
    )
    {
        var omega = frequency.Omega;
        MassPropagator.Put(0.5 * side.SeriesMass * omega, ref state);
        var scale = mouth.Beyond.Over(state, side.Impedance);
        scale *= scale;
        foreach (ref var each in q)
        {
            each *= scale;
        }

        state = new WaveState(mouth.Beyond.P, mouth.Beyond.U + mouth.Taken);
        var squares = (0.5 * omega * (mouth.Beyond.U * mouth.Beyond.U + state.U * state.U)).TimesJ();
        AddLinks(frequency, mouth, At(branch, side, mouth, frequency), squares, ComplexVector.One, q);
        MassPropagator.Put(0.5 * side.SeriesMass * omega, ref state);
    }

    public override void Carry(in FrequencyVector frequency, ref WaveState state, Span<ComplexVector> q)
    {
        var omega = frequency.Omega;
        var half = 0.5 * side.SeriesMass * omega;
        var before = state.U;
        var foot = At(branch, side, null, frequency);
        MassPropagator.Put(half, ref state);
        // In front of the branch, times the pressure at its foot.
        var middle = state.P;
        var flow = ComplexVector.MultiplyAdd(foot.P, before, foot.U * middle);
        var square = foot.P * foot.P;
        var squares = (0.5 * omega * (square * (before * before) + flow * flow)).TimesJ();
        foreach (ref var each in q)
        {
            each *= square;
        }

        AddLinks(frequency, null, foot, squares, middle * middle, q);
        state.P = foot.P * middle;
        state.U = flow;
        MassPropagator.Put(half, ref state);
    }

    // What each parameter does to the series mass and to the shunt, for the state and its square at the foot that are given.
    private void AddLinks(
        in FrequencyVector frequency,
        Mouth? mouth,
        in WaveState foot,
        in ComplexVector squares,
        in ComplexVector square,
        Span<ComplexVector> q
    )
    {
        foreach (var (link, branches) in links)
        {
            // For a fixed state at its far end, p²·δY = p·δU − U·δp at the foot.
            var (dp, du) = (link.Weight * foot.P, link.Weight * foot.U);
            for (var n = 0; n < branches.Length; n++)
            {
                if (branches[n] is { } other)
                {
                    var there = At(other, link.Parts[n]!, mouth, frequency);
                    var scale = link.Weights[n] * Vector.Exp(there.Log - foot.Log);
                    (dp, du) = (dp + scale * there.P, du + scale * there.U);
                }
            }

            var shunt = foot.P * du - foot.U * dp;
            q[link.Parameter] += link.Derivative(part => part.SeriesMass) * squares - shunt * square;
        }
    }

    // At the foot, for the mouth's own wave, or for what passes at a mouth that hears others.
    private WaveState At(PlanePath path, SideColumn of, Mouth? mouth, in FrequencyVector frequency)
    {
        Span<WaveState> state = stackalloc WaveState[1];
        if (mouth is { } heard)
        {
            var pressure = of.End.At(frequency.Omega).Pressure;
            var p = ComplexVector.MultiplyAdd(pressure, heard.Flow, heard.Heard);
            state[0] = new WaveState(p, heard.Flow);
            path.Pass(new(in frequency), state);
            var size = Vector.Exp(state[0].Log);
            return new WaveState(size * state[0].P, size * state[0].U);
        }

        path.CarryNormalised(new(in frequency), state);
        (state[0].P, state[0].U) = (unit * state[0].P, unit * state[0].U);
        return state[0];
    }
}
