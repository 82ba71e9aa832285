namespace AirColumn.Plots.Drawing;

/// <summary>One axis: its ends, and where it is marked with what. On a logarithmic one all places are decimal logarithms.</summary>
internal sealed record Axis(double From, double To, IReadOnlyList<(double At, string Label)> Ticks)
{
    /// <summary>From one value to the other, marked at round numbers, about <paramref name="count"/> of them.</summary>
    public static Axis Linear(double from, double to, int count)
    {
        var step = RoundStep((to - from) / Math.Max(count, 1));
        var ticks = new List<(double, string)>();
        for (var n = Math.Ceiling(from / step - 1e-9); n * step <= to + 1e-9 * step; n++)
        {
            ticks.Add((n * step, Numbers.Plain(n * step)));
        }

        return new Axis(from, to, ticks);
    }

    /// <summary>Whole decades are marked, and where there are few 2 and 5 too.</summary>
    public static Axis Logarithmic(double from, double to, int count)
    {
        var (low, high) = (Math.Log10(from), Math.Log10(to));
        var decades = high - low;
        int[] within = 3 * decades <= count ? [1, 2, 5] : [1];
        var every = Math.Max(1, (int)Math.Ceiling(decades / Math.Max(count, 1)));
        var ticks = new List<(double, string)>();
        for (var decade = (int)Math.Floor(low); decade <= high; decade++)
        {
            foreach (var first in within)
            {
                var at = decade + Math.Log10(first);
                if (at >= low - 1e-9 && at <= high + 1e-9 && decade % every == 0)
                {
                    ticks.Add((at, Numbers.Plain(first * Math.Pow(10, decade), 3)));
                }
            }
        }

        return new Axis(low, high, ticks);
    }

    private static double RoundStep(double step)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(step)));
        return (step / power) switch
        {
            <= 1.0000001 => power,
            <= 2.0000001 => 2 * power,
            <= 5.0000001 => 5 * power,
            _ => 10 * power,
        };
    }
}
