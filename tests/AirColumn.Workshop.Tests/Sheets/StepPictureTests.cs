using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tests.Tubes;
using AirColumn.Workshop.Tubes;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests.Sheets;

/// <summary>The pictures beside the steps: each dimension reaches over what it measures, and what lies where.</summary>
public class StepPictureTests
{
    private static readonly PipePart Pipe = new("pipe", Mm(40), Mm(46), null);

    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(RandomTube.Drawn)])]
    internal void Dimensions_reach_over_what_they_measure(RandomTube tube)
    {
        foreach (var picture in Pictures(tube.Parts()))
        {
            var (bore, part) = (picture.Reach("bore"), Part(picture));
            var dimensions = picture.Dimensions();
            switch (picture.Title.Split(": ")[1])
            {
                case var title when title.StartsWith("sawing", StringComparison.Ordinal):
                    Assert.Equal([bore], dimensions.Select(d => (d.From, d.To)));
                    Assert.Equal(bore.Right, picture.Reach("saw").Left, 0.02);
                    // Through both walls.
                    var (saw, walls) = (picture.Of("saw").Single(), picture.Of("wall").SelectMany(p => p));
                    Assert.True(
                        saw.Min(p => p.Y) < walls.Min(p => p.Y) && saw.Max(p => p.Y) > walls.Max(p => p.Y)
                    );
                    break;
                case "cut A and the mouthpiece":
                    // In the pipe, and outside of it, towards the lips.
                    Assert.Equal([part.Left, bore.Left], dimensions.Select(d => d.From).Order());
                    Says(dimensions, (bore.Left, part.Right), tube.Inserted);
                    Says(dimensions, (part.Left, bore.Left), tube.Protrudes);
                    break;
                case "cut A and the reducer":
                    Assert.True(bore.Left < part.Left);
                    Says(dimensions, (part.Left, bore.Right), tube.Depth - tube.GapBefore);
                    break;
                case "cut B and the reducer":
                    Assert.True(bore.Right > part.Right);
                    Says(dimensions, (bore.Left, part.Right), tube.Depth - tube.GapAfter);
                    break;
                case var title when title.Contains("to heat", StringComparison.Ordinal):
                    Says(dimensions, picture.Reach("heat"), tube.Formed);
                    Assert.Equal(bore.Right, picture.Reach("heat").Left);
                    Assert.Equal(bore.Right, picture.Of("mark").Single()[0].X);
                    break;
                default:
                    Assert.Fail($"A picture that nobody asked for: {picture.Title}");
                    break;
            }
        }
    }

    // Where they lie on each other, an insert is inside of the bore, a fitting outside of the wall; the arrow points to where they meet.
    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(RandomTube.Drawn)])]
    internal void Parts_lie_inside_or_around_their_pipe(RandomTube tube)
    {
        foreach (var picture in Pictures(tube.Parts()))
        {
            var bore = picture.Of("bore").Single();
            var (top, bottom) = (bore.Min(p => p.Y), bore.Max(p => p.Y));
            var walls = picture.Of("wall").ToList();
            Assert.Equal(bottom, walls[1].Min(p => p.Y));
            Assert.Equal(top, walls[0].Max(p => p.Y));
            Assert.Equal(
                walls[0].Max(p => p.Y) - walls[0].Min(p => p.Y),
                walls[1].Max(p => p.Y) - bottom,
                0.02
            );
            Assert.All(walls, wall => Assert.Equal(ReadPicture.Reach(bore), ReadPicture.Reach(wall)));
            var letter = picture.Texts.Single(text => text.Kind == "strong");
            Assert.InRange(letter.X, bore.Min(p => p.X) + 9, bore.Max(p => p.X) - 9);
            Assert.Equal(letter.X, picture.Circles.Single(circle => circle.Kind == "callout").X);
            if (!picture.Of("part").Any())
            {
                continue;
            }

            var (left, right) = (
                Math.Max(Part(picture).Left, bore.Min(p => p.X)),
                Math.Min(Part(picture).Right, bore.Max(p => p.X))
            );
            Assert.True(left < right);
            var isInsert = picture.Title.Contains("mouthpiece", StringComparison.Ordinal);
            foreach (var side in picture.Of("part"))
            {
                var isAbove = side.Average(p => p.Y) < letter.Y;
                var edge = (isAbove, isInsert) switch
                {
                    (true, true) => top,
                    (false, true) => bottom,
                    (true, false) => walls[0].Min(p => p.Y),
                    (false, false) => walls[1].Max(p => p.Y),
                };
                var there = side.Where(p => p.X > bore.Min(q => q.X) && p.X < bore.Max(q => q.X)).ToList();
                Assert.NotEmpty(there);
                Assert.All(there, p => Assert.True(isAbove == isInsert ? p.Y >= edge : p.Y <= edge));
            }

            var arrow = picture.Of("arrow").ToList();
            var (tail, tip) = (arrow[0][0].X, arrow[0][1].X);
            var joint = (left + right) / 2;
            Assert.Equal(arrow[0][1], arrow[1][1]);
            Assert.True(Math.Abs(tip - joint) < Math.Abs(tail - joint));
            Assert.All(
                [arrow[1][0], arrow[1][2]],
                barb => Assert.InRange(barb.X, Math.Min(tail, tip), Math.Max(tail, tip))
            );
            Assert.True((arrow[1][0].Y - arrow[0][0].Y) * (arrow[1][2].Y - arrow[0][0].Y) < 0);
        }
    }

    // From the end that the hole is measured from to its middle, in the upper wall.
    [Theory]
    [InlineData(PipeEnd.Lips, 345)]
    [InlineData(PipeEnd.Open, 210)]
    public void A_hole_is_where_its_dimension_ends(PipeEnd from, double at)
    {
        var picture = Pictures(new TubeAssembly([Pipe, new HolePart("hole", Mm(7), Mm(at), from)]))[^1];
        var (bore, hole) = (picture.Reach("bore"), picture.Of("gap").Last());
        var middle = hole.Average(p => p.X);
        var (edge, other) = from == PipeEnd.Lips ? (bore.Left, bore.Right) : (bore.Right, bore.Left);
        Says(picture.Dimensions(), (Math.Min(edge, middle), Math.Max(edge, middle)), at);
        Assert.True(Math.Abs(middle - edge) > Math.Abs(middle - other));
        var wall = picture.Of("wall").First();
        Assert.Equal(wall.Min(p => p.Y), hole.Min(p => p.Y));
        Assert.Equal(wall.Max(p => p.Y), hole.Max(p => p.Y));
        var drill = picture.Of("saw").Single();
        Assert.All(drill, p => Assert.Equal(middle, p.X, 0.02));
        Assert.True(drill.Max(p => p.Y) <= hole.Min(p => p.Y));
        Assert.Contains(picture.Texts, text => text.Text == "⌀ 7 mm" && text.Y < hole.Min(p => p.Y));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_fitting_is_where_the_lips_are_or_at_the_other_end(bool isFirst)
    {
        var added = new AddedPart("fitting", Mm(33), Mm(30));
        var picture = Pictures(new TubeAssembly(isFirst ? [added, Pipe] : [Pipe, added]))[^1];
        var (bore, part) = (picture.Reach("bore"), Part(picture));
        Says(picture.Dimensions(), isFirst ? (part.Left, bore.Left) : (bore.Right, part.Right), 33);
        Assert.Equal(isFirst, part.Left < bore.Left);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_flush_insert_ends_with_its_pipe(bool isFirst)
    {
        var insert = new InsertPart("insert", Mm(30), Mm(39.8), Mm(25), Length.Zero);
        var picture = Pictures(new TubeAssembly(isFirst ? [insert, Pipe] : [Pipe, insert]))[^1];
        var (bore, part) = (picture.Reach("bore"), Part(picture));
        Assert.Equal(isFirst ? bore.Left : bore.Right, isFirst ? part.Left : part.Right);
        Says(Assert.Single(picture.Dimensions()), part, 25);
    }

    // Between the marks lies the arc, flat above; below, the pipe turns by the angle, and only where it is hot.
    [Theory]
    [InlineData(35)]
    [InlineData(90)]
    [InlineData(180)]
    public void A_bend_turns_by_its_angle(double degrees)
    {
        var bend = new BendPart("bend", Mm(90), Angle.FromDegrees(degrees), Mm(120));
        var picture = Pictures(new TubeAssembly([Pipe, bend]))[^1];
        var hot = picture.Of("heat").ToList();
        Assert.Equal(2, hot.Count);
        Assert.Equal(
            [ReadPicture.Reach(hot[0]).Left, ReadPicture.Reach(hot[0]).Right],
            picture.Of("mark").Select(mark => mark.Average(p => p.X)).Order()
        );
        var arc = picture.Texts.Single(text => text.Text.EndsWith("mm", StringComparison.Ordinal));
        Assert.Equal(90 * degrees * Math.PI / 180, ReadPicture.Value(arc.Text), 0.051);
        Assert.InRange(arc.X, ReadPicture.Reach(hot[0]).Left, ReadPicture.Reach(hot[0]).Right);
        Assert.Equal(degrees, ReadPicture.Value(picture.Texts.Single(text => text.Text.Contains('°')).Text));
        // Across the pipe at either end of what is hot.
        var bent = hot[1];
        var half = bent.Count / 2;
        double Across(int i, int j) => Math.Atan2(bent[j].Y - bent[i].Y, bent[j].X - bent[i].X);
        var turned = (Across(half - 1, half) - Across(0, bent.Count - 1)) * 180 / Math.PI;
        Assert.Equal(degrees, (turned + 720) % 360, 1.5);
        var straight = picture.Of("bore").Skip(1).ToList();
        Assert.Equal(2, straight.Count);
        Assert.Contains(bent[0], straight[0]);
        Assert.Contains(bent[half], straight[1]);
    }

    private static List<ReadPicture> Pictures(TubeAssembly parts)
    {
        var page = BuildSheet.Html(Plan(parts, "D2"), "", LengthUnits.Millimetres);
        return
        [
            .. ReadPicture.AllOf(page).Where(p => p.Title.StartsWith("Picture", StringComparison.Ordinal)),
        ];
    }

    private static (double Left, double Right) Part(ReadPicture picture) =>
        picture.Of("part").Any() ? picture.Reach("part") : (0, 0);

    private static void Says(
        IEnumerable<(double From, double To, double Y, string Text)> dimensions,
        (double From, double To) between,
        double millimetres
    ) => Says(Assert.Single(dimensions, d => Math.Abs(d.From - between.From) < 0.02), between, millimetres);

    private static void Says(
        (double From, double To, double Y, string Text) dimension,
        (double From, double To) between,
        double millimetres
    )
    {
        Assert.Equal(between.From, dimension.From, 0.02);
        Assert.Equal(between.To, dimension.To, 0.02);
        Assert.Equal(millimetres, ReadPicture.Value(dimension.Text), 0.051);
    }
}
