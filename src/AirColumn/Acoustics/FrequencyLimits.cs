namespace AirColumn;

/// <summary>Between which frequencies, Hz, a column answers.</summary>
internal static class FrequencyLimits
{
    /// <summary>Whether all values lie within two limits; false if one lies outside them or is not a number.</summary>
    public static bool Hold(ReadOnlySpan<double> values, double low, double high)
    {
        var all = true;
        foreach (var value in values)
        {
            all &= value >= low & value <= high;
        }

        return all;
    }

    /// <summary>Throws where the radiation of an open end is not known, or nothing is sound.</summary>
    public static void Require(double hertz, double lowest, double highest, string parameter)
    {
        if (!(hertz >= lowest))
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                hertz,
                $"{parameter} is {AirColumn.Require.Show(hertz, "Hz")}; allowed is {AirColumn.Require.Show(lowest, "Hz")} and more."
            );
        }

        if (hertz > highest)
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                hertz,
                $"{parameter} is {AirColumn.Require.Show(hertz, "Hz")}; the radiation of this open end is known up to "
                    + $"{AirColumn.Require.Show(highest, "Hz")}. Ask for a lower frequency."
            );
        }
    }
}
