using System.Numerics;
using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>
/// A cylinder, or a bend, which differs by its inertia alone: exact, in equal parts where one would attenuate more than an exponential
/// holds.
/// </summary>
/// <remarks>
/// p'' + k²·(m·T/H)·p = 0 and U = (πa²H/m)/(jρc)·p'/k: the step of <see cref="ConeStep"/> in which nothing varies.
/// </remarks>
internal sealed class CylinderRun : Propagator
{
    private const double MostAttenuation = 200; // Np over a part

    private readonly Medium medium;
    private readonly double radius;
    private readonly double front; // m
    private readonly double length; // of a part
    private readonly double unit; // πa²/(ρcm)
    private readonly int parts;
    private readonly bool isStrong;

    public CylinderRun(BoreSegment segment, in Band band, bool isStrong)
    {
        this.isStrong = isStrong;
        medium = segment.Medium;
        var wall = segment.Section.WallAt(0);
        radius = wall.Radius;
        front = segment.SeriesFactor(wall);
        var attenuation = isStrong ? Attenuation.Of(medium, radius, segment.Length, front, band) : 0;
        parts = Math.Max(1, (int)Math.Ceiling(attenuation / MostAttenuation));
        length = segment.Length / parts;
        unit = Math.PI * radius * radius / (medium.Impedance * front);
    }

    /// <inheritdoc/>
    public override void Carry(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states)
    {
        for (var i = 0; i < frequencies.Length; i++)
        {
            var step = StepAt(frequencies[i]);
            Put(step, ref states[i]);
        }
    }

    /// <inheritdoc/>
    public override void Carry(
        ReadOnlySpan<FrequencyVector> frequencies,
        Span<WaveState> states,
        Span<WaveState> others
    )
    {
        for (var i = 0; i < frequencies.Length; i++)
        {
            var step = StepAt(frequencies[i]);
            Put(step, ref states[i]);
            Put(step, ref others[i]);
        }
    }

    // The matrix of one part, in pressure and flow; its determinant is 1.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private Step StepAt(in FrequencyVector frequency)
    {
        medium.Wall.At(radius, frequency, out var h, out var t);
        var inverse = h.Inverse();
        var q = front * (t * inverse);
        var kl = length * frequency.Wavenumber(medium.SpeedOfSound);
        var overKl = (1 / length) * frequency.InverseWavenumber(medium.SpeedOfSound);
        ConeStep.Straight(kl, overKl, q, out var same, out var up, out var down);
        var attenuation = isStrong ? kl * Vector.Abs(q.Root().Im) : RealVector.Zero;
        return new Step(
            same,
            ((1 / unit) * (up * inverse)).TimesJ(),
            -(unit * (down * h)).TimesJ(),
            attenuation
        );
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Put(in Step step, ref WaveState state)
    {
        for (var part = 0; part < parts; part++)
        {
            var (p, u) = (state.P, state.U);
            state.P = ComplexVector.MultiplyAdd(step.Same, p, step.Up * u);
            state.U = ComplexVector.MultiplyAdd(step.Same, u, step.Down * p);
            if (isStrong)
            {
                // What the part grows by on the way to the blown end.
                var scale = Vector.Exp(-step.Attenuation);
                (state.P, state.U) = (scale * state.P, scale * state.U);
                state.Log += step.Attenuation;
            }
        }
    }

    private readonly struct Step(
        ComplexVector same,
        ComplexVector up,
        ComplexVector down,
        RealVector attenuation
    )
    {
        public readonly ComplexVector Same = same;
        public readonly ComplexVector Up = up;
        public readonly ComplexVector Down = down;
        public readonly RealVector Attenuation = attenuation; // Np
    }
}
