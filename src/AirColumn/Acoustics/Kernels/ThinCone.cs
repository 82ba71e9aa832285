using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Elements;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// A stretch of a cone where boundary layers are thin, prepared once for all frequencies: <see cref="ConeLanes"/> without an evaluation of the
/// loss functions, in its variable φ. Safe to share between threads.
/// </summary>
internal sealed class ThinCone
{
    private const double LargestRatio = 1.6; // of radii, over a step if all had the same; it decides the fewest steps only
    private const int MostSteps = 100;

    private readonly SectionElement element;
    private readonly ThinSeries series;
    private readonly double from;
    private readonly double to;
    private readonly double unit; // s over radius and √ω
    private readonly double narrowest;
    private readonly int fewest;
    private readonly ThinStep[]?[] tables = new ThinStep[MostSteps + 1][]; // by the number of steps

    public ThinCone(SectionElement element, double from, double to)
    {
        (this.element, this.from, this.to) = (element, from, to);
        series = ThinSeries.Of(element.Gas, element.Losses);
        unit = Math.Sqrt(element.Gas.Density / element.Gas.Viscosity);
        var (near, far) = (element.Section.WallAt(from).Radius, element.Section.WallAt(to).Radius);
        (NearRadius, FarRadius) = (near, far);
        narrowest = Math.Min(near, far);
        fewest = 1 + (int)(Math.Log(Math.Max(near, far) / narrowest) / Math.Log(LargestRatio));
    }

    public SectionElement Element => element;

    public double NearRadius { get; }

    public double FarRadius { get; }

    /// <summary>a'.</summary>
    public double Slope => (FarRadius - NearRadius) / (to - from);

    /// <summary>Whether all of it is known well enough at frequencies.</summary>
    public bool Serves(in FrequencyLanes frequencies) =>
        ConeLanes.Serves(element.Section, frequencies.Lowest / element.Gas.SpeedOfSound)
        && ThinSeries.Serve(unit * narrowest * Math.Sqrt(frequencies.Lowest), element.Gas);

    /// <summary>(φ, φ') at the near end from the far end, up to a factor; false where no number of steps will do.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool TryPropagate(in FrequencyLanes frequencies, double tolerance, out LaneMatrix total)
    {
        if (StepsFor(frequencies, tolerance) is not { } steps)
        {
            total = default;
            return false;
        }

        Span<ComplexLanes> c = stackalloc ComplexLanes[ThinStep.Moments];
        steps[0].At(frequencies, c);
        total = new ConeSolution(c).Propagator(steps[0].Length);
        for (var i = 1; i < steps.Length; i++)
        {
            steps[i].At(frequencies, c);
            total *= new ConeSolution(c).Propagator(steps[i].Length);
        }

        return true;
    }

    /// <summary>√ζ and Dζ/ζ where the radius is that.</summary>
    public (ComplexLanes Root, ComplexLanes D) WallAt(double radius, in FrequencyLanes frequencies) =>
        series.EndAt(unit * radius * frequencies.Root, unit * radius * Math.Sqrt(frequencies.Lowest));

    // As few as are accurate enough.
    private ThinStep[]? StepsFor(in FrequencyLanes frequencies, double tolerance)
    {
        var count = fewest;
        while (count <= MostSteps)
        {
            var steps = Volatile.Read(ref tables[count]);
            if (steps is null)
            {
                steps = Table(count);
                Volatile.Write(ref tables[count], steps);
            }

            var worst = 0.0;
            foreach (var step in steps)
            {
                var allowed = Math.Max(tolerance * step.Length / (to - from), 1e-16);
                worst = Math.Max(worst, step.Rest(frequencies.Lowest, frequencies.Top) / allowed);
            }

            if (worst <= 1)
            {
                return steps;
            }

            count = Math.Max(count + 1, (int)(count * Math.Min(3, Math.Pow(worst, 1.0 / 8))));
        }

        return null;
    }

    // Between equal steps of length and of the logarithm of radius: the ones suit the wave, the others the walls.
    private ThinStep[] Table(int count)
    {
        var steps = new ThinStep[count];
        var section = element.Section;
        var (near, far) = (section.WallAt(from).Radius, section.WallAt(to).Radius);
        var (first, last) = (Math.Sqrt(near), Math.Sqrt(far));
        var (x, radius) = (0.0, near);
        for (var i = 0; i < count; i++)
        {
            var root = first + (last - first) * (i + 1) / count;
            var next = i == count - 1 ? far : root * root;
            var end = i == count - 1 ? to - from : (to - from) * (next - near) / (far - near);
            steps[i] = new ThinStep(element, series, end - x, radius, next);
            (x, radius) = (end, next);
        }

        return steps;
    }
}
