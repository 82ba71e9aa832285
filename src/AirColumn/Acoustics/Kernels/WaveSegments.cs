namespace AirColumn.Acoustics.Kernels;

/// <summary>
/// The frequency axis in segments of a few resonances, over each of which the state at the blown end is one series; made when
/// first asked for, then kept. Safe to share between threads.
/// </summary>
internal sealed class WaveSegments
{
    private const int ModesPerSegment = 12;
    private const double LowestShare = 1.0 / 32; // of the width, below which √f turns too fast
    private const int MostSegments = 3000;

    // Frequencies for which a finer fit is worth while.
    private const int FewestOfFit = 40;

    // Of the waves; beside a sharp resonance Z is some hundred times as far off.
    private const double InterpolationTolerance = 1e-13;

    // Where the waves grow so much over a segment, or dip so low, that it may be off by more, exact values are taken.
    private const double MostError = 1e-8;

    private readonly WaveColumn waves;
    private readonly double tolerance;
    private readonly double spacing; // Hz, of the modes of a plain tube
    private readonly double[] ends; // Hz, rising
    private readonly Fitted?[] segments;
    private readonly Fitted?[] fines; // for interpolated curves

    public WaveSegments(WaveColumn waves, double speedOfSound, double tolerance)
    {
        this.waves = waves;
        this.tolerance = tolerance;
        spacing = speedOfSound / (2 * waves.Length);
        ends = Ends(Math.Min(waves.Bands.Highest, MostSegments * ModesPerSegment * spacing));
        segments = new Fitted?[ends.Length - 1];
        fines = new Fitted?[ends.Length - 1];
    }

    /// <summary>
    /// The state at the blown end around a frequency, as one smooth function that reaches beyond it by half a resonance or to a
    /// corner; null where waves do not serve.
    /// </summary>
    public WaveSegment? At(double hertz)
    {
        if (IndexOf(hertz) is not { } index)
        {
            return null;
        }

        var segment = Volatile.Read(ref segments[index]);
        if (segment is null)
        {
            segment = new Fitted(Segment(ends[index], ends[index + 1]));
            Volatile.Write(ref segments[index], segment);
        }

        return segment.Segment;
    }

    /// <summary>Whether the segment around a frequency is there already.</summary>
    public bool Has(double hertz) =>
        IndexOf(hertz) is { } index && Volatile.Read(ref segments[index]) is not null;

    /// <summary>Between which frequencies, Hz, the state is smooth enough for one series; null where waves do not serve.</summary>
    public (double Low, double High)? SmoothAround(double hertz) =>
        IndexOf(hertz) is { } index ? (ends[index], ends[index + 1]) : null;

    /// <summary>The same for what changes so much faster that a series of it serves fewer resonances.</summary>
    public (double Low, double High)? SmoothAround(double hertz, int resonances)
    {
        if (SmoothAround(hertz) is not var (low, high))
        {
            return null;
        }

        var count = Math.Max(1, Math.Round((high - low) / (resonances * spacing)));
        var part = Math.Min(count - 1, Math.Floor((hertz - low) / (high - low) * count));
        return (low + part / count * (high - low), low + (part + 1) / count * (high - low));
    }

    /// <summary>Z at rising frequencies, interpolated; how far it may be off, relative.</summary>
    public double Interpolate(ReadOnlySpan<double> hertz, Span<double> real, Span<double> imaginary)
    {
        var error = 0.0;
        var i = 0;
        while (i < hertz.Length)
        {
            var end = i + 1;
            WaveSegment? segment = null;
            if (IndexOf(hertz[i]) is { } index)
            {
                while (end < hertz.Length && hertz[end] < ends[index + 1])
                {
                    end++;
                }

                segment = Fine(index, hertz[i..end]);
            }

            var off = segment?.Impedances(hertz[i..end], real[i..end], imaginary[i..end]);
            if (off <= MostError)
            {
                error = Math.Max(error, off.Value);
            }
            else
            {
                waves.Impedances(hertz[i..end], real[i..end], imaginary[i..end]);
            }

            i = end;
        }

        return error;
    }

    // A finer fit over what is asked of a segment; over all of it where that is more than was asked before. Null where there are fewer
    // frequencies than nodes, which gains nothing, or no fit.
    private WaveSegment? Fine(int index, ReadOnlySpan<double> hertz)
    {
        var (low, high) = (hertz[0], hertz[^1]);
        var fine = Volatile.Read(ref fines[index]);
        if (fine is { Segment: null } || fine?.Segment?.Holds(low) == true && fine.Segment.Holds(high))
        {
            return fine.Segment;
        }

        if (fine is not null)
        {
            (low, high) = (ends[index], ends[index + 1]);
        }

        if (
            hertz.Length < FewestOfFit
            || hertz.Length < WaveSegment.FewestNodes(waves, low, high, InterpolationTolerance)
        )
        {
            return null;
        }

        var fitted = WaveSegment.Fit(
            waves,
            low,
            high,
            Math.Min(tolerance, InterpolationTolerance),
            InterpolationTolerance
        );
        // A narrower one that there is stays if there is none for all.
        if (fitted is not null || fine is null)
        {
            Volatile.Write(ref fines[index], new Fitted(fitted));
        }

        return fitted;
    }

    private int? IndexOf(double hertz)
    {
        if (hertz < waves.Lowest || hertz >= ends[^1] || !waves.Load.IsSmooth)
        {
            return null;
        }

        var index = Array.BinarySearch(ends, hertz);
        return index >= 0 ? index : ~index - 1;
    }

    private WaveSegment? Segment(double low, double high)
    {
        var reach = 0.5 * spacing;
        var below = Math.Max(low - Math.Min(reach, 0.3 * low), waves.Lowest);
        var above = Math.Min(high + reach, ends[^1]);
        foreach (var corner in waves.Corners)
        {
            below = corner <= low ? Math.Max(below, corner) : below;
            above = corner >= high ? Math.Min(above, corner) : above;
        }

        return WaveSegment.Fit(waves, below, above, tolerance, 0.1 * tolerance);
    }

    // A few resonances each, narrower below, where √f turns; and at corners.
    private double[] Ends(double end)
    {
        var found = new SortedSet<double> { waves.Lowest };
        var step = ModesPerSegment * spacing;
        for (var f = step; f < end * (1 - 1e-9); f += step)
        {
            found.Add(f);
        }

        for (var f = LowestShare * step; f > waves.Lowest; f *= LowestShare)
        {
            found.Add(f);
        }

        found.UnionWith(waves.Corners.Where(corner => corner > waves.Lowest && corner < end));
        found.Add(end);
        return [.. found];
    }

    // A fit, or that there is none.
    private sealed record Fitted(WaveSegment? Segment);
}
