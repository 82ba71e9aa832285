using UnitsNet;

namespace AirColumn;

/// <summary>The frequencies of a computation: finite, above zero, strictly increasing. Immutable.</summary>
public sealed class FrequencyGrid
{
    private readonly double[] hertz;

    private FrequencyGrid(double[] hertz)
    {
        this.hertz = hertz;
    }

    /// <summary>The number of frequencies; at least 1.</summary>
    public int Count => hertz.Length;

    /// <summary>The frequencies, Hz.</summary>
    public ReadOnlySpan<double> Hertz => hertz;

    /// <summary>The frequency of an index.</summary>
    /// <param name="index">0 to <see cref="Count"/> − 1.</param>
    public Frequency this[int index] => Frequency.FromHertz(hertz[index]);

    /// <summary>Equally spaced frequencies.</summary>
    /// <param name="from">The first: above 0.</param>
    /// <param name="to">The last: above the first.</param>
    /// <param name="points">The number of frequencies: 2 to 10 million.</param>
    /// <returns>The grid.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or not a number.</exception>
    public static FrequencyGrid Linear(Frequency from, Frequency to, int points) =>
        Linear(from.Hertz, to.Hertz, points, nameof(from), nameof(to));

    /// <summary>Equally spaced frequencies, in plain numbers.</summary>
    /// <param name="fromHertz">The first, Hz: above 0.</param>
    /// <param name="toHertz">The last, Hz: above the first.</param>
    /// <param name="points">The number of frequencies: 2 to 10 million.</param>
    /// <returns>The grid.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or not a number.</exception>
    public static FrequencyGrid Linear(double fromHertz, double toHertz, int points) =>
        Linear(fromHertz, toHertz, points, nameof(fromHertz), nameof(toHertz));

    /// <summary>Frequencies in equal ratios.</summary>
    /// <inheritdoc cref="Linear(Frequency, Frequency, int)"/>
    public static FrequencyGrid Logarithmic(Frequency from, Frequency to, int points) =>
        Logarithmic(from.Hertz, to.Hertz, points, nameof(from), nameof(to));

    /// <summary>Frequencies in equal ratios, in plain numbers.</summary>
    /// <inheritdoc cref="Linear(double, double, int)"/>
    public static FrequencyGrid Logarithmic(double fromHertz, double toHertz, int points) =>
        Logarithmic(fromHertz, toHertz, points, nameof(fromHertz), nameof(toHertz));

    /// <summary>Given frequencies.</summary>
    /// <param name="hertz">At least one, Hz: above 0, strictly increasing.</param>
    /// <returns>The grid.</returns>
    /// <exception cref="ArgumentException">
    /// There is no frequency, a frequency is not above zero, or the frequencies do not increase.
    /// </exception>
    public static FrequencyGrid FromHertz(params ReadOnlySpan<double> hertz)
    {
        if (hertz.IsEmpty)
        {
            throw new ArgumentException("There are no frequencies; give at least 1.", nameof(hertz));
        }

        for (var i = 0; i < hertz.Length; i++)
        {
            Require.Positive(hertz[i], "Hz", $"hertz[{i}]");
            if (i > 0 && hertz[i] <= hertz[i - 1])
            {
                throw new ArgumentException(
                    $"Frequency {i + 1} is {Require.Show(hertz[i], "Hz")}, not above the one before it, "
                        + $"{Require.Show(hertz[i - 1], "Hz")}; give them in increasing order.",
                    nameof(hertz)
                );
            }
        }

        return new FrequencyGrid(hertz.ToArray());
    }

    private static FrequencyGrid Linear(double from, double to, int points, string first, string last)
    {
        RequireSpan(from, to, points, first, last);
        return Spaced(from, to, points, t => from + t * (to - from));
    }

    private static FrequencyGrid Logarithmic(double from, double to, int points, string first, string last)
    {
        RequireSpan(from, to, points, first, last);
        var ratio = to / from;
        return Spaced(from, to, points, t => from * Math.Pow(ratio, t));
    }

    private static FrequencyGrid Spaced(double from, double to, int points, Func<double, double> at)
    {
        var hertz = new double[points];
        for (var i = 0; i < points; i++)
        {
            hertz[i] = at((double)i / (points - 1));
        }

        (hertz[0], hertz[^1]) = (from, to);
        return FromHertz(hertz);
    }

    private static void RequireSpan(double from, double to, int points, string first, string last)
    {
        Require.Positive(from, "Hz", first);
        Require.Positive(to, "Hz", last);
        if (to <= from)
        {
            throw new ArgumentOutOfRangeException(
                last,
                to,
                $"{last} is {Require.Show(to, "Hz")}; it must be above {first}, {Require.Show(from, "Hz")}."
            );
        }

        Require.InRange(points, 2, 10_000_000, "");
    }

    /// <summary>The number of frequencies, the lowest and the highest.</summary>
    /// <returns>The text.</returns>
    public override string ToString() =>
        Count == 1
            ? $"1 frequency, {Require.Show(hertz[0], "Hz")}"
            : $"{Count} frequencies, {Require.Show(hertz[0], "Hz")} to {Require.Show(hertz[^1], "Hz")}";
}
