using AirColumn.Acoustics.Vectors;

namespace AirColumn.Acoustics.Radiation;

/// <summary>What one opening of a tube hears of another outside: pressure at the one over flow out of the other, Pa·s/m³.</summary>
/// <remarks>
/// A point source in free space, jωρ·e^(−jkd)/(4πd), and beside it what the tube keeps together at low frequency. Both openings lie on one
/// line along a straight tube that stands in the open.
/// <para>
/// Two holes: that excess is e^(−0.943·(d/r)^0.713)/d, r the outer radius, a fit to the static sum over the circular modes of a long cylinder
/// (morse1948) within 0.015 of the point source from r/2 to 8r. For d ≪ r it is that of a baffle. It is kept at all frequencies, though in field solutions of two holes it grows.
/// </para>
/// <para>
/// A hole and an open end: there the tube ends, and the static field of a flow out of its end is about that of a source one outer radius farther
/// away. hole-near-end-field.csv shows how near that comes.
/// </para>
/// <para>
/// Openings that are not small send less sideways, and those in a wide tube more. The source is multiplied by a gain of either opening whose
/// square is its own radiation resistance over that of a point source. So the resistances of all openings together stay a positive matrix.
/// </para>
/// </remarks>
/// <param name="Distance">d, m.</param>
/// <param name="Excess">1/m.</param>
internal readonly record struct MutualImpedance(double Distance, double Excess)
{
    /// <summary>Two holes so far apart, m, in a tube of an outer radius, m.</summary>
    public static MutualImpedance OfHoles(double spacing, double outerRadius) =>
        new(spacing, Math.Exp(-0.943 * Math.Pow(spacing / outerRadius, 0.713)) / spacing);

    /// <summary>A hole so far from the open end, m, of a tube of an outer radius, m.</summary>
    public static MutualImpedance OfHoleAndEnd(double spacing, double outerRadius) =>
        new(spacing + outerRadius, 0);

    /// <summary>At some ω.</summary>
    /// <param name="omega">ω.</param>
    /// <param name="density">ρ outside, kg/m³.</param>
    /// <param name="speedOfSound">c outside, m/s.</param>
    /// <param name="gain">That of the one opening times that of the other.</param>
    public ComplexVector At(RealVector omega, double density, double speedOfSound, RealVector gain)
    {
        Trigonometry.SinCos(omega * (Distance / speedOfSound), out var sin, out var cos);
        var unit = omega * (density / (4 * Math.PI));
        var source = unit * gain * (1 / Distance);
        return new ComplexVector(source * sin, source * cos + unit * Excess);
    }
}
