using System.Runtime.CompilerServices;
using AirColumn.Acoustics.Elements;

namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// A stretch of a cone where boundary layers are thin: <see cref="ConeLanes"/> without an evaluation of the loss functions, in its variable φ,
/// prepared for a range of frequencies at a time.
/// </summary>
internal sealed class ThinCone
{
    private const double LargestRatio = 1.6; // of radii, over a step if all had the same; it decides the fewest steps only
    private const int MostSteps = 100;

    private readonly double from;
    private readonly double to;
    private readonly double unit; // s over radius and √ω
    private readonly double narrowest;
    private readonly int fewest;

    public ThinCone(SectionElement element, double from, double to)
    {
        (Element, this.from, this.to) = (element, from, to);
        Series = ThinSeries.Of(element.Gas, element.Losses);
        unit = Math.Sqrt(element.Gas.Density / element.Gas.Viscosity);
        var (near, far) = (element.Section.WallAt(from).Radius, element.Section.WallAt(to).Radius);
        (NearRadius, FarRadius) = (near, far);
        narrowest = Math.Min(near, far);
        fewest = 1 + (int)(Math.Log(Math.Max(near, far) / narrowest) / Math.Log(LargestRatio));
    }

    public SectionElement Element { get; }

    public ThinSeries Series { get; }

    public double NearRadius { get; }

    public double FarRadius { get; }

    /// <summary>a'.</summary>
    public double Slope => (FarRadius - NearRadius) / (to - from);

    /// <summary>s of the viscous layer over √ω where the radius is that.</summary>
    public double Unit(double radius) => unit * radius;

    /// <summary>The angular frequency, rad/s, from which on all of it is known well enough.</summary>
    public double Lowest =>
        Math.Max(
            Element.Gas.SpeedOfSound * ConeLanes.LowestK(Element.Section),
            ThinSeries.LowestOmega(unit * narrowest, Element.Gas)
        );

    /// <summary>As few steps as are accurate enough between two angular frequencies, the near end first; null where no number of them will do.</summary>
    public ThinStep[]? Steps(double bottom, double top, double tolerance)
    {
        var count = fewest;
        while (count <= MostSteps)
        {
            if (TrySteps(count, bottom, top, tolerance, out var steps) is not { } worst)
            {
                return steps;
            }

            count = Math.Max(count + 1, (int)(count * Math.Min(3, Math.Pow(worst, 1.0 / 8))));
        }

        return null;
    }

    // Between equal steps of length and of the logarithm of radius: the ones suit the wave, the others the walls. How far the first of them that
    // is not accurate enough is off, in units of what is allowed; null where all are.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double? TrySteps(int count, double bottom, double top, double tolerance, out ThinStep[] steps)
    {
        steps = new ThinStep[count];
        var (near, far) = (NearRadius, FarRadius);
        var (first, last) = (Math.Sqrt(near), Math.Sqrt(far));
        var (x, radius) = (0.0, near);
        for (var i = 0; i < count; i++)
        {
            var root = first + (last - first) * (i + 1) / count;
            var next = i == count - 1 ? far : root * root;
            var end = i == count - 1 ? to - from : (to - from) * (next - near) / (far - near);
            var step = new ThinStep(Element, Series, end - x, radius, next, bottom, top);
            var allowed = Math.Max(tolerance * step.Length / (to - from), 1e-16);
            if (step.Rest / allowed is var off && !(off <= 1))
            {
                return off;
            }

            steps[i] = step;
            (x, radius) = (end, next);
        }

        return null;
    }
}
