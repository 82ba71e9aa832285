using AirColumn.Acoustics.Radiation;

namespace AirColumn.Acoustics.Junctions;

/// <summary>
/// The air at the foot of a hole or branch of radius b in the side of a bore of radius a, as lengths: static limit, b/a
/// from 0 to 1.
/// </summary>
/// <remarks>
/// A symmetric and an antisymmetric part (keefe1990, dubos1999): in the middle of the T the shunt Zs − Za/4, on either side
/// Za/2, where Za = jωρ·ta/(πa²) and Zs is that of the opening with the inner length ti in series.
/// <see cref="MatchingLength"/> is the volume between the curved wall and the plane that touches it, over πb².
/// </remarks>
internal readonly record struct SideOpening(double BoreRadius, double Radius, double Height, bool IsOpen)
{
    private double Delta => Radius / BoreRadius;

    // Cut-on of the modes of one and of two nodal diameters of a duct over c/a: first zeros of J₁' and J₂'.
    private const double FirstCutOnKa = 1.8411837813;
    private const double SecondCutOnKa = 3.0542369282;

    // Of the length at the foot over bδ: what a point source in the wall puts into the first of them, 1/[α(1 − 1/α²)], and a second one that
    // stands for all above it: those of two, three and four nodal diameters, the first radial one and the next of one diameter grow as much.
    private const double FirstMode = 0.7704;
    private const double OtherModes = 1.21;

    /// <summary>
    /// ti, m, at low frequency: a fit to static field solutions in three dimensions within 0.003 b (tone-hole-static.csv, tone-hole-field.csv). For
    /// b ≪ a it is that of a pipe in a baffle. The published fit (dalmont2002) lies above it, by up to 0.03 b.
    /// </summary>
    public double InnerLength
    {
        get
        {
            var d = Delta;
            return Radius
                * (
                    BaffledTable.LowFrequencyEndCorrection
                    + d * (-0.231 + d * (-0.946 + d * (0.905 - d * 0.480)))
                );
        }
    }

    /// <summary>
    /// The mass in the middle of the T, kg/m⁴: ρ·ti/(πb²) less a quarter of that in series. It grows with frequency by the modes of the bore at
    /// the foot.
    /// </summary>
    public GrowingMass FootMass(double density, double speedOfSound)
    {
        var unit = density / (Math.PI * Radius * Radius);
        var mode = unit * Radius * Delta;
        return new(
            unit * InnerLength - density * SeriesLength / (4 * Math.PI * BoreRadius * BoreRadius),
            (FirstMode * mode, FirstCutOnKa * speedOfSound / BoreRadius),
            (OtherModes * mode, SecondCutOnKa * speedOfSound / BoreRadius)
        );
    }

    /// <summary>tm, m (nederveen1998): within 1 % of the integral over the wall.</summary>
    public double MatchingLength
    {
        get
        {
            var d = Delta;
            return Radius * d / 8 * (1 + 0.207 * d * d * d);
        }
    }

    /// <summary>
    /// ta, m, negative: the flow widens into the opening (lefebvre2012; coefficients from memory, compared with a static field
    /// solution).
    /// </summary>
    public double SeriesLength
    {
        get
        {
            var depth = Height / Radius;
            var share = IsOpen ? 0.35 - 0.06 * Math.Tanh(2.7 * depth) : 0.12 + 0.17 * Math.Tanh(2.4 * depth);
            return -share * Radius * Delta * Delta;
        }
    }
}
