namespace AirColumn.Accuracy;

/// <summary>The range of an axis and its round ticks.</summary>
internal sealed class Axis
{
    private const double SmallestShown = 1e-17;

    private readonly bool log;
    private readonly double low;
    private readonly double high;

    private Axis(bool log, double low, double high, IReadOnlyList<double> ticks)
    {
        (this.log, this.low, this.high) = (log, low, high);
        Ticks = ticks;
    }

    public IReadOnlyList<double> Ticks { get; }

    public static Axis Of(IEnumerable<double> values, bool log)
    {
        var all = values.Select(value => log ? Math.Log10(Math.Max(value, SmallestShown)) : value).ToList();
        var (low, high) = (all.Min(), all.Max());
        var step = log ? Math.Max(1, Math.Ceiling((high - low) / 8)) : Round((high - low) / 6);
        low = step * Math.Floor(low / step + 1e-9);
        high = step * Math.Ceiling(high / step - 1e-9);
        if (high <= low)
        {
            high = low + step;
        }

        var count = (int)Math.Round((high - low) / step);
        var ticks = Enumerable
            .Range(0, count + 1)
            .Select(i => low + i * step)
            .Select(tick => log ? Math.Pow(10, tick) : Math.Round(tick, 9))
            .ToList();
        return new Axis(log, low, high, ticks);
    }

    /// <summary>0 at the low end, 1 at the high one.</summary>
    public double Share(double value) =>
        ((log ? Math.Log10(Math.Max(value, SmallestShown)) : value) - low) / (high - low);

    private static double Round(double step)
    {
        if (!(step > 0))
        {
            return 1;
        }

        var decade = Math.Pow(10, Math.Floor(Math.Log10(step)));
        return decade
            * (step / decade) switch
            {
                < 1.5 => 1,
                < 3.5 => 2,
                < 7.5 => 5,
                _ => 10,
            };
    }
}
