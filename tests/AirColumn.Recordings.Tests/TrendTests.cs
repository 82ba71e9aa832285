using AirColumn.Recordings.Tones;

namespace AirColumn.Recordings.Tests;

/// <summary>Least squares of a parabola.</summary>
public class TrendTests
{
    [Fact]
    public void Of_a_parabola_nothing_is_left()
    {
        var trend = new Trend([.. Enumerable.Range(0, 9).Select(m => 5 - 2.0 * m + 0.25 * m * m)]);
        Assert.Equal(0.25, trend.Curvature, 1e-12);
        Assert.All(trend.Left, left => Assert.Equal(0, left, 1e-12));
    }

    // What a single value adds to the trend at each place, from the parabola through it and noughts.
    [Fact]
    public void A_value_moves_the_trend_by_its_share()
    {
        for (var k = 0; k < 7; k++)
        {
            var values = new double[7];
            values[k] = 1;
            var trend = new Trend(values);
            for (var m = 0; m < values.Length; m++)
            {
                Assert.Equal(values[m] - trend.Left[m], trend.Share(m, k), 1e-12);
            }
        }
    }
}
