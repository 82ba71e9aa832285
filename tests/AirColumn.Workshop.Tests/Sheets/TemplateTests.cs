using System.Globalization;
using System.Text.RegularExpressions;
using AirColumn.Workshop.Instruments;
using AirColumn.Workshop.Sheets;
using UnitsNet;

namespace AirColumn.Workshop.Tests.Sheets;

/// <summary>Templates are as large on paper as what they are for, and fit on A4 and Letter.</summary>
public partial class TemplateTests
{
    // 10 mm are left on every side of 210 × 279 mm, which both have.
    private const double Widest = 190;
    private const double Highest = 259;

    [Theory]
    [InlineData(20)]
    [InlineData(48.26)]
    [InlineData(110)]
    [InlineData(250)]
    public void A_strip_goes_once_round_its_pipe(double outside)
    {
        var page = Templates.SquareCut(Length.FromMillimeters(outside), LengthUnits.Both);
        var lines = Line().Matches(page).Select(match => Number(match, 2) - Number(match, 1)).ToList();
        Assert.Equal(Math.PI * outside, lines.Sum(), 0.01);
        Fits(page);
    }

    [Fact]
    public void Holes_lie_where_the_flute_has_them()
    {
        var flute = FingeredFlute.Major(
            Pitch.Parse("D4"),
            Tuning.Concert,
            Air.At(Temperature.FromDegreesCelsius(20), RelativeHumidity.FromPercent(50)),
            Length.FromMillimeters(19),
            Length.FromMillimeters(23.4),
            Length.FromMillimeters(9),
            [.. new double[] { 8, 9, 9, 7, 9, 9 }.Select(mm => Length.FromMillimeters(mm))]
        );
        var page = Templates.Holes(flute, LengthUnits.Millimetres);
        var circles = Circle().Matches(page);
        Assert.Equal(6, circles.Count);
        // Of two holes on one piece the distance on paper is that on the flute.
        var last = circles.Skip(0).Select(match => Number(match, 1)).Take(2).Order().ToList();
        var there = flute
            .Holes.Where(hole => hole.FromEnd.Millimeters < 170)
            .Select(hole => 170 - hole.FromEnd.Millimeters)
            .Order()
            .Take(2);
        Assert.All(last.Zip(there), pair => Assert.Equal(pair.Second, pair.First, 0.001));
        Fits(page);
    }

    [Theory]
    [InlineData(60, 90, 33)]
    [InlineData(140, 180, 48.3)]
    [InlineData(2000, 45, 60)]
    [InlineData(50, 3600, 20)]
    public void A_bend_is_laid_on_until_it_is_whole(double radius, double angle, double outside)
    {
        var page = Templates.Bend(
            Length.FromMillimeters(radius),
            Angle.FromDegrees(angle),
            Length.FromMillimeters(outside),
            LengthUnits.Both
        );
        Fits(page);
        var turned = Turned().Match(page);
        if (turned.Success)
        {
            Assert.Equal(angle, Number(turned, 1) * Number(turned, 2), 0.05 * Number(turned, 2));
        }
    }

    private static void Fits(string page)
    {
        var sizes = Svg().Matches(page);
        Assert.True(sizes.Count >= 2);
        // Above a piece are its title, the ruler and two paragraphs of two lines each, at most 45 mm.
        Assert.All(
            sizes,
            size =>
            {
                Assert.InRange(Number(size, 1), 1, Widest);
                Assert.InRange(Number(size, 2), 1, Highest - 45);
            }
        );
        Assert.Contains("100 mm long", page, StringComparison.Ordinal);
    }

    private static double Number(Match match, int group) =>
        double.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex("<line class=\"saw\" x1=\"25\" y1=\"([^\"]+)\" x2=\"25\" y2=\"([^\"]+)\"")]
    private static partial Regex Line();

    [GeneratedRegex("<circle class=\"hole\" cx=\"([^\"]+)\"")]
    private static partial Regex Circle();

    [GeneratedRegex("<svg [^>]*width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\"")]
    private static partial Regex Svg();

    [GeneratedRegex("shows ([0-9.]+)° of the bend: lay the page on ([0-9]+) times")]
    private static partial Regex Turned();
}
