namespace AirColumn.Recordings.Previews;

/// <summary>What lips and column did, sample by sample.</summary>
internal sealed class LipMotion(int length)
{
    /// <summary>h, m; below 0 the lips are pressed together.</summary>
    public double[] Opening { get; } = new double[length];

    /// <summary>p at the blown end, Pa.</summary>
    public double[] Pressure { get; } = new double[length];

    /// <summary>p + ZcU, Pa: twice the wave that leaves the blown end.</summary>
    public double[] Outgoing { get; } = new double[length];
}
