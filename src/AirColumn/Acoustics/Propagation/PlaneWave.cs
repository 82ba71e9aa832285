using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>Waves of one pressure and one flow along a line.</summary>
internal sealed class PlaneWave : InputWave
{
    private readonly LinePart[] parts;
    private readonly Termination end;
    private readonly InputTermination blown;
    private readonly OutsideOpenings? openings;

    /// <param name="parts">From the blown end.</param>
    /// <param name="end">The far end.</param>
    /// <param name="blown">The blown end.</param>
    /// <param name="impedance">ρc/S at the blown end, Pa·s/m³.</param>
    /// <param name="openings">Those that hear each other outside; null where none does.</param>
    public PlaneWave(
        LinePart[] parts,
        Termination end,
        InputTermination blown,
        double impedance,
        OutsideOpenings? openings
    )
    {
        (this.parts, this.end, this.blown, Impedance) = (parts, end, blown, impedance);
        this.openings = openings;
        Delay = LineParts.Segments(parts).Sum(segment => segment.Length / segment.Gas.SpeedOfSound);
        Corners =
        [
            .. LineParts.Corners(parts),
            .. end.Corners,
            .. blown.Loads.SelectMany(load => load.Corners),
        ];
        IsSmooth = end.IsSmooth && LineParts.Ends(parts).All(load => load.IsSmooth);
    }

    /// <inheritdoc/>
    public override double Delay { get; }

    /// <inheritdoc/>
    public override double Impedance { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<double> Corners { get; }

    /// <inheritdoc/>
    public override bool IsSmooth { get; }

    /// <inheritdoc/>
    public override WavePath Prepare(in Band band) =>
        openings is null ? new Alone(this, band) : new Together(this, openings, band);

    private void PutOutside(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states)
    {
        for (var i = 0; i < frequencies.Length && blown.IsOpen; i++)
        {
            var outside = blown.Impedance(frequencies[i].Omega);
            states[i].P = ComplexVector.MultiplyAdd(outside, states[i].U, states[i].P);
        }
    }

    // No opening hears another.
    private sealed class Alone(PlaneWave wave, in Band band) : WavePath
    {
        private readonly PlanePath path = new(wave.parts, wave.end, wave.Impedance, band);

        public override void Carry(
            ReadOnlySpan<FrequencyVector> frequencies,
            Span<WaveState> states,
            CancellationToken cancellationToken
        )
        {
            cancellationToken.ThrowIfCancellationRequested();
            path.Carry(frequencies, states);
            wave.PutOutside(frequencies, states);
        }

        public override void CarryNormalised(
            ReadOnlySpan<FrequencyVector> frequencies,
            Span<WaveState> states,
            CancellationToken cancellationToken
        )
        {
            cancellationToken.ThrowIfCancellationRequested();
            path.CarryNormalised(frequencies, states);
            wave.PutOutside(frequencies, states);
        }
    }

    private sealed class Together(PlaneWave wave, OutsideOpenings openings, in Band band) : WavePath
    {
        private readonly CoupledPath path = new(wave.parts, wave.end, openings, wave.Impedance, band);

        public override void Carry(
            ReadOnlySpan<FrequencyVector> frequencies,
            Span<WaveState> states,
            CancellationToken cancellationToken
        )
        {
            cancellationToken.ThrowIfCancellationRequested();
            path.Carry(frequencies, states, false);
            wave.PutOutside(frequencies, states);
        }

        public override void CarryNormalised(
            ReadOnlySpan<FrequencyVector> frequencies,
            Span<WaveState> states,
            CancellationToken cancellationToken
        )
        {
            cancellationToken.ThrowIfCancellationRequested();
            path.Carry(frequencies, states, true);
            wave.PutOutside(frequencies, states);
        }
    }
}
