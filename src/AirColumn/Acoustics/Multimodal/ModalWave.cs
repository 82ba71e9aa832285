using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Propagation;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>The waves of a column of several radial modes.</summary>
/// <param name="modes">The column for its modes.</param>
/// <param name="model">The same as its parts.</param>
/// <param name="plane">Its plane waves.</param>
internal sealed class ModalWave(ModalColumn modes, ColumnModel model, PlaneWave plane) : InputWave
{
    private const double StillPhase = 0.02; // kL

    /// <inheritdoc/>
    public override double Delay => plane.Delay;

    /// <inheritdoc/>
    public override double Impedance => plane.Impedance;

    /// <inheritdoc/>
    public override IReadOnlyList<double> Corners => plane.Corners;

    /// <inheritdoc/>
    public override bool IsSmooth => plane.IsSmooth;

    // Where all is closed and far longer than the bore a wave, p/U is one over a small difference, and the air in it all that counts.
    /// <inheritdoc/>
    public override WavePath Prepare(in Band band) =>
        model.IsSealed && band.High * model.Bore.LengthMetres < StillPhase * model.Gas.SpeedOfSound
            ? plane.Prepare(band)
            : new Path(modes);

    private sealed class Path(ModalColumn modes) : WavePath
    {
        public override void Carry(
            ReadOnlySpan<FrequencyVector> frequencies,
            Span<WaveState> states,
            CancellationToken cancellationToken
        )
        {
            for (var i = 0; i < frequencies.Length; i++)
            {
                var (p, u) = modes.InputAt(frequencies[i], cancellationToken);
                states[i] = new WaveState(p, u);
            }
        }

        public override void CarryNormalised(
            ReadOnlySpan<FrequencyVector> frequencies,
            Span<WaveState> states,
            CancellationToken cancellationToken
        )
        {
            Carry(frequencies, states, cancellationToken);
            for (var i = 0; i < frequencies.Length; i++)
            {
                states[i].Normalise(1);
            }
        }
    }
}
