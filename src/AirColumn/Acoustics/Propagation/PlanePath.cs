using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>The way of plane waves along the parts of a line, from its end to its first part, prepared for a band of frequencies.</summary>
internal sealed class PlanePath
{
    private const double Rounding = 1e-15;

    // What cone steps leave out is known well enough for this.
    private const double FinestOfCones = 2e-11;

    // What a step of collocation costs against one of a cone.
    private const double CollocationCost = 5;
    private const int FewSteps = 8;

    private readonly Termination end;
    private readonly Propagator[] propagators; // from the end
    private readonly double impedance;

    /// <summary>Prepares it.</summary>
    /// <param name="parts">From the blown end.</param>
    /// <param name="end">What ends them.</param>
    /// <param name="impedance">ρc/S at the first, Pa·s/m³.</param>
    /// <param name="band">The frequencies.</param>
    public PlanePath(LinePart[] parts, Termination end, double impedance, in Band band)
    {
        (this.end, this.impedance) = (end, impedance);
        propagators = [.. Prepare(parts, band)];
    }

    /// <summary>From the end.</summary>
    public ReadOnlySpan<Propagator> Propagators => propagators;

    /// <summary>Pressure and flow before the first part, for a fixed state at the end.</summary>
    /// <param name="frequencies">In the band; <see cref="WavePath.Block"/> vectors at most.</param>
    /// <param name="states">Receives them.</param>
    public void Carry(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states)
    {
        Begin(frequencies, states);
        Pass(frequencies, states);
    }

    /// <summary>The states at the end in place of those before the first part.</summary>
    public void Pass(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states)
    {
        foreach (var propagator in propagators)
        {
            propagator.Carry(frequencies, states);
        }
    }

    /// <summary>The same for two waves.</summary>
    public void Pass(
        ReadOnlySpan<FrequencyVector> frequencies,
        Span<WaveState> states,
        Span<WaveState> others
    )
    {
        foreach (var propagator in propagators)
        {
            propagator.Carry(frequencies, states, others);
        }
    }

    /// <summary>The same brought back near 1 wherever it has grown far from it: for single answers, since that is not smooth in frequency.</summary>
    public void CarryNormalised(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states)
    {
        Begin(frequencies, states);
        foreach (var propagator in propagators)
        {
            propagator.Carry(frequencies, states);
            for (var i = 0; i < frequencies.Length; i++)
            {
                states[i].Normalise(impedance);
            }
        }
    }

    private void Begin(ReadOnlySpan<FrequencyVector> frequencies, Span<WaveState> states)
    {
        for (var i = 0; i < frequencies.Length; i++)
        {
            var (p, u) = end.At(frequencies[i].Omega);
            states[i] = new WaveState(p, u);
        }
    }

    private static List<Propagator> Prepare(LinePart[] parts, in Band band)
    {
        var isStrong = Attenuation.Along(parts, band) > Attenuation.Strong;
        var found = new List<Propagator>(parts.Length);
        var run = new List<BoreSegment>(parts.Length);
        for (var i = parts.Length - 1; i >= 0; i--)
        {
            if (parts[i] is BoreSegment segment && IsCone(segment, band))
            {
                if (run.Count > 0 && !Continues(run[^1], segment))
                {
                    Close(band);
                }

                run.Add(segment);
                continue;
            }

            Close(band);
            found.Add(
                parts[i] switch
                {
                    BoreSegment { IsStraight: true } straight => new CylinderRun(straight, band, isStrong),
                    BoreSegment curved => new CollocationRun(curved, band, isStrong),
                    SeriesMass mass => new MassPropagator(mass),
                    SideColumn side => new SidePropagator(side, band),
                    _ => throw new InvalidOperationException($"No way through {parts[i].GetType().Name}."),
                }
            );
        }

        Close(band);
        return found;

        void Close(in Band within)
        {
            if (run.Count > 0)
            {
                found.Add(
                    ConeRun.Of(
                        System.Runtime.InteropServices.CollectionsMarshal.AsSpan(run),
                        within,
                        isStrong
                    )
                );
                run.Clear();
            }
        }
    }

    private static bool Continues(BoreSegment beyond, BoreSegment here) =>
        ReferenceEquals(beyond.Medium, here.Medium)
        && here.Section.WallAt(here.Length).Radius.Equals(beyond.Section.WallAt(0).Radius);

    // Cones with losses that ask for more steps than collocation would are left to that, at the finest tolerances.
    private static bool IsCone(BoreSegment segment, in Band band)
    {
        if (segment.Section is not ConeSection)
        {
            return false;
        }

        // Where the apex is a small part of a wavelength away, the flow is a small difference of large terms.
        var (first, last) = (segment.Section.WallAt(0), segment.Section.WallAt(segment.Length));
        var apart = last.Slope / Math.Min(last.Radius, first.Radius) * segment.Gas.SpeedOfSound / band.Low;
        if (Rounding * apart * apart > band.Tolerance)
        {
            return false;
        }

        if (segment.Medium.Wall.IsLossless)
        {
            return true;
        }

        var cone = new Cone(last.Radius, first.Radius, segment.Length, 1);
        return band.Tolerance >= FinestOfCones
            && ConeStepCount.Of(cone, segment.Medium, band, false) is var steps
            && (steps < FewSteps || steps < CollocationCost * CollocationTable.StepsOf(segment, band));
    }
}
