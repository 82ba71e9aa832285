using System.Runtime.Intrinsics;

namespace AirColumn.Acoustics.Kernels;

/// <summary>Eight angular frequencies, rad/s.</summary>
internal readonly struct FrequencyLanes
{
    /// <param name="omega">The eight.</param>
    /// <param name="bottom">See <see cref="Bottom"/>.</param>
    /// <param name="top">See <see cref="Top"/>.</param>
    public FrequencyLanes(Vector512<double> omega, double bottom = double.PositiveInfinity, double top = 0)
    {
        Omega = omega;
        Root = Vector512.Sqrt(omega);
        Lowest = omega.GetElement(0);
        Highest = Lowest;
        for (var i = 1; i < ComplexLanes.Count; i++)
        {
            Lowest = Math.Min(Lowest, omega.GetElement(i));
            Highest = Math.Max(Highest, omega.GetElement(i));
        }

        (Bottom, Top) = (Math.Min(bottom, Lowest), Math.Max(top, Highest));
    }

    /// <summary>Eight of the n Chebyshev nodes in √f between two frequencies, Hz, from one of them on; <see cref="Bottom"/> and <see cref="Top"/> are the two.</summary>
    public static FrequencyLanes AtNodes(double low, double high, int n, int first)
    {
        var (scale, shift) = WaveSegment.Variable(low, high);
        Span<double> omega = stackalloc double[ComplexLanes.Count];
        for (var lane = 0; lane < omega.Length; lane++)
        {
            var root = (Math.Cos(Math.PI * (first + lane + 0.5) / n) - shift) / scale;
            omega[lane] = 2 * Math.PI * root * root;
        }

        return new FrequencyLanes(Vector512.Create<double>(omega), 2 * Math.PI * low, 2 * Math.PI * high);
    }

    public Vector512<double> Omega { get; }

    /// <summary>√ω.</summary>
    public Vector512<double> Root { get; }

    public double Lowest { get; }

    public double Highest { get; }

    /// <summary>
    /// From where on and up to where steps and terms are to do: for all frequencies of a series, so that they are counted once and what they
    /// leave out is smooth in frequency.
    /// </summary>
    public double Bottom { get; }

    public double Top { get; }
}
