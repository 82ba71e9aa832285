using AirColumn.Acoustics.Elements;
using AirColumn.Bores;

namespace AirColumn.Acoustics.Sensitivity;

/// <summary>A stretch of a section over which its wall is simple enough for one step of a long wave.</summary>
internal sealed class SectionSpan
{
    private const double LargestChange = 0.35; // of the radius, over a step
    private const int MostSpans = 10_000;

    private readonly SectionElement element;
    private readonly Link<SectionElement>[] links;
    private readonly GasSlopes[] slopes;
    private readonly double from;
    private readonly List<SectionTable?> tables = []; // by the number of steps

    private SectionSpan(
        SectionElement element,
        Link<SectionElement>[] links,
        GasSlopes[] slopes,
        double from,
        double to
    )
    {
        (this.element, this.links, this.slopes, this.from) = (element, links, slopes, from);
        Length = to - from;
        var (first, last) = (element.Section.WallAt(from), element.Section.WallAt(to));
        Narrowest = first.Radius < last.Radius ? first : last;
    }

    /// <summary>m.</summary>
    public double Length { get; }

    /// <summary>The wall at its narrower end.</summary>
    public Wall Narrowest { get; }

    /// <summary>The stretches of a section from its inlet.</summary>
    public static SectionSpan[] Of(SectionElement element, Link<SectionElement>[] links, GasSlopes[] slopes)
    {
        var section = element.Section;
        var length = section.LengthMetres;
        var spans = new List<SectionSpan>();
        var from = 0.0;
        while (from < length)
        {
            var step = length - from;
            if (section is not (CylinderSection or BendSection))
            {
                step = Math.Min(step, Math.Max(Reach(section.WallAt(from)), length / MostSpans));
                // Where the wall steepens or narrows further on, no farther than its end would go.
                step = Math.Min(
                    step,
                    Math.Max(Reach(section.WallAt(Math.Min(from + step, length))), 0.2 * step)
                );
            }

            var to = length - from - step < 1e-9 * length ? length : from + step;
            spans.Add(new SectionSpan(element, links, slopes, from, to));
            from = to;
        }

        return [.. spans];
    }

    /// <summary>What the walls do in so many steps of it.</summary>
    public SectionTable Table(int steps)
    {
        lock (tables)
        {
            while (tables.Count <= steps)
            {
                tables.Add(null);
            }

            return tables[steps] ??= new SectionTable(element, links, slopes, from, Length, steps);
        }
    }

    // Until the radius has changed by as much as may be.
    private static double Reach(in Wall wall) =>
        LargestChange
        * Math.Min(
            wall.Radius / Math.Max(Math.Abs(wall.Slope), 1e-300),
            Math.Sqrt(wall.Radius / Math.Max(Math.Abs(wall.Curvature), 1e-300))
        );
}
