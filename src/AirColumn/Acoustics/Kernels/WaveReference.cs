namespace AirColumn.Acoustics.Kernels;

/// <summary>What waves are measured against at a place: radius, m, and ρc, Pa·s/m.</summary>
internal readonly record struct WaveReference(double Radius, double Impedance)
{
    /// <summary>S/(ρc), m³/(Pa·s).</summary>
    public double Admittance => Math.PI * Radius * Radius / Impedance;

    /// <summary>
    /// The reflection r of a change of reference, by which waves on this side follow from those on the other: [1, r; r, 1] up
    /// to a factor.
    /// </summary>
    public double ReflectionTo(in WaveReference other)
    {
        var sum = Radius / other.Radius;
        var flow = Impedance * other.Radius / (other.Impedance * Radius);
        return (sum - flow) / (sum + flow);
    }
}
