using static AirColumn.Plots.Tests.Columns;

namespace AirColumn.Plots.Tests;

/// <summary>Shapes and curves are where the scales of their picture say.</summary>
public class DrawnToScaleTests
{
    private const string Blue = "#0072B2";
    private const string Vermilion = "#D55E00";
    private const string Ink = "#1C2523";
    private const string AirColour = "#D6E8E6";

    // Holes above, a branch below: as wide and as high as they are, at their places, by the scales of the picture; the wall is open there.
    [Draws(quick: 5, inLong: 50, Arbitrary = [typeof(ReadBackTests.Tubes)])]
    internal void Holes_and_branches_are_drawn_to_scale(ReadBackTests.Tube tube)
    {
        (double At, double Wide, double High)[] holes =
        [
            (0.3 * tube.Length, 0.4 * tube.Diameter, 0.1 * tube.End + 1),
            (0.6 * tube.Length, 0.3 * tube.Diameter, 0.2 * tube.End + 2),
        ];
        var (branchAt, branchWide, branchLong) = (
            0.45 * tube.Length,
            0.35 * tube.Diameter,
            0.5 * tube.Diameter
        );
        var shape = Bore.Build().Cylinder(Mm(tube.Diameter), Mm(tube.Length));
        foreach (var (at, wide, high) in holes)
        {
            shape = shape.Hole(Mm(at), Mm(wide), Mm(high));
        }

        var bore = shape
            .Branch(Mm(branchAt), Bore.Build().Cylinder(Mm(branchWide), Mm(branchLong)).ClosedEnd())
            .ClosedEnd();
        var picture = BorePicture.Of(bore);
        var read = new ReadBack(picture);
        var across = read.Across();
        var radius = tube.Diameter / 2;
        var areas = read.Areas(AirColour);
        // What is behind is drawn first: the branch, the holes, the bore.
        var main = areas[^1];
        var (top, bottom) = (main.Min(p => p.Y), main.Max(p => p.Y));
        var axis = (top + bottom) / 2;
        var up = (bottom - top) / tube.Diameter;
        Assert.All(read.Numbers(), one => Assert.Equal(one.Value, Math.Abs(one.Place - axis) / up, 0.4 / up));
        Assert.Equal(
            read.Numbers().Count - 1,
            2 * read.Numbers().Count(one => one.Value > 0 && one.Place < axis)
        );
        var by = 2 * across.Tenth(0);
        Area(areas[0], branchAt, branchWide, axis + up * 0.98 * radius, axis + up * (radius + branchLong));
        foreach (var (hole, area) in holes.Zip(areas[1..^1]))
        {
            Area(area, hole.At, hole.Wide, axis - up * (radius + hole.High), axis - up * 0.98 * radius);
        }

        var level = read.Lines(Ink)
            .Where(line => line.Count == 2 && Math.Abs(line[0].Y - line[1].Y) < 0.01)
            .ToList();
        Wall(top, holes.Select(hole => (hole.At, hole.Wide)));
        Wall(bottom, [(branchAt, branchWide)]);
        // Both are closed: the end of the bore and the bottom of its branch.
        Assert.Contains(
            read.Lines(Ink),
            line =>
                line.All(p => Math.Abs(across.At(p.X) - tube.Length) < by)
                && Math.Abs(Math.Abs(line[0].Y - line[1].Y) - (bottom - top)) < 0.2
        );
        Assert.Contains(level, line => Math.Abs(line[0].Y - axis - up * (radius + branchLong)) < 0.1);
        // How much larger than lengths, to two digits.
        var along = Math.Abs(main.Max(p => p.X) - main.Min(p => p.X)) / tube.Length;
        var said = new Drawn(picture).Texts.Single(text =>
            text.StartsWith("Inside radius, mm", StringComparison.Ordinal)
        );
        Assert.Equal(
            up / along,
            double.Parse(
                said.Split("drawn ")[1].Split(' ')[0],
                System.Globalization.CultureInfo.InvariantCulture
            ),
            0.06 * up / along
        );

        void Area(List<(double X, double Y)> area, double at, double wide, double from, double to)
        {
            Assert.Equal(at - wide / 2, across.At(area.Min(p => p.X)), by);
            Assert.Equal(at + wide / 2, across.At(area.Max(p => p.X)), by);
            Assert.Equal(from, area.Min(p => p.Y), 0.1);
            Assert.Equal(to, area.Max(p => p.Y), 0.1);
        }

        void Wall(double y, IEnumerable<(double At, double Wide)> gaps)
        {
            var pieces = level
                .Where(line => Math.Abs(line[0].Y - y) < 0.1)
                .Select(line => line.OrderBy(p => p.X).ToList())
                .OrderBy(line => line[0].X)
                .ToList();
            double[] ends =
            [
                0,
                .. gaps.SelectMany(gap => new[] { gap.At - gap.Wide / 2, gap.At + gap.Wide / 2 }),
                tube.Length,
            ];
            Assert.Equal(ends.Length, 2 * pieces.Count);
            Assert.All(
                ends.Zip(pieces.SelectMany(line => line)),
                pair => Assert.Equal(pair.First, across.At(pair.Second.X), by)
            );
        }
    }

    // The stairs of the front: each corner at the larger of its neighbours in both goals, and nothing of the items on its better side.
    [Draws(quick: 3, inLong: 30)]
    internal void Nothing_is_better_than_the_front(int seed)
    {
        var random = new Random(seed);
        var items = Enumerable
            .Range(0, 80)
            .Select(_ => (X: random.NextDouble(), Y: random.NextDouble()))
            .ToList();
        var read = new ReadBack(
            StudyPicture.Front(
                new StudyQuantity("x", items.Select(i => i.X)),
                new StudyQuantity("y", items.Select(i => i.Y))
            )
        );
        var (across, up) = (read.Across(), read.Up(_ => true));
        var front = items
            .Where(item => !items.Any(other => other != item && other.X <= item.X && other.Y <= item.Y))
            .OrderBy(item => item.X)
            .ToList();
        var dots = read.Areas(Vermilion)
            .Select(dot => (X: across.At(dot.Average(p => p.X)), Y: up.At(dot.Average(p => p.Y))))
            .ToList();
        Assert.Equal(front.Count, dots.Count);
        Assert.All(front.Zip(dots), pair => Near(pair.First, pair.Second));
        var lines = read.Lines(Vermilion)
            .Select(line => line.Select(p => (X: across.At(p.X), Y: up.At(p.Y))).ToList())
            .ToList();
        Assert.Equal(2 * (front.Count - 1), lines.Count);
        foreach (var (i, (one, next)) in front.Zip(front.Skip(1)).Index())
        {
            var corner = (next.X, one.Y);
            Near(one, lines[2 * i][0]);
            Near(corner, lines[2 * i][1]);
            Near(corner, lines[2 * i + 1][0]);
            Near(next, lines[2 * i + 1][1]);
        }

        static void Near((double X, double Y) one, (double X, double Y) other)
        {
            Assert.Equal(one.X, other.X, 0.005);
            Assert.Equal(one.Y, other.Y, 0.005);
        }
    }

    // Each curve in the colour and the stroke that its name has in the key, at its levels; the names from the left in the order given.
    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(ReadBackTests.Tubes)])]
    internal void Compared_curves_are_where_the_scales_say(ReadBackTests.Tube tube)
    {
        var grid = FrequencyGrid.Linear(40, 900, 400);
        var curves = new[] { ("straight", Tube(tube.Diameter, tube.Length)), ("stepped", tube.Column) }
            .Select(each => (each.Item1, each.Item2.Impedance(grid)))
            .ToArray();
        var picture = ImpedancePicture.Compare(curves);
        var read = new ReadBack(picture);
        var (across, up) = (read.Across(), read.Up(_ => true));
        var line = read.Lines(Blue).MaxBy(points => points.Count)!;
        var dashes = read.Areas(Vermilion).MaxBy(points => points.Count)!;
        Assert.InRange(Off(line, curves[0].Item2), 0, 0.15);
        Assert.InRange(Off(dashes, curves[1].Item2), 0, 0.15);
        Assert.True(Off(line, curves[1].Item2) > 0.5 && Off(dashes, curves[0].Item2) > 0.5);
        var (first, second) = (read.Text("straight"), read.Text("stepped"));
        Assert.True(first.X < second.X && first.Y == second.Y);
        // A piece of each line before its name.
        Assert.Contains(read.Lines(Blue), sample => Before(sample, first.X, first.Y));
        Assert.Contains(
            read.Areas(Vermilion).Concat(read.Lines(Vermilion)),
            sample => Before(sample, second.X, second.Y)
        );

        static bool Before(List<(double X, double Y)> sample, double x, double y) =>
            sample.All(p => p.X < x && p.X > x - 60 && p.Y < y && p.Y > y - 14);

        // By how many decibels outside of what the curve has within five hertz: the line is two pixels wide.
        double Off(List<(double X, double Y)> points, ImpedanceCurve curve)
        {
            var levels = curve.Decibels();
            return points
                .Where((_, i) => i % 11 == 0)
                .Average(p =>
                {
                    var near = levels.Where((_, i) => Math.Abs(grid.Hertz[i] - across.At(p.X)) < 5).ToList();
                    return Math.Abs(up.At(p.Y) - Math.Clamp(up.At(p.Y), near.Min(), near.Max()));
                });
        }
    }

    // Steps of 1, 2 or 5, from end to end, not more than asked for and not much fewer; each number is its place.
    [Draws(quick: 200, inLong: 2000)]
    internal void An_axis_has_round_numbers_all_along(int seed)
    {
        var random = new Random(seed);
        var size = Math.Pow(10, 6 * random.NextDouble() - 3);
        var from = size * (2 * random.NextDouble() - 1);
        var to = from + size * (0.1 + random.NextDouble());
        var count = random.Next(2, 12);
        var ticks = Drawing.Axis.Linear(from, to, count).Ticks;
        Assert.InRange(ticks.Count, Math.Floor(count / 2.5), count + 1);
        Assert.All(ticks, tick => Assert.InRange(tick.At, from - 1e-9 * size, to + 1e-9 * size));
        Assert.All(
            ticks,
            tick =>
                Assert.Equal(
                    tick.At,
                    double.Parse(
                        tick.Label.Replace('−', '-'),
                        System.Globalization.CultureInfo.InvariantCulture
                    ),
                    1e-5 * Math.Max(Math.Abs(from), Math.Abs(to))
                )
        );
        if (ticks.Count < 2)
        {
            return;
        }

        var step = ticks[1].At - ticks[0].At;
        var first = step / Math.Pow(10, Math.Floor(Math.Log10(step * 1.000001)));
        Assert.True(Math.Min(Math.Abs(first - 1), Math.Min(Math.Abs(first - 2), Math.Abs(first - 5))) < 1e-6);
        Assert.All(
            ticks.Zip(ticks.Skip(1)),
            pair => Assert.Equal(step, pair.Second.At - pair.First.At, 1e-9 * size)
        );
        Assert.True(ticks[0].At - step < from && ticks[^1].At + step > to);
    }
}
