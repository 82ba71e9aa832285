using AirColumn.Workshop.Tests.Tubes;
using AirColumn.Workshop.Tubes;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests.Sheets;

/// <summary>The side views of a tube, read back: one scale for all, each number at what it is the size of.</summary>
public class SidePictureTests
{
    private const double Cut = 900;

    // Sections of one part after another, and how wide each begins and ends.
    [Draws(quick: 10, inLong: 100, Arbitrary = [typeof(RandomTube.Drawn)])]
    internal void The_side_view_has_one_scale_and_its_numbers(RandomTube tube)
    {
        var parts = tube.Parts();
        var picture = ReadPicture.Side(parts.Assemble(Mm(Cut)), 700);
        var bore = tube.Bore(Cut);
        var ruler = picture.Of("ruler").ToList();
        var (left, right) = ReadPicture.Reach(ruler[0]);
        var scale = (right - left) / bore.Length.Millimeters;
        var axis = picture.Of("axis").Single()[0].Y;
        double At(double millimetres) => left + scale * millimetres;
        var outlines = picture.Shapes.Where(shape => shape.Kind is "bore" or "heat").ToList();
        Assert.Equal(bore.Sections.Count, outlines.Count);
        var start = 0.0;
        foreach (var (section, (_, _, corners)) in bore.Sections.Zip(outlines))
        {
            var end = start + section.Length.Millimeters;
            var (from, to) = (section.InletDiameter.Millimeters / 2, section.OutletDiameter.Millimeters / 2);
            (double X, double Y)[] expected =
            [
                (At(start), axis - scale * from),
                (At(end), axis - scale * to),
                (At(end), axis + scale * to),
                (At(start), axis + scale * from),
            ];
            Assert.All(expected.Zip(corners), pair => Near(pair.First, pair.Second, 0.02));
            start = end;
        }

        // A tick where a part ends; what it adds to the length stands in the middle of what it covers.
        var runs = outlines
            .GroupBy(shape => shape.Part!.Value)
            .Select(part => (Part: part.Key, Reach: ReadPicture.Reach([.. part.SelectMany(s => s.Corners)])))
            .ToList();
        Assert.Equal(
            runs.Select(run => run.Reach.Right).Prepend(left),
            ruler.Skip(1).Select(tick => tick.Average(p => p.X))
        );
        var lengths = picture
            .Texts.Where(text => text.Y > ruler[0][0].Y && text.Kind == "middle")
            .ToDictionary(text => text.Part!.Value);
        var diameters = picture.Texts.Where(text => text.Text.StartsWith('⌀')).ToList();
        Assert.NotEmpty(lengths);
        Assert.NotEmpty(diameters);
        foreach (var (part, reach) in runs.Where(run => lengths.ContainsKey(run.Part)))
        {
            var text = lengths[part];
            Assert.Equal(
                (reach.Right - reach.Left) / scale,
                ReadPicture.Value(text.Text),
                0.06 + 0.03 / scale
            );
            IsInTheMiddle(text.X, reach, text.Text);
        }

        Assert.Equal(
            bore.Length.Millimeters,
            ReadPicture.Value(picture.Texts.Single(text => text.Kind == "strong").Text),
            0.051
        );
        var leads = picture.Shapes.Where(shape => shape.Kind == "lead").ToDictionary(s => s.Part!.Value);
        foreach (var text in diameters)
        {
            // The line under it ends on the wall of its part, and there the tube is as wide as is said.
            var lead = leads[text.Part!.Value].Corners;
            Near((text.X, text.Y + 3), lead[0], 0.02);
            Assert.True(lead[1].Y > text.Y);
            Assert.Equal(ReadPicture.Value(text.Text), 2 * (axis - lead[1].Y) / scale, 0.06 + 0.05 / scale);
            var run = runs.Single(run => run.Part == text.Part).Reach;
            Assert.InRange(lead[1].X, run.Left, run.Right);
        }

        Apart(picture);
    }

    // Round a bend too, what is drawn has one scale, and each part its length beside it.
    [Theory]
    [InlineData(30, 120)]
    [InlineData(90, 80)]
    [InlineData(180, 60)]
    [InlineData(300, 100)]
    public void A_bent_tube_is_drawn_bent(double degrees, double radius)
    {
        var tube = new TubeAssembly([
            new PipePart("pipe", Mm(40), Mm(46), null),
            new BendPart("bend", Mm(radius), Angle.FromDegrees(degrees), Mm(150)),
        ]).Assemble(Mm(1200));
        var picture = ReadPicture.Side(tube, 700);
        var outlines = picture.Shapes.Where(shape => shape.Kind is "bore" or "heat").ToList();
        var arc = radius * degrees * Math.PI / 180;
        double[] lengths = [1200 - 150 - arc, arc, 150];
        Assert.Equal(["bore", "heat", "bore"], outlines.Select(outline => outline.Kind));
        var scale = double.NaN;
        foreach (var (length, (_, _, corners)) in lengths.Zip(outlines))
        {
            var (one, other) = (corners[..(corners.Count / 2)], corners[(corners.Count / 2)..]);
            other.Reverse();
            var line = one.Zip(other, (a, b) => (X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2)).ToList();
            var drawn = line.Zip(line.Skip(1), Distance).Sum();
            scale = double.IsNaN(scale) ? drawn / length : scale;
            // Chords of a fraction of an eighth of a turn are a little shorter than their arc.
            Assert.Equal(scale * length, drawn, 0.002 * drawn + 0.02);
            Assert.All(one.Zip(other, Distance), wide => Assert.Equal(scale * 40, wide, 0.02 + 0.003 * wide));
        }

        // Beside each part its length.
        var texts = picture.Texts.Where(text => !text.Text.StartsWith('⌀')).ToList();
        Assert.Equal(2, texts.Count);
        foreach (var text in texts)
        {
            var of = outlines.Index().Where(outline => outline.Item.Part == text.Part).ToList();
            Assert.Equal(of.Sum(outline => lengths[outline.Index]), ReadPicture.Value(text.Text), 0.051);
            double Off(IEnumerable<(double X, double Y)> line) =>
                line.Min(p => Distance(p, (text.X, text.Y)));
            // Half way along it, clear of the wall; but never off the picture.
            Assert.InRange(
                of.Min(outline => Off(Middles(outline.Item.Corners))),
                20 * scale + 2,
                20 * scale + 40
            );
        }

        Apart(picture);

        // Points along the middle of a piece, close to each other.
        static IEnumerable<(double X, double Y)> Middles(List<(double X, double Y)> corners)
        {
            var half = corners.Count / 2;
            for (var i = 0; i + 1 < half; i++)
            {
                for (var share = 0.0; share < 1; share += 0.02)
                {
                    yield return (At(p => p.X, i, share), At(p => p.Y, i, share));
                }
            }

            double At(Func<(double X, double Y), double> of, int i, double share) =>
                (
                    (1 - share) * (of(corners[i]) + of(corners[^(i + 1)]))
                    + share * (of(corners[i + 1]) + of(corners[^(i + 2)]))
                ) / 2;
        }
    }

    // A long tube folds: each bend turns back, so that after every second one it points where it began to.
    [Fact]
    public void Bends_turn_to_either_side_in_turn()
    {
        double[] degrees = [90, 90, 60, 60, 30];
        var tube = new TubeAssembly([
            new PipePart("pipe", Mm(30), Mm(36), null),
            .. degrees.Select(
                (angle, i) => new BendPart($"bend {i}", Mm(70), Angle.FromDegrees(angle), Mm(80))
            ),
        ]).Assemble(Mm(1500));
        var axis = ReadPicture.Side(tube, 700).Of("axis").Single();
        var directions = axis.Zip(axis.Skip(1), (a, b) => (a, b))
            // What is straight is longer than the chords of a bend.
            .Where(piece => Distance(piece.a, piece.b) > 0.6 * Distance(axis[^2], axis[^1]))
            .Select(piece => Math.Atan2(piece.b.Y - piece.a.Y, piece.b.X - piece.a.X) * 180 / Math.PI)
            .ToList();
        double[] expected = [0, 90, 0, 60, 0, 30];
        Assert.Equal(expected.Length, directions.Count);
        Assert.All(expected.Zip(directions), pair => Assert.Equal(pair.First, pair.Second, 0.2));
    }

    // The holes of a pipe lie on its axis where a tape finds them, as large as they are; an open one is filled.
    [Draws(quick: 10, inLong: 100, Arbitrary = [typeof(RandomTube.Drawn)])]
    internal void Holes_are_drawn_where_they_are(RandomTube tube)
    {
        var random = new Random((int)(100 * tube.Inside + 7 * tube.MouthInside));
        var parts = tube.Parts().Parts.ToList();
        var pipe = parts.FindIndex(part => part is PipePart);
        double[] at = [.. Enumerable.Range(0, 3).Select(i => 250 + 150 * i + random.Next(1, 80))];
        double[] sizes = [.. at.Select(_ => (double)random.Next(10, 30))];
        parts.InsertRange(
            pipe + 1,
            at.Select(
                (mm, i) =>
                    new HolePart($"h{i}", Mm(sizes[i]), Mm(mm), PipeEnd.Lips) { IsOpenInDrone = i == 1 }
            )
        );
        var picture = ReadPicture.Side(new TubeAssembly(parts, Mm(RandomTube.Wall)).Assemble(Mm(Cut)), 900);
        var outline = picture.Shapes.First(shape => shape.Part == pipe).Corners;
        var (left, right) = ReadPicture.Reach(outline);
        var hidden = tube.HasMouth ? tube.Inserted : 0;
        var scale = (right - left) / (Cut - tube.Hidden);
        Assert.Equal(3, picture.Circles.Count);
        foreach (var (i, hole) in picture.Circles.Index())
        {
            Assert.Equal(left + scale * (at[i] - hidden), hole.X, 0.03);
            Assert.Equal(picture.Of("axis").First()[0].Y, hole.Y, 0.02);
            Assert.Equal(Math.Max(1.6, scale * sizes[i] / 2), hole.Radius, 0.02);
            Assert.Equal(i == 1 ? "hole open" : "hole", hole.Kind);
            Assert.Equal(pipe + 1 + i, hole.Part);
        }

        // One text for neighbours that are alike, at one of them.
        foreach (var text in picture.Texts.Where(text => text.Part is { } p && p > pipe && p <= pipe + 3))
        {
            var first = text.Part!.Value - pipe - 1;
            var alike = sizes.Skip(first).TakeWhile(size => size == sizes[first]).Count();
            Assert.True(first == 0 || sizes[first - 1] != sizes[first]);
            Assert.Equal(
                FormattableString.Invariant($"{(alike > 1 ? $"{alike} × " : "")}⌀ {sizes[first]} mm"),
                text.Text
            );
            var lead = picture
                .Shapes.Single(shape => shape.Kind == "lead" && shape.Part == text.Part)
                .Corners;
            Assert.Contains(
                picture.Circles.Skip(first).Take(alike),
                hole =>
                    Math.Abs(hole.X - lead[1].X) < 0.02 && Math.Abs(hole.Y - hole.Radius - lead[1].Y) < 0.02
            );
        }

        Apart(picture);
    }

    private static double Distance((double X, double Y) a, (double X, double Y) b) =>
        double.Hypot(a.X - b.X, a.Y - b.Y);

    private static void Near((double X, double Y) one, (double X, double Y) other, double by)
    {
        Assert.Equal(one.X, other.X, by);
        Assert.Equal(one.Y, other.Y, by);
    }

    // A number that is wider than its part may be moved into the picture.
    private static void IsInTheMiddle(double x, (double Left, double Right) reach, string text)
    {
        var middle = (reach.Left + reach.Right) / 2;
        if (middle > 5 * text.Length && middle < 700 - 5 * text.Length)
        {
            Assert.Equal(middle, x, 0.02);
        }
    }

    // No text on another, and none off the picture: of twelve units, a letter is 6 to 7 wide.
    private static void Apart(ReadPicture picture)
    {
        var boxes = picture
            .Texts.Where(text => text.Kind == "middle")
            .Select(text => (text.X, text.Y, Half: 3.2 * text.Text.Length, text.Text))
            .ToList();
        for (var i = 0; i < boxes.Count; i++)
        {
            Assert.True(boxes[i].X > boxes[i].Half && boxes[i].Y >= 12, boxes[i].Text);
            for (var j = 0; j < i; j++)
            {
                Assert.True(
                    Math.Abs(boxes[i].Y - boxes[j].Y) >= 12
                        || Math.Abs(boxes[i].X - boxes[j].X) > boxes[i].Half + boxes[j].Half,
                    $"{boxes[i].Text} on {boxes[j].Text}"
                );
            }
        }
    }
}
