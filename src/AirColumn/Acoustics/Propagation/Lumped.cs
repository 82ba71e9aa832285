using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>A mass in series.</summary>
internal sealed class MassPropagator(SeriesMass mass) : Propagator
{
    /// <inheritdoc/>
    public override void Carry(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states)
    {
        for (var i = 0; i < frequencies.Length; i++)
        {
            var omega = frequencies[i].Omega;
            Put(omega * mass.InertanceAt(omega), ref states[i]);
        }
    }

    /// <summary>A reactance in series, Pa·s/m³: the pressure grows by jX·U.</summary>
    public static void Put(RealVector reactance, ref WaveState state)
    {
        var (p, u) = (state.P, state.U);
        state.P = new ComplexVector(
            RealVectors.MultiplyAdd(-reactance, u.Im, p.Re),
            RealVectors.MultiplyAdd(reactance, u.Re, p.Im)
        );
    }
}

/// <summary>
/// A hole or branch: half its series mass, the branch in shunt, the other half; all times the pressure at the foot of the branch, so that
/// its poles do not become poles of the whole.
/// </summary>
internal sealed class SidePropagator : Propagator
{
    // Of the flow there, below which the pressure at the foot is not what the state is measured by.
    private const double LeastShare = 0.01;
    private const double HighestShare = 0.99;

    // Np, beyond which a hole is so narrow that what is heard at its mouth does not reach its foot.
    private const double MostAttenuation = 10;

    private readonly SideColumn side;
    private readonly PlanePath branch;
    private readonly double unit; // of the pressure at the foot, so that rows of holes do not overflow
    private readonly double still; // ω at which an open hole's pressure is 1, which grows with frequency; infinite where it does not

    public SidePropagator(SideColumn side, in Band band)
    {
        this.side = side;
        branch = new PlanePath(side.Parts, side.End, side.Impedance, band);
        (unit, still) = (1, double.PositiveInfinity);
        // Not where the model of its end has stopped.
        var middle = Math.Min(
            Math.Sqrt(band.Low * band.High),
            HighestShare * 2 * Math.PI * side.End.HighestFrequency
        );
        var (low, here) = (
            At(FrequencyVector.All(Math.Min(band.Low, middle))),
            At(FrequencyVector.All(middle))
        );
        var (p, u) = (Complex.Abs(here.P.At(0)), side.Impedance * Complex.Abs(here.U.At(0)));
        unit = 1 / Math.Max(p, LeastShare * u);
        unit = double.IsFinite(unit) ? unit : 1;
        if (Complex.Abs(low.P.At(0)) < Math.Sqrt(band.Low / middle) * p)
        {
            still = middle;
        }
    }

    /// <summary>What the wave at its foot is multiplied by, so that rows of holes do not overflow.</summary>
    public double Unit => unit;

    /// <summary>What it is of.</summary>
    public SideColumn Side => side;

    /// <summary>Pressure and flow at its foot; of an open hole.</summary>
    /// <param name="frequencies">In the band.</param>
    /// <param name="own">The wave at its mouth for a flow of 1 m³/s; what arrives at the foot then.</param>
    /// <param name="feet">Receives them.</param>
    public void Feet(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> own, Span<HoleFeet> feet)
    {
        Span<WaveState> heard = stackalloc WaveState[frequencies.Length];
        heard.Fill(new(ComplexVector.One, ComplexVector.Zero));
        branch.Pass(frequencies, own, heard);
        for (var i = 0; i < feet.Length; i++)
        {
            var size =
                RealVectors.Largest(own[i].Log) > MostAttenuation
                    ? RealVector.Zero
                    : Vector.Exp(heard[i].Log);
            var scale = Scale(frequencies[i]);
            feet[i] = new HoleFeet(
                new(scale * own[i].P, scale * own[i].U),
                scale * Vector.Exp(-own[i].Log),
                new(size * heard[i].P, size * heard[i].U)
            );
        }
    }

    /// <inheritdoc/>
    public override void Carry(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states)
    {
        Span<WaveState> feet = stackalloc WaveState[frequencies.Length];
        branch.Carry(frequencies, feet);
        for (var i = 0; i < frequencies.Length; i++)
        {
            ref var state = ref states[i];
            ref var foot = ref feet[i];
            var scale = Scale(frequencies[i]);
            (foot.P, foot.U) = (scale * foot.P, scale * foot.U);
            var arm = (0.5 * side.SeriesMass) * frequencies[i].Omega;
            MassPropagator.Put(arm, ref state);
            state.U = ComplexVector.MultiplyAdd(foot.P, state.U, foot.U * state.P);
            state.P = foot.P * state.P;
            MassPropagator.Put(arm, ref state);
        }
    }

    /// <summary>The pressure at the foot.</summary>
    public override ComplexVector Excess(in FrequencyVector frequency) => At(frequency).P;

    private WaveState At(in FrequencyVector frequency)
    {
        Span<WaveState> foot = stackalloc WaveState[1];
        branch.Carry(new(in frequency), foot);
        var scale = Scale(frequency);
        (foot[0].P, foot[0].U) = (scale * foot[0].P, scale * foot[0].U);
        return foot[0];
    }

    // Smooth in frequency, and the same for any wave.
    private RealVector Scale(in FrequencyVector frequency) =>
        double.IsFinite(still)
            ? unit * still * (frequency.InverseRoot * frequency.InverseRoot)
            : Vector.Create(unit);
}
