using AirColumn.Acoustics.Spectra;
using FsCheck.Xunit;

namespace AirColumn.Tests.Acoustics.Spectra;

/// <summary>Against what looking at each of them says.</summary>
public class RisingFrequenciesTests
{
    [Property]
    public bool They_rise_where_none_is_below_the_one_before(byte[] some)
    {
        double[] hertz = [.. some.Select(value => (double)(value % 8))];
        var sorted = hertz.Order().ToArray();
        var last = hertz.Length == 0 ? [] : sorted.Append(sorted[0] - 1).ToArray();
        return RisingFrequencies.Are(sorted)
            && !(last.Length > 0 && RisingFrequencies.Are(last))
            && RisingFrequencies.Are(hertz) == hertz.SequenceEqual(sorted);
    }

    [Property]
    public bool Those_below_a_limit_are_counted(byte[] some, byte limit)
    {
        double[] hertz = [.. some.Select(value => (double)value).Order()];
        return RisingFrequencies.CountBelow(limit, hertz) == hertz.Count(f => f < limit);
    }

    [Fact]
    public void What_is_not_a_number_does_not_rise() =>
        Assert.False(RisingFrequencies.Are([1, 2, 3, 4, 5, 6, 7, 8, 9, double.NaN]));
}
