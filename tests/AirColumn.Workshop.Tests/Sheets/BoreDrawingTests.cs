using AirColumn.Workshop.Sheets;
using AirColumn.Workshop.Tests.Tubes;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests.Sheets;

/// <summary>The drawing of the bore on the sheet, read back.</summary>
public class BoreDrawingTests
{
    // In the drawing of the sheet a line leads from each number to the wall of the section that has it in the table.
    [Draws(quick: 3, inLong: 30, Arbitrary = [typeof(RandomTube.Drawn)])]
    internal void The_numbers_of_the_sheet_lead_to_their_sections(RandomTube tube)
    {
        var build = Plan(tube.Parts(), "D2");
        var page = BuildSheet.Html(build, "", LengthUnits.Millimetres);
        var picture = ReadPicture.AllOf(page)[0];
        var bore = build.FirstCut!.Tube.Bore;
        var outline = picture.Of("bore").Single();
        var (left, right) = ReadPicture.Reach(outline);
        var axis = picture.Of("axis").Single()[0].Y;
        var along = (right - left) / bore.Length.Millimeters;
        var widest = bore.Sections.Max(section =>
            Math.Max(section.InletDiameter.Millimeters, section.OutletDiameter.Millimeters)
        );
        var up = (outline.Max(p => p.Y) - outline.Min(p => p.Y)) / widest;
        // As is said below it, to a tenth.
        Assert.Contains(
            FormattableString.Invariant($"heights drawn {up / along:0.#} times larger"),
            page,
            StringComparison.Ordinal
        );
        Assert.Equal(left, picture.Texts.Single(text => text.Text == "lips").X, 0.02);
        Assert.Equal(right, picture.Texts.Single(text => text.Text == "open end").X, 0.02);
        var numbers = picture.Texts.Where(text => text.Text.All(char.IsDigit)).ToList();
        var leads = picture.Of("lead").ToList();
        Assert.True(numbers.Count > bore.Sections.Count / 2);
        foreach (var (number, lead) in numbers.Zip(leads))
        {
            var before = bore.Sections.Take((int)ReadPicture.Value(number.Text) - 1);
            var section = bore.Sections[before.Count()];
            var start = before.Sum(one => one.Length.Millimeters);
            Assert.Equal(left + along * (start + section.Length.Millimeters / 2), lead[1].X, 0.03);
            var radius = (section.InletDiameter + section.OutletDiameter).Millimeters / 4;
            Assert.Equal(up * radius, Math.Abs(lead[1].Y - axis), 0.05);
            // Outside of the tube, in its circle.
            Assert.True(Math.Abs(lead[0].Y - axis) > up * radius + 9);
            Assert.Contains(
                picture.Circles,
                circle => circle.Kind == "callout" && (circle.X, circle.Y) == lead[0]
            );
            Assert.Equal(number.X, lead[0].X);
            Assert.InRange(number.Y - lead[0].Y, 3, 6);
        }

        // What is formed lies between its marks, which cross the wall.
        foreach (
            var (hot, mark) in picture
                .Of("heat")
                .SelectMany(hot => new[] { hot, hot })
                .Zip(picture.Of("mark"))
        )
        {
            Assert.Contains(mark[0].X, new[] { ReadPicture.Reach(hot).Left, ReadPicture.Reach(hot).Right });
            var there = hot.Where(p => Math.Abs(p.X - mark[0].X) < 0.02).ToList();
            Assert.True(mark.Min(p => p.Y) < there.Min(p => p.Y) && mark.Max(p => p.Y) > there.Max(p => p.Y));
        }

        Assert.Equal(2 * picture.Of("heat").Count(), picture.Of("mark").Count());
    }
}
