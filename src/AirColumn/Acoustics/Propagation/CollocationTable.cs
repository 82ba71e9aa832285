using System.Numerics;
using AirColumn.Acoustics.Line;
using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Propagation;

/// <summary>
/// The walls of a segment at the Gauss points of its steps: spans over which the wall changes little, each in equal steps that are short
/// against the wavelength.
/// </summary>
internal sealed class CollocationTable
{
    private const int MostSpans = 10_000;

    // How far the polynomial through the values at the points may be off at the ends of a step, over the root of the tolerance: the rule's
    // error goes with its square. Measured.
    private const double Unresolved = 4;

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
        var (from, step) = (0.0, segment.Length);
        while (from < segment.Length)
        {
            var to = EndOfSpan(segment, from, band.Tolerance, ref step);
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

    // Where a step has to end so that the wall is resolved; in, what may do, and out, what may do next.
    private static double EndOfSpan(BoreSegment segment, double from, double tolerance, ref double step)
    {
        var length = segment.Length;
        if (segment.IsStraight)
        {
            return length;
        }

        var allowed = Unresolved * Math.Sqrt(Math.Max(tolerance, 1e-13));
        while (true)
        {
            step = Math.Min(step, length - from);
            // Of sixth order.
            var change = 0.9 * Math.Pow(allowed / Math.Max(OffAtEnds(segment, from, step), 1e-30), 1.0 / 6);
            if (change >= 0.9 || step <= length / MostSpans)
            {
                var to = length - from - step < 1e-9 * length ? length : from + step;
                step *= Math.Clamp(change, 1, 3);
                return to;
            }

            step = Math.Max(step * Math.Max(change, 0.2), length / MostSpans);
        }
    }

    // How far the polynomials through a wall's functions at the points are off at the ends of a step, relative.
    private static double OffAtEnds(BoreSegment segment, double from, double step)
    {
        var (series, shunt) = (new Ends(), new Ends());
        for (var i = 0; i < GaussCollocation.Points; i++)
        {
            var (z, y) = At(from + step * GaussCollocation.Places[i]);
            series.Add(i, z);
            shunt.Add(i, y);
        }

        var (first, last) = (At(from), At(from + step));
        return Math.Max(series.Off(first.Series, last.Series), shunt.Off(first.Shunt, last.Shunt));

        (double Series, double Shunt) At(double x)
        {
            var wall = segment.Section.WallAt(Math.Min(x, segment.Length));
            var area = wall.Radius * wall.Radius;
            return (segment.SeriesFactor(wall) / area, area);
        }
    }

    // The polynomial through values at the points, at both ends.
    private record struct Ends
    {
        private double first;
        private double last;

        public void Add(int point, double value)
        {
            first += GaussCollocation.AtEnd[point] * value;
            last += GaussCollocation.AtEnd[GaussCollocation.Points - 1 - point] * value;
        }

        public readonly double Off(double atFirst, double atLast) =>
            Math.Max(Math.Abs(first / atFirst - 1), Math.Abs(last / atLast - 1));
    }

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
