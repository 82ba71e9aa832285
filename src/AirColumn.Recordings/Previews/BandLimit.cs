namespace AirColumn.Recordings.Previews;

/// <summary>
/// How far up a column is rendered: whole to six tenths of where its model ends, then fading. Above, what reaches the far end counts
/// as gone: of a wide open end hardly anything returns there.
/// </summary>
internal readonly struct BandLimit
{
    private const double Whole = 0.6;

    public BandLimit(Column column, double sampleRate) =>
        Top = Math.Min(column.HighestFrequency.Hertz * (1 - 1e-9), 0.45 * sampleRate);

    /// <summary>Where nothing is left, Hz.</summary>
    public double Top { get; }

    /// <summary>How many multiples of a spacing in Hz, 0 included, lie in it.</summary>
    public int Count(double spacing) => (int)(Top / spacing) + 1;

    /// <summary>A frequency in Hz, or where the whole part ends if that is lower.</summary>
    public double WholeUpTo(double hertz) => Math.Min(hertz, Whole * Top);

    /// <summary>1 in what is rendered whole, 0 at its top; smooth between, so that the pulses in time are short.</summary>
    public double WeightAt(double hertz)
    {
        var x = (hertz / Top - Whole) / (1 - Whole);
        return x <= 0 ? 1
            : x >= 1 ? 0
            : 0.5 + 0.5 * Math.Cos(Math.PI * x);
    }
}
