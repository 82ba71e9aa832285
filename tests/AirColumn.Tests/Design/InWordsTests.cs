using System.Globalization;
using System.Text.RegularExpressions;
using FsCheck.Xunit;
using UnitsNet;

namespace AirColumn.Tests.Design;

/// <summary>Targets and results in words: their numbers are those of the values, counted from 1.</summary>
public partial class InWordsTests
{
    // Two digits of the range, or whole units, and no value farther off than that allows; the sign of the change.
    [Property]
    public void A_fitted_value_is_rounded_as_its_range_is(int seed)
    {
        var random = new Random(seed);
        var deviation = Math.Pow(10, 4 * random.NextDouble() - 2.5);
        var change = 6 * deviation * (random.NextDouble() - 0.5);
        var fitted = new FittedValue(ColumnParameter.Pressure, 101_325, 500, 101_325 + change, deviation);
        var words = Value().Match(fitted.ToString());
        Assert.True(words.Success, fitted.ToString());
        double Of(string group) => double.Parse(words.Groups[group].Value, CultureInfo.InvariantCulture);
        var range = 1.959964 * deviation;
        Assert.Equal(range, fitted.PlusMinus, 1e-6 * range);
        // The largest power of ten that leaves two digits.
        var unit = 1.0;
        while (range / unit < 10)
        {
            unit /= 10;
        }

        foreach (var (exact, said) in new[] { (Math.Abs(change), Of("value")), (range, Of("range")) })
        {
            Assert.InRange(Math.Abs(exact - said), 0, unit / 2 + 1e-9);
            Assert.Equal(Math.Round(said / unit), said / unit, 1e-6);
        }

        Assert.Equal(change < 0 ? "−" : "+", words.Groups["sign"].Value);
    }

    [Fact]
    public void Targets_count_from_one()
    {
        Assert.Equal(
            "second resonance on 146.5 Hz",
            ShapeTarget.Resonance(2, Frequency.FromHertz(146.5)).ToString()
        );
        Assert.Equal(
            "third resonance 1902 cents above the first with xo",
            (ShapeTarget.Interval(1, 3, 1902) with { Fingering = Fingering.Parse("xo") }).ToString()
        );
        Assert.Equal("1234.5 mm long", ShapeTarget.TotalLength(Length.FromMillimeters(1234.5)).ToString());
        Assert.Equal("nowhere narrowing from section 3 to 6", ShapeTarget.Widening(2, 5).ToString());
        var level = ShapeTarget.Level(1, 2.5e7).ToString();
        Assert.EndsWith(" at the first resonance", level, StringComparison.Ordinal);
        Assert.Equal(
            2.5e7,
            double.Parse(level["|Z| of ".Length..].Split(' ')[0], CultureInfo.InvariantCulture),
            1
        );
    }

    [GeneratedRegex("(?<sign>[−+])(?<value>[0-9.]+) Pa ± (?<range>[0-9.]+) Pa$")]
    private static partial Regex Value();
}
