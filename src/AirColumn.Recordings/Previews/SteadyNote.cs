namespace AirColumn.Recordings.Previews;

/// <summary>
/// The frequency of a steady stretch from the moments at which the lips open through their mean, a straight line through them, and
/// how steady it is.
/// </summary>
/// <param name="Hertz">Playing frequency; 0 where there are no ten periods.</param>
/// <param name="DriftCents">The second half of the stretch against the first.</param>
/// <param name="Jitter">The largest distance of a moment from the line, in periods.</param>
/// <param name="Growth">Mean square of the pressure of the second half over that of the first.</param>
/// <param name="Pressure">Root mean square of the pressure about its mean, Pa.</param>
internal readonly record struct SteadyNote(
    double Hertz,
    double DriftCents,
    double Jitter,
    double Growth,
    double Pressure
)
{
    private const int FewestPeriods = 10;

    /// <summary>Of a stretch of opening and pressure, as many samples of each.</summary>
    public static SteadyNote Of(
        ReadOnlySpan<double> opening,
        ReadOnlySpan<double> pressure,
        double sampleRate
    )
    {
        var half = pressure.Length / 2;
        var (first, second) = (Variance(pressure[..half]), Variance(pressure[half..]));
        var rms = Math.Sqrt((first + second) / 2);
        var moments = Moments(opening);
        if (moments.Count < FewestPeriods)
        {
            return new(0, 0, 0, 0, rms);
        }

        var all = Line(moments);
        var middle = moments.Count / 2;
        var drift = 1200 * Math.Log2(Line(moments[..middle]).Period / Line(moments[middle..]).Period);
        return new(sampleRate / all.Period, drift, all.Worst / all.Period, second / first, rms);
    }

    private static List<double> Moments(ReadOnlySpan<double> opening)
    {
        var mean = Mean(opening);
        var moments = new List<double>();
        for (var i = 1; i < opening.Length; i++)
        {
            var (a, b) = (opening[i - 1] - mean, opening[i] - mean);
            if (a < 0 && b >= 0)
            {
                moments.Add(i - 1 + a / (a - b));
            }
        }

        return moments;
    }

    // Least squares; the largest residual too.
    private static (double Period, double Worst) Line(List<double> moments)
    {
        var (count, mean) = ((moments.Count - 1) / 2.0, moments.Average());
        var (product, square) = (0.0, 0.0);
        for (var k = 0; k < moments.Count; k++)
        {
            product += (k - count) * (moments[k] - mean);
            square += (k - count) * (k - count);
        }

        var period = product / square;
        return (period, moments.Select((t, k) => Math.Abs(t - mean - period * (k - count))).Max());
    }

    private static double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum / values.Length;
    }

    private static double Variance(ReadOnlySpan<double> values)
    {
        var (mean, sum) = (Mean(values), 0.0);
        foreach (var value in values)
        {
            sum += (value - mean) * (value - mean);
        }

        return sum / values.Length;
    }
}
