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

    /// <summary>
    /// ti, m (dalmont2002). A static field solution in three dimensions lies below it, by up to 0.03 b; both tend to that of a
    /// pipe in a baffle for b ≪ a.
    /// </summary>
    public double InnerLength
    {
        get
        {
            var d = Delta;
            return Radius * (0.82 + d * (-0.193 + d * (-1.09 + d * (1.27 - d * 0.71))));
        }
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
