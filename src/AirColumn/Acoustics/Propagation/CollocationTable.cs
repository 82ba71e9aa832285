using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;
using AirColumn.Bores;

namespace AirColumn.Acoustics.Propagation;

/// <summary>
/// The walls of a segment at the Gauss points of its steps: spans over which the wall changes little, each in equal steps that are short
/// against the wavelength.
/// </summary>
internal sealed class CollocationTable
{
    private const double LargestChange = 0.35; // of the radius, over a step
    private const int MostSpans = 10_000;

    // Radians over a step that leave rounding, and how that grows with what is allowed: the error is of thirteenth order.
    private const double FinestTurn = 0.8;
    private const double Finest = 1e-11;

    private CollocationTable(CollocationNode[] nodes, int[] rounds) => (Nodes, Rounds) = (nodes, rounds);

    /// <summary>[step·points + point], steps and points from the blown end.</summary>
    public CollocationNode[] Nodes { get; }

    /// <summary>Of each step, rounds of the iteration.</summary>
    public int[] Rounds { get; }

    /// <summary>How many steps there are.</summary>
    public int Steps => Rounds.Length;

    /// <summary>Prepares a segment for a band.</summary>
    public static CollocationTable Of(BoreSegment segment, in Band band)
    {
        var turns = FinestTurn * Math.Pow(Math.Max(band.Tolerance, Finest) / Finest, 1.0 / 13);
        var allowed = Math.Max(1e-3 * band.Tolerance, 1e-15);
        var nodes = new List<CollocationNode>();
        var rounds = new List<int>();
        var from = 0.0;
        while (from < segment.Length)
        {
            var to = EndOfSpan(segment, from);
            var turn = TurnOf(segment, from, to, band);
            var steps = Math.Max(1, (int)Math.Ceiling(turn / turns));
            Add(segment, from, to - from, steps, nodes);
            for (var i = 0; i < steps; i++)
            {
                rounds.Add(GaussCollocation.Rounds(turn / steps, allowed));
            }

            from = to;
        }

        return new CollocationTable([.. nodes], [.. rounds]);
    }

    /// <summary>About how many steps a segment would take.</summary>
    public static double StepsOf(BoreSegment segment, in Band band) =>
        1
        + TurnOf(segment, 0, segment.Length, band)
            / (FinestTurn * Math.Pow(Math.Max(band.Tolerance, Finest) / Finest, 1.0 / 13));

    private static void Add(
        BoreSegment segment,
        double from,
        double length,
        int steps,
        List<CollocationNode> nodes
    )
    {
        var gas = segment.Gas;
        var step = length / steps;
        for (var n = 0; n < steps * GaussCollocation.Points; n++)
        {
            var place = n / GaussCollocation.Points + GaussCollocation.Places[n % GaussCollocation.Points];
            var x = from + step * place;
            var wall = segment.Section.WallAt(x);
            var area = Math.PI * wall.Radius * wall.Radius;
            nodes.Add(
                new CollocationNode(
                    x,
                    wall.Radius,
                    step * gas.Density * segment.SeriesFactor(wall) / area,
                    step * area / (gas.Density * gas.SpeedOfSound * gas.SpeedOfSound)
                )
            );
        }
    }

    private static double EndOfSpan(BoreSegment segment, double from)
    {
        var length = segment.Length;
        var step = length - from;
        if (!segment.IsStraight)
        {
            step = Math.Min(step, Math.Max(Reach(segment.Section.WallAt(from)), length / MostSpans));
            // Where the wall steepens or narrows further on, no farther than its end would go.
            step = Math.Min(
                step,
                Math.Max(Reach(segment.Section.WallAt(Math.Min(from + step, length))), 0.2 * step)
            );
        }

        return length - from - step < 1e-9 * length ? length : from + step;
    }

    // Until the radius has changed by as much as may be.
    private static double Reach(in Wall wall) =>
        LargestChange
        * Math.Min(
            wall.Radius / Math.Max(Math.Abs(wall.Slope), 1e-300),
            Math.Sqrt(wall.Radius / Math.Max(Math.Abs(wall.Curvature), 1e-300))
        );

    // Losses lengthen the wave number: |Γ/k|² = m·|T/H|, largest in the narrowest place at the lowest frequency.
    private static double TurnOf(BoreSegment segment, double from, double to, in Band band)
    {
        var (first, last) = (segment.Section.WallAt(from), segment.Section.WallAt(to));
        var narrow = first.Radius < last.Radius ? first : last;
        segment.Medium.Wall.At(narrow.Radius, FrequencyVector.All(band.Low), out var h, out var t);
        var longer = segment.SeriesFactor(narrow) * Complex.Abs(t.At(0) / h.At(0));
        return band.High / segment.Gas.SpeedOfSound * (to - from) * Math.Sqrt(longer);
    }
}

/// <summary>A Gauss point.</summary>
/// <param name="X">m from the inlet.</param>
/// <param name="Radius">m.</param>
/// <param name="Series">Z' without losses over jω, times the step.</param>
/// <param name="Shunt">Y' likewise.</param>
internal readonly record struct CollocationNode(double X, double Radius, double Series, double Shunt);
