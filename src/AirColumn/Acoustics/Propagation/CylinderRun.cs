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
            Carry(frequencies[i], ref states[i]);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private void Carry(in FrequencyVector frequency, ref WaveState state)
    {
        medium.Wall.At(radius, frequency, out var h, out var t);
        var inverse = h.Inverse();
        var q = front * (t * inverse);
        var kl = length * frequency.Wavenumber(medium.SpeedOfSound);
        var overKl = (1 / length) * frequency.InverseWavenumber(medium.SpeedOfSound);
        state.U = ((1 / unit) * (state.U * inverse)).TimesJ();
        for (var part = 0; part < parts; part++)
        {
            ConeStep.CarryStraight(kl, overKl, q, ref state.P, ref state.U);
            if (isStrong)
            {
                Calm(kl, q, ref state);
            }
        }

        state.U = -((unit * (h * state.U)).TimesJ());
    }

    // Takes out what the part grows by on the way to the blown end.
    private static void Calm(RealVector kl, in ComplexVector q, ref WaveState state)
    {
        var attenuation = kl * Vector.Abs(q.Root().Im);
        var scale = Vector.Exp(-attenuation);
        (state.P, state.U) = (scale * state.P, scale * state.U);
        state.Log += attenuation;
    }
}
