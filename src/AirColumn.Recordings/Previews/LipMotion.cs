namespace AirColumn.Recordings.Previews;

/// <summary>What lips and column did, sample by sample: opening in m, pressure behind the lips and p + ZcU in Pa.</summary>
internal sealed class LipMotion(int length, int memory)
{
    private readonly double[] outgoing = new double[memory + length];

    /// <summary>h; below 0 the lips are pressed together.</summary>
    public double[] Opening { get; } = new double[length];

    /// <summary>p at the blown end.</summary>
    public double[] Pressure { get; } = new double[length];

    /// <summary>p + ZcU: twice the wave that leaves the blown end.</summary>
    public ReadOnlySpan<double> Outgoing => outgoing.AsSpan(memory);

    /// <summary>The outgoing wave before a sample, as far back as the column remembers; silence before the beginning.</summary>
    public ReadOnlySpan<double> Past(int sample) => outgoing.AsSpan(sample, memory);

    public void Set(int sample, double opening, double pressure, double wave)
    {
        Opening[sample] = opening;
        Pressure[sample] = pressure;
        outgoing[memory + sample] = wave;
    }
}
