namespace AirColumn.Acoustics;

/// <summary>What is assumed of the wave fronts where the bore widens or narrows.</summary>
public enum Wavefronts
{
    /// <summary>
    /// Fronts that bulge as the wall slopes: the air moves across the axis as it moves along it, and that kinetic energy
    /// multiplies the series impedance by 1 + a'²/2, a' = da/dx (next order of the slender-duct expansion; source:
    /// rayleigh1916). The default. It loses its footing where the wall slopes by more than 45°.
    /// </summary>
    Curved,

    /// <summary>Plane fronts, the textbook one-dimensional horn equation; for comparison.</summary>
    Plane,
}
