using System.Buffers;
using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>The way of plane waves along a line whose openings hear each other outside, prepared for a band of frequencies.</summary>
/// <remarks><see cref="HeardBeyond"/> tells what is carried along beside pressure and flow.</remarks>
internal sealed class CoupledPath
{
    // Np, beyond which what comes in at a far opening cannot be followed inwards from there.
    private const double MostAttenuation = 8;

    private readonly PlanePath path;
    private readonly Termination end;
    private readonly OutsideOpenings openings;
    private readonly double impedance;
    private readonly int[] holes; // which propagators are open holes, from the far end
    private readonly int first; // the opening that is the first of the holes

    /// <summary>Prepares it.</summary>
    /// <param name="parts">From the blown end.</param>
    /// <param name="end">What ends them.</param>
    /// <param name="openings">Those of these parts.</param>
    /// <param name="impedance">ρc/S at the first, Pa·s/m³.</param>
    /// <param name="band">The frequencies.</param>
    public CoupledPath(
        LinePart[] parts,
        Termination end,
        OutsideOpenings openings,
        double impedance,
        in Band band
    )
    {
        (this.end, this.openings, this.impedance) = (end, openings, impedance);
        path = new PlanePath(parts, end, impedance, band);
        first = openings.HasFarEnd ? 1 : 0;
        var found = new List<int>();
        for (var i = 0; i < path.Propagators.Length; i++)
        {
            if (path.Propagators[i] is SidePropagator { Side.IsOpenHole: true })
            {
                found.Add(i);
            }
        }

        holes = [.. found];
    }

    /// <summary>Pressure and flow before the first part.</summary>
    /// <param name="frequencies">In the band; <see cref="WavePath.Block"/> vectors at most.</param>
    /// <param name="states">Receives them.</param>
    /// <param name="isNormalised">Whether to bring them back near 1 wherever they have grown far from it.</param>
    public void Carry(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states, bool isNormalised)
    {
        var rented = ArrayPool<ComplexVector>.Shared.Rent(frequencies.Length * HeardBeyond.SizeFor(openings));
        Carry(frequencies, states, rented, isNormalised, null);
        ArrayPool<ComplexVector>.Shared.Return(rented);
    }

    /// <summary>What passes at the far end and at each opening, from the far end, in proportion to a wave at the blown end that is near 1.</summary>
    public (WaveState End, Mouth[] Mouths) Mouths(in FrequencyVector frequency)
    {
        var rented = ArrayPool<ComplexVector>.Shared.Rent(HeardBeyond.SizeFor(openings));
        var tape = new MouthTape();
        Span<WaveState> state = stackalloc WaveState[1];
        Carry(new(in frequency), state, rented, true, tape);
        ArrayPool<ComplexVector>.Shared.Return(rented);
        return tape.Unwind(openings, end, impedance, frequency.Omega);
    }

    /// <summary>
    /// The way with <see cref="Mouths"/>, for what goes on inside and for gradients; null where no opening hears another, or the bore attenuates so
    /// strongly that both leave it out.
    /// </summary>
    public static CoupledPath? Inside(ColumnModel model, in Band band) =>
        model.Openings is { } openings && Attenuation.Along(model.Way, band) < MostAttenuation
            ? new CoupledPath(model.Way, model.End, openings, model.Impedance, band)
            : null;

    private void Carry(
        ReadOnlySpan<FrequencyVector> frequencies,
        Span<WaveState> states,
        ComplexVector[] memory,
        bool isNormalised,
        MouthTape? tape
    )
    {
        for (var i = 0; i < frequencies.Length; i++)
        {
            states[i] = Beyond(memory, i).Start(end, frequencies[i].Omega);
        }

        Span<WaveState> before = stackalloc WaveState[frequencies.Length];
        Span<WaveState> sent = stackalloc WaveState[frequencies.Length];
        Span<WaveState> mouths = stackalloc WaveState[frequencies.Length];
        Span<HoleFeet> feet = stackalloc HoleFeet[frequencies.Length];
        for (var hole = 0; hole <= holes.Length; hole++)
        {
            states.CopyTo(before);
            sent.Fill(new WaveState(Vector.Create(impedance) * ComplexVector.One, -ComplexVector.One));
            Stretch(hole, frequencies, states, sent);
            for (var i = 0; i < frequencies.Length; i++)
            {
                if (isNormalised)
                {
                    states[i].Normalise(impedance);
                }

                var excess = Excess(hole, frequencies[i]);
                var beyond = Beyond(memory, i);
                beyond.Cross(first + hole, before[i], sent[i], states[i], excess, tape);
                mouths[i] = hole < holes.Length ? beyond.Mouth(first + hole) : default;
            }

            if (hole < holes.Length)
            {
                Hole(hole).Feet(frequencies, mouths, feet);
                for (var i = 0; i < frequencies.Length; i++)
                {
                    Beyond(memory, i).Pass(first + hole, feet[i], ref states[i], tape);
                }
            }
        }
    }

    private HeardBeyond Beyond(ComplexVector[] memory, int i)
    {
        var size = HeardBeyond.SizeFor(openings);
        return new(openings, impedance, memory.AsSpan(i * size, size));
    }

    private SidePropagator Hole(int hole) => (SidePropagator)path.Propagators[holes[hole]];

    // From one open hole to the next, with an arm of either.
    private void Stretch(
        int to,
        ReadOnlySpan<FrequencyVector> frequencies,
        Span<WaveState> states,
        Span<WaveState> sent
    )
    {
        if (to > 0)
        {
            Arm(Hole(to - 1), frequencies, states, sent);
        }

        foreach (var propagator in Between(to))
        {
            propagator.Carry(frequencies, states, sent);
        }

        if (to < holes.Length)
        {
            Arm(Hole(to), frequencies, states, sent);
        }
    }

    private static void Arm(
        SidePropagator hole,
        ReadOnlySpan<FrequencyVector> frequencies,
        Span<WaveState> states,
        Span<WaveState> sent
    )
    {
        for (var i = 0; i < frequencies.Length; i++)
        {
            var reactance = 0.5 * hole.Side.SeriesMass * frequencies[i].Omega;
            MassPropagator.Put(reactance, ref states[i]);
            MassPropagator.Put(reactance, ref sent[i]);
        }
    }

    private ComplexVector Excess(int to, in FrequencyVector frequency)
    {
        var excess = ComplexVector.One;
        foreach (var propagator in Between(to))
        {
            excess *= propagator.Excess(frequency);
        }

        return excess;
    }

    private ReadOnlySpan<Propagator> Between(int to)
    {
        var from = to == 0 ? 0 : holes[to - 1] + 1;
        var until = to == holes.Length ? path.Propagators.Length : holes[to];
        return path.Propagators[from..until];
    }
}
