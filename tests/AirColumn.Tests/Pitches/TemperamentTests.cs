namespace AirColumn.Tests.Pitches;

public class TemperamentTests
{
    private static double[] Meantone => [10, -14, 3, 20, -3, 13, -10, 7, -17, 0, 17, -7];

    [Fact]
    public void Equal_has_no_offsets() =>
        Assert.All(PitchArbitraries.All, pitch => Assert.Equal(0, Temperament.Equal.OffsetOf(pitch)));

    [Theory]
    [InlineData("C4", 10)]
    [InlineData("C#-5", -14)]
    [InlineData("Db9", -14)]
    [InlineData("B#3", 10)]
    [InlineData("Cb-10", -7)]
    [InlineData("B22", -7)]
    public void Looks_up_the_pitch_in_the_octave(string pitch, double offset) =>
        Assert.Equal(offset, Temperament.FromOffsets("meantone", Meantone).OffsetOf(Pitch.Parse(pitch)));

    [Fact]
    public void Is_a_value()
    {
        var offsets = Meantone;
        var one = Temperament.FromOffsets("meantone", offsets);
        offsets[0] = 11;
        Assert.Equal(Temperament.FromOffsets("meantone", Meantone), one);
        Assert.Equal(Temperament.FromOffsets("meantone", Meantone).GetHashCode(), one.GetHashCode());
        Assert.NotEqual(Temperament.FromOffsets("meantone", offsets), one);
        Assert.NotEqual(Temperament.FromOffsets("another", Meantone), one);
        Assert.Equal("meantone", one.ToString());
    }

    // Not required of a hash, but a dictionary is slow without it. Two of these agree by chance once in 2³².
    [Fact]
    public void Name_and_offsets_are_in_its_hash()
    {
        var offsets = Meantone;
        offsets[0] = 11;
        var hash = Temperament.FromOffsets("meantone", Meantone).GetHashCode();
        Assert.NotEqual(hash, Temperament.FromOffsets("meantone", offsets).GetHashCode());
        Assert.NotEqual(hash, Temperament.FromOffsets("another", Meantone).GetHashCode());
    }

    [Fact]
    public void Needs_a_name_and_twelve_offsets()
    {
        Assert.Throws<ArgumentException>(() => Temperament.FromOffsets(" ", Meantone));
        Assert.Throws<ArgumentNullException>(() => Temperament.FromOffsets(null!, Meantone));
        var error = Assert.Throws<ArgumentException>(() => Temperament.FromOffsets("short", [1, 2, 3]));
        Assert.StartsWith(
            "offsetsInCents has 3 numbers; give 12, from C to B.",
            error.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(193.2, "193.2 cents")]
    [InlineData(-100.1, "-100.1 cents")]
    [InlineData(double.NaN, "NaN cents")]
    [InlineData(double.NegativeInfinity, "-Infinity cents")]
    public void Refuses_an_offset_out_of_range(double offset, string shown)
    {
        var offsets = Meantone;
        offsets[2] = offset;
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Temperament.FromOffsets("bad", offsets));
        Assert.StartsWith(
            $"offsetsInCents[2] is {shown}; allowed is -100 cents to 100 cents.",
            error.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(2, 0, 60, -40)]
    [InlineData(11, 0, 50, -50)] // B and the C above it
    public void Refuses_a_pitch_no_higher_than_the_one_before(int lower, int zero, double high, double low)
    {
        var offsets = new double[12];
        var next = (lower + 1) % 12;
        (offsets[lower], offsets[next]) = (high, low + zero);
        var error = Assert.Throws<ArgumentException>(() => Temperament.FromOffsets("bad", offsets));
        Assert.StartsWith(
            string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"offsetsInCents[{next}] is {low} cents after {high} cents, which leaves that pitch no higher than "
                    + $"the one before it; give deviations from equal temperament, in the order C to B."
            ),
            error.Message,
            StringComparison.Ordinal
        );
    }
}
