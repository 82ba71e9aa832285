using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace AirColumn.Tests.Pitches;

public class CentsTests
{
    // Sizes of just intervals to a thousandth of a cent (A. J. Ellis in helmholtz1885, Appendix XX; from
    // memory). Rounded to 0.001, so good to 0.0005.
    [Theory]
    [InlineData(1, 2, 1200.000)]
    [InlineData(2, 3, 701.955)]
    [InlineData(3, 4, 498.045)]
    [InlineData(4, 5, 386.314)]
    [InlineData(5, 6, 315.641)]
    [InlineData(80, 81, 21.506)]
    [InlineData(524288, 531441, 23.460)]
    [InlineData(3, 2, -701.955)]
    public void Just_intervals_have_their_published_sizes(double from, double to, double cents)
    {
        Assert.Equal(cents, Cents.Between(Frequency.FromHertz(from), Frequency.FromHertz(to)), 0.0005);

        // Half a thousandth of a cent is a ratio of 2.9e-7.
        Assert.Equal(to / from, Cents.ToRatio(cents), 2.9e-7 * to / from);
    }

    [Fact]
    public void Units_do_not_matter() =>
        Assert.Equal(1200, Cents.Between(Frequency.FromHertz(500), Frequency.FromKilohertz(1)));

    // Logarithms of numbers up to 1e5 are up to 17, correct to 4e-15 of an octave, 5e-12 cents each; three of
    // them stay under 1e-10.
    [Property]
    public Property Intervals_add_up_and_turn_round() =>
        Prop.ForAll(
            PitchArbitraries.Frequencies(1, 1e5).Three().ToArbitrary(),
            f =>
            {
                var (a, b, c) = f;
                Assert.Equal(-Between(b, a), Between(a, b), 1e-10);
                Assert.Equal(Between(a, c), Between(a, b) + Between(b, c), 1e-10);
                Assert.Equal(0, Between(a, a));
                Assert.Equal(b / a, Cents.ToRatio(Between(a, b)), 1e-12 * b / a);
            }
        );

    // 1200·log₂(1 + ε) = 1200·(ε − ε²/2 + …)/ln 2; with ε = 2⁻⁴⁰ the first term alone is good to 5e-13. A difference of
    // two logarithms would keep three digits of it.
    [Fact]
    public void A_tiny_interval_keeps_its_digits()
    {
        var tiny = Math.ScaleB(1, -40);
        Near.Relative(1200 * tiny / Math.Log(2), Between(256, 256 * (1 + tiny)), 1e-12);
    }

    [Fact]
    public void The_farthest_frequencies_are_a_finite_interval_apart()
    {
        // The smallest double is 2^-1074, the largest 2^1024 less a little: IEEE 754.
        Assert.Equal(1200 * 2098.0, Between(double.Epsilon, double.MaxValue), 1e-6);
        Assert.Equal(-1200 * 2098.0, Between(double.MaxValue, double.Epsilon), 1e-6);
    }

    [Theory]
    [InlineData(0, "0 Hz")]
    [InlineData(-440, "-440 Hz")]
    public void Refuses_what_is_no_frequency(double hertz, string shown)
    {
        var a4 = Frequency.FromHertz(440);
        var bad = Frequency.FromHertz(hertz);
        var rule = $"is {shown}; it must be a finite number greater than zero.";
        var from = Assert.Throws<ArgumentOutOfRangeException>(() => Cents.Between(bad, a4));
        Assert.StartsWith("from " + rule, from.Message, StringComparison.Ordinal);
        var to = Assert.Throws<ArgumentOutOfRangeException>(() => Cents.Between(a4, bad));
        Assert.StartsWith("to " + rule, to.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_frequency_that_is_no_number_never_comes_this_far(double hertz) =>
        Assert.Throws<ArgumentException>(() => Frequency.FromHertz(hertz));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1_200_001)]
    public void Refuses_intervals_without_a_ratio(double cents)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Cents.ToRatio(cents));
        Assert.Contains(
            "allowed is -1200000 cents to 1200000 cents",
            error.Message,
            StringComparison.Ordinal
        );
    }

    private static double Between(double from, double to) =>
        Cents.Between(Frequency.FromHertz(from), Frequency.FromHertz(to));
}
