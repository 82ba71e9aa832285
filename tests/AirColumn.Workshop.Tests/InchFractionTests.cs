using FsCheck.Xunit;
using UnitsNet;
using static AirColumn.Workshop.Tests.Bench;

namespace AirColumn.Workshop.Tests;

// Expected values by hand from 1 in = 25.4 mm (international yard, 1959): 1/16 in = 1.5875 mm, half of it 0.79375 mm.
public class InchFractionTests
{
    [Theory]
    [InlineData(0, "0 in")]
    [InlineData(25.4, "1 in")]
    [InlineData(12.7, "1/2 in")]
    [InlineData(1.5875, "1/16 in")]
    [InlineData(1192.2125, "46 15/16 in")] // 46.9375 · 25.4
    [InlineData(1195, "47 1/16 in")] // 47.0472 in
    [InlineData(1000, "39 3/8 in")] // 39.3701 in
    [InlineData(25.3, "1 in")] // 0.9961 in, rounds up over the whole inch
    [InlineData(304.8, "12 in")]
    [InlineData(-6.35, "-1/4 in")]
    [InlineData(-40, "-1 9/16 in")] // 1.5748 in
    public void Shows_the_nearest_sixteenth_in_lowest_terms(double millimetres, string expected) =>
        Assert.Equal(expected, InchFraction.Nearest(Mm(millimetres)).ToString());

    [Theory]
    [InlineData(0.79374, 0)]
    [InlineData(0.79375, 1)]
    [InlineData(2.38124, 1)]
    [InlineData(2.38125, 2)]
    [InlineData(-0.79375, -1)]
    [InlineData(-0.79374, 0)]
    public void Rounds_halves_away_from_zero_exactly(double millimetres, int sixteenths) =>
        Assert.Equal(sixteenths, InchFraction.Nearest(Mm(millimetres)).Sixteenths);

    [Theory]
    [InlineData(0.01, "under 1/16 in")]
    [InlineData(-0.5, "under 1/16 in")]
    [InlineData(0.79375, "1/16 in")]
    [InlineData(0, "0 in")]
    [InlineData(-12.7, "-1/2 in")]
    public void Describes_what_is_too_small_for_a_tape(double millimetres, string expected) =>
        Assert.Equal(expected, InchFraction.Describe(Mm(millimetres)));

    [Theory]
    [InlineData(1.5875, 1)]
    [InlineData(1.5876, 2)]
    [InlineData(0.0001, 1)]
    [InlineData(0, 0)]
    [InlineData(-1.6, -1)]
    public void At_least_never_shortens(double millimetres, int sixteenths) =>
        Assert.Equal(sixteenths, InchFraction.AtLeast(Mm(millimetres)).Sixteenths);

    [Theory]
    [InlineData(1.5875, 1)]
    [InlineData(1.5874, 0)]
    [InlineData(6.7, 4)] // 4.22 sixteenths
    [InlineData(-0.1, -1)]
    public void At_most_never_lengthens(double millimetres, int sixteenths) =>
        Assert.Equal(sixteenths, InchFraction.AtMost(Mm(millimetres)).Sixteenths);

    [Property]
    public void Every_whole_number_of_sixteenths_comes_back(int sixteenths)
    {
        var fraction = new InchFraction(sixteenths % 600_000);
        Assert.Equal(fraction, InchFraction.Nearest(fraction.Length));
        Assert.Equal(fraction, InchFraction.AtLeast(fraction.Length));
        Assert.Equal(fraction, InchFraction.Nearest(Length.FromInches(fraction.Sixteenths / 16.0)));
    }

    [Property]
    public void Nearest_is_within_half_a_sixteenth(int micrometres)
    {
        var length = Mm((micrometres % 10_000_000) / 1000.0);
        var error = InchFraction.Nearest(length).Length - length;
        Assert.InRange(error.Millimeters, -0.79375 - 1e-9, 0.79375 + 1e-9);
    }

    [Fact]
    public void Orders_by_length()
    {
        var (shorter, longer) = (new InchFraction(-3), new InchFraction(5));
        Assert.True(shorter < longer && longer > shorter && shorter <= longer && longer >= shorter);
        Assert.Equal("0 in", default(InchFraction).ToString());
        Assert.Equal("-134217728 in", new InchFraction(int.MinValue).ToString());
    }

    [Fact]
    public void Text_is_the_same_in_every_culture() =>
        RunIn(
            "sv-SE", // its minus sign is not ASCII
            () => Assert.Equal("-1 9/16 in", InchFraction.Nearest(Mm(-40)).ToString())
        );

    [Fact]
    public void Absurd_lengths_are_refused_with_the_range()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() =>
            InchFraction.Nearest(Length.FromKilometers(2))
        );
        Assert.StartsWith(
            "length is 2000000 mm; allowed is -1000000 mm to 1000000 mm.",
            error.Message,
            StringComparison.Ordinal
        );
    }
}
