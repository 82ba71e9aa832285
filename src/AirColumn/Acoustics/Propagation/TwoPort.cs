using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>The two-port of parts: pressure and flow on their near side from those on their far side, by two waves through them.</summary>
internal static class TwoPort
{
    /// <summary>p₁ = A·p₂ + B·U₂ and U₁ = C·p₂ + D·U₂ at ω, rad/s; not finite where attenuation exceeds what double holds.</summary>
    public static (Complex A, Complex B, Complex C, Complex D) Of(ColumnModel model, double omega)
    {
        var band = new Band(omega, omega, model.Options.RelativeTolerance);
        var path = new PlanePath(model.Way, model.End, model.Impedance, band);
        var frequency = FrequencyVector.All(omega);
        var unit = 1 / model.Impedance;
        Span<FrequencyVector> frequencies = [frequency, frequency];
        Span<WaveState> states =
        [
            new(ComplexVector.One, ComplexVector.Zero),
            new(ComplexVector.Zero, ComplexVector.All(unit)),
        ];
        foreach (var propagator in path.Propagators)
        {
            propagator.Carry(frequencies, states);
            var excess = propagator.Excess(frequency).Inverse();
            foreach (ref var state in states)
            {
                (state.P, state.U) = (state.P * excess, state.U * excess);
            }
        }

        var (a, c) = Numbers(states[0]);
        var (b, d) = Numbers(states[1]);
        return (a, model.Impedance * b, c, model.Impedance * d);
    }

    private static (Complex Pressure, Complex Flow) Numbers(in WaveState state)
    {
        var scale = Math.Exp(state.Log[0]);
        return (scale * state.P.At(0), scale * state.U.At(0));
    }
}
