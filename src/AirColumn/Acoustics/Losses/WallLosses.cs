namespace AirColumn;

/// <summary>The model of friction and heat conduction at the bore wall.</summary>
public enum WallLosses
{
    /// <summary>
    /// Viscous and thermal boundary layers of any thickness in a circular duct, exact for a cylinder (source:
    /// zwikker1949, ch. II; tijdeman1975). The default.
    /// </summary>
    Full,

    /// <summary>A rigid, slippery, heat-insulating wall: no losses but radiation.</summary>
    None,

    /// <summary>
    /// The first-order correction for boundary layers thin against the radius (Kirchhoff; source: keefe1984), for
    /// comparison. Its error is more than 1 % of the loss if radius·√(ωρ/μ) is below about 100.
    /// </summary>
    LargeTube,
}
