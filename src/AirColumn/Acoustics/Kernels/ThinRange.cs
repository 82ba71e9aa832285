using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// A run of cones with thin boundary layers, its steps and terms counted for a range of frequencies; see <see cref="ThinRun"/>. Depends on the
/// cones, the range and the tolerance alone.
/// </summary>
internal sealed class ThinRange
{
    private readonly ThinCone[] cones; // from the far end
    private readonly double bottom;
    private readonly double top;
    private readonly double tolerance;
    private readonly ThinStep[] steps; // likewise
    private readonly Joint[] joints; // before each step; empty within a cone
    private readonly int nearTerms;
    private readonly int farTerms;

    /// <summary>Prepares it between two angular frequencies.</summary>
    public ThinRange(ThinCone[] cones, double bottom, double top, double tolerance)
    {
        (this.cones, this.bottom, this.top, this.tolerance) = (cones, bottom, top, tolerance);
        (steps, joints) = ([], []);
        var all = new List<ThinStep>(cones.Length);
        var before = new List<Joint>(cones.Length);
        var root = Math.Sqrt(bottom);
        for (var i = 0; i < cones.Length; i++)
        {
            var cone = cones[i];
            if (cone.Steps(bottom, top, tolerance) is not { } some)
            {
                return;
            }

            before.Add(i == 0 ? default : new Joint(cone, cones[i - 1], root));
            for (var n = some.Length - 1; n >= 0; n--)
            {
                all.Add(some[n]);
            }

            while (before.Count < all.Count)
            {
                before.Add(default);
            }
        }

        nearTerms = cones[^1].Series.EndTerms(cones[^1].Unit(cones[^1].NearRadius) * root);
        farTerms = cones[0].Series.EndTerms(cones[0].Unit(cones[0].FarRadius) * root);
        (steps, joints, Serves) = ([.. all], [.. before], true);
    }

    /// <summary>Whether some number of steps will do.</summary>
    public bool Serves { get; }

    /// <summary>Whether it was prepared for these.</summary>
    public bool Is(double from, double to, double asked) =>
        bottom.Equals(from) && top.Equals(to) && tolerance.Equals(asked);

    /// <summary>Waves (p⁻, p⁺)·a at the near end from those at the far end.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    [SkipLocalsInit]
    public LaneMatrix Waves(in FrequencyLanes frequencies)
    {
        Span<ComplexLanes> c = stackalloc ComplexLanes[ThinStep.Moments];
        steps[0].At(frequencies, c);
        var total = new ConeSolution(c).Propagator(steps[0].Length);
        for (var i = 1; i < steps.Length; i++)
        {
            ref readonly var joint = ref joints[i];
            if (joint.Series is not null)
            {
                joint.Pass(frequencies, ref total);
            }

            steps[i].At(frequencies, c);
            total = (new ConeSolution(c).Propagator(steps[i].Length) * total).InRange();
        }

        return ToWaves(total, frequencies);
    }

    /// <summary>Waves at the near end in place of those at the far end.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    [SkipLocalsInit]
    public void Carry(in FrequencyLanes frequencies, ref ComplexLanes back, ref ComplexLanes on)
    {
        var (here, there) = (cones[^1], cones[0]);
        var (root, d) = there.Series.EndAt(there.Unit(there.FarRadius) * frequencies.Root, farTerms);
        var g = there.Slope / there.FarRadius;
        var inertia = there.Element.Frame / there.Element.Gas.SpeedOfSound * frequencies.Omega;
        var phi = (on + back) * root.Inverse();
        var slope = (g + (-0.5 * g) * d) * phi - inertia * (root * (on - back)).TimesJ();
        Span<ComplexLanes> c = stackalloc ComplexLanes[ThinStep.Moments];
        for (var i = 0; i < steps.Length; i++)
        {
            ref readonly var joint = ref joints[i];
            if (joint.Series is not null)
            {
                joint.Pass(frequencies, phi, ref slope);
            }

            steps[i].At(frequencies, c);
            new ConeSolution(c).Carry(steps[i].Length, ref phi, ref slope);
        }

        (root, d) = here.Series.EndAt(here.Unit(here.NearRadius) * frequencies.Root, nearTerms);
        g = here.Slope / here.NearRadius;
        inertia = here.Element.Frame / here.Element.Gas.SpeedOfSound * frequencies.Omega;
        var sum = root * phi;
        var rest = slope - (g + (-0.5 * g) * d) * phi;
        var difference = (Vector512<double>.One / inertia) * (root.Inverse() * rest).TimesJ();
        (back, on) = (0.5 * (sum - difference), 0.5 * (sum + difference));
    }

    // ψ = √ζ·φ, w = j/(kμ√ζ)·(φ' − ηφ) at both ends.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private LaneMatrix ToWaves(in LaneMatrix total, in FrequencyLanes frequencies)
    {
        var (here, there) = (cones[^1], cones[0]);
        var (root, d) = here.Series.EndAt(here.Unit(here.NearRadius) * frequencies.Root, nearTerms);
        var (farRoot, farD) = there.Series.EndAt(there.Unit(there.FarRadius) * frequencies.Root, farTerms);
        var (g, farG) = (here.Slope / here.NearRadius, there.Slope / there.FarRadius);
        var (eta, farEta) = (g + (-0.5 * g) * d, farG + (-0.5 * farG) * farD);
        var inertia = here.Element.Frame / here.Element.Gas.SpeedOfSound * frequencies.Omega;
        var farInertia = there.Element.Frame / there.Element.Gas.SpeedOfSound * frequencies.Omega;
        var (inverse, farInverse) = (root.Inverse(), farRoot.Inverse());
        var a = ComplexLanes.MultiplyAdd(total.B, farEta, total.A);
        var c = ComplexLanes.MultiplyAdd(total.D, farEta, total.C);
        c -= eta * a;
        var slope = total.D - eta * total.B;
        return new LaneMatrix(
            root * farInverse * a,
            -(farInertia * (root * farRoot * total.B).TimesJ()),
            (Vector512<double>.One / inertia) * (inverse * farInverse * c).TimesJ(),
            (farInertia / inertia) * (inverse * farRoot * slope)
        ).OfWaves();
    }

    // Where two cones meet. Pressure and flow go on, (φ' − ηφ)/μ with φ, η = a'/a·(1 − ½·Dζ/ζ).
    private readonly struct Joint
    {
        private readonly double ratio; // of the frames
        private readonly double kink;
        private readonly double unit; // s over √ω
        private readonly int terms;

        public Joint(ThinCone here, ThinCone there, double root)
        {
            Series = here.Series;
            ratio = here.Element.Frame / there.Element.Frame;
            kink = (here.Slope - ratio * there.Slope) / here.FarRadius;
            unit = here.Unit(here.FarRadius);
            terms = Series.EndTerms(unit * root);
        }

        /// <summary>Null within a cone.</summary>
        public ThinSeries? Series { get; }

        public void Pass(in FrequencyLanes frequencies, in ComplexLanes phi, ref ComplexLanes slope) =>
            slope = ComplexLanes.MultiplyAdd(JumpAt(frequencies), phi, ratio * slope);

        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public void Pass(in FrequencyLanes frequencies, ref LaneMatrix total)
        {
            var jump = JumpAt(frequencies);
            total = new LaneMatrix(
                total.A,
                total.B,
                ComplexLanes.MultiplyAdd(jump, total.A, ratio * total.C),
                ComplexLanes.MultiplyAdd(jump, total.B, ratio * total.D)
            );
        }

        private ComplexLanes JumpAt(in FrequencyLanes frequencies) =>
            kink + (-0.5 * kink) * Series!.SlopeAt(unit * frequencies.Root, terms);
    }
}
