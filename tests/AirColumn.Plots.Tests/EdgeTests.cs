using UnitsNet;
using static AirColumn.Plots.Tests.Columns;

namespace AirColumn.Plots.Tests;

/// <summary>Little, much, and what is refused.</summary>
public class EdgeTests
{
    // As many digits as are asked for, however small or large the number.
    [Theory]
    [InlineData(1.2345678e-7, 6, "1.23457e−7")]
    [InlineData(-1.2345678e-7, 3, "−1.23e−7")]
    [InlineData(1.2345678e-7, 2, "1.2e−7")]
    [InlineData(1.2345678e9, 3, "1.23e9")]
    [InlineData(1e-4, 3, "0.0001")]
    [InlineData(1234.5678, 6, "1234.57")]
    [InlineData(1234.5678, 3, "1235")]
    [InlineData(0, 3, "0")]
    public void Numbers_have_the_digits_that_are_asked_for(double value, int digits, string expected) =>
        Assert.Equal(expected, Drawing.Numbers.Plain(value, digits));

    // What is written at a mark is where the mark is.
    [Theory]
    [InlineData(20, 2000, 6, new[] { "20", "50", "100", "200", "500", "1000", "2000" })]
    [InlineData(1e-3, 1e3, 3, new[] { "0.01", "1", "100" })]
    public void Decades_are_marked_where_they_are(double from, double to, int count, string[] labels)
    {
        var axis = Drawing.Axis.Logarithmic(from, to, count);
        Assert.Equal(labels, axis.Ticks.Select(tick => tick.Label));
        Assert.All(
            axis.Ticks,
            tick =>
                Assert.Equal(
                    Math.Log10(double.Parse(tick.Label, System.Globalization.CultureInfo.InvariantCulture)),
                    tick.At,
                    1e-9
                )
        );
    }

    [Fact]
    public void No_resonances_is_a_picture_that_says_so()
    {
        var none = Horn.Resonances(Frequency.FromHertz(20));
        Assert.Empty(none);
        Assert.Contains("No resonances", new Drawn(TuningPicture.Of(none)).Texts);
        var view = new ImpedanceView { To = Frequency.FromHertz(20) };
        var drawn = new Drawn(ImpedancePicture.Of(Horn, view));
        Assert.DoesNotContain(drawn.Texts, text => text.StartsWith('+'));
        Assert.NotEmpty(TuningPicture.WithUncertainty([]).Png());
        Assert.DoesNotContain("<img", RichView.Of(none), StringComparison.Ordinal);
    }

    // From a needle to a tunnel: 0.01 mm to 10 m wide, 1 µm to 1 km long.
    [Theory]
    [InlineData(0.01, 0.001)]
    [InlineData(0.01, 5000)]
    [InlineData(10_000, 0.001)]
    [InlineData(10_000, 1_000_000)]
    [InlineData(0.5, 20)]
    public void The_smallest_and_the_largest_bores_are_drawn(double diameter, double length) =>
        AreDrawn(diameter, length);

    [Fact]
    [Trait(Amount.Trait, Amount.Long)]
    public void A_kilometre_of_needle_is_drawn() => AreDrawn(0.01, 1_000_000);

    private static void AreDrawn(double diameter, double length)
    {
        var column = Tube(diameter, length);
        Assert.NotEmpty(BorePicture.Of(column.Bore).Png());
        Assert.NotEmpty(BorePicture.Of(column.Bore).At(PictureSize.Paper).Svg());
        var wave = StandingWavePicture.Of(column, 0.5 * column.HighestFrequency);
        Assert.NotEmpty(wave.Png());
        Assert.NotEmpty(ImpedancePicture.Of(column).Png());
        Assert.NotEmpty(RichView.Of(column));
    }

    [Fact]
    public void Without_losses_the_peaks_are_cut_off()
    {
        Assert.NotEmpty(ImpedancePicture.Of(Ideal).Png());
        Assert.NotEmpty(StandingWavePicture.Of(Ideal, Ideal.FirstResonances(1)[0].Frequency).Png());
        Assert.NotEmpty(RichView.Of(Ideal));
    }

    [Fact]
    public void Many_resonances_are_counted_and_the_first_are_shown()
    {
        var long_ = Tube(30, 20_000).FirstResonances(100);
        Assert.Equal(100, long_.Count);
        var drawn = new Drawn(TuningPicture.Of([.. long_]));
        Assert.Contains(drawn.Texts, text => text.EndsWith("the first 30 of 100", StringComparison.Ordinal));
        var low = new Drawn(TuningPicture.Of([.. long_]).At(PictureSize.OnScreen(600, 240)));
        Assert.Contains(low.Texts, text => text.Contains("of 100", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(200, 120)]
    [InlineData(200, 2400)]
    [InlineData(2400, 120)]
    public void Every_allowed_size_can_be_drawn(int width, int height)
    {
        foreach (var picture in Pictures.Values)
        {
            var sized = picture.At(PictureSize.OnScreen(width, height));
            Assert.NotEmpty(sized.Png());
            Assert.NotEmpty(sized.Svg());
        }
    }

    [Fact]
    public void Sizes_out_of_range_and_numbers_that_are_none_are_refused()
    {
        Assert.Contains(
            "allowed is 200 pixels to 2400 pixels",
            Assert.Throws<ArgumentOutOfRangeException>(() => PictureSize.OnScreen(100)).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => PictureSize.OnScreen(600, 5000));
        // The quantities themselves take no NaN.
        Assert.ThrowsAny<ArgumentException>(() => PictureSize.OnPaper(Mm(double.NaN)));
        Assert.Throws<ArgumentOutOfRangeException>(() => PictureSize.OnPaper(Mm(100), Mm(10)));
        Assert.ThrowsAny<ArgumentException>(() => PictureSize.OnPaper(Mm(100), Mm(double.PositiveInfinity)));
        Assert.Throws<ArgumentOutOfRangeException>(() => PictureSize.Screen.AtScale(double.NaN));
        Assert.ThrowsAny<ArgumentException>(() =>
            new ImpedanceView { From = Frequency.FromHertz(double.NaN) }
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new ImpedanceView { From = Frequency.FromHertz(-1) }
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => new ImpedanceView { To = Frequency.Zero });
        Assert.Throws<ArgumentOutOfRangeException>(() => StandingWavePicture.Of(Horn, Frequency.Zero));
    }

    [Fact]
    public void A_view_without_anything_in_it_is_refused_in_words()
    {
        var backwards = new ImpedanceView { From = Frequency.FromHertz(500), To = Frequency.FromHertz(100) };
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => ImpedancePicture.Of(Horn, backwards));
        Assert.Contains("from 500 Hz to 100 Hz", error.Message, StringComparison.Ordinal);
        var tooHigh = new ImpedanceView { To = Frequency.FromHertz(1e6) };
        Assert.Throws<ArgumentOutOfRangeException>(() => ImpedancePicture.Of(Horn, tooHigh));
        var curve = Horn.Impedance(FrequencyGrid.Linear(100, 200, 50));
        var beside = new ImpedanceView { From = Frequency.FromHertz(300) };
        Assert.Contains(
            "0 frequencies",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => ImpedancePicture.OfCurve(curve, null, beside))
                .Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "<p>",
            RichView.Of(Horn.Impedance(FrequencyGrid.FromHertz(100))),
            StringComparison.Ordinal
        );
    }
}
