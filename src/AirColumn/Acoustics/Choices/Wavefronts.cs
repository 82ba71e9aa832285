namespace AirColumn;

/// <summary>The model of the wave fronts where the bore widens or narrows.</summary>
public enum Wavefronts
{
    /// <summary>
    /// Fronts that bulge as the wall slopes and turns: the air moves across the axis as it moves along it, and that kinetic energy,
    /// least among flows that crowd more or less towards the axis, multiplies the series impedance by
    /// 1 + a'²/2 − d²/(24(2 + a'²) + 1.25d²), a' = da/dx, d = a·a'' − 3a'² (second order of the slender-duct expansion; after
    /// rayleigh1916). At an open end the taper behind the mouth counts too. Not valid for wall slopes above 45°.
    /// </summary>
    Curved,

    /// <summary>Only the first order of the expansion for curved fronts, 1 + a'²/2 (rayleigh1916); for comparison.</summary>
    Sloped,

    /// <summary>Plane fronts, the textbook one-dimensional horn equation; for comparison.</summary>
    Plane,

    /// <summary>
    /// Several radial modes of the bore are carried along it and radiate together (pagneux1996, amir1997); <see cref="ColumnOptions.Modes"/> sets
    /// their number. For steep flares, waves within a radius, steps near each other. Holes,
    /// branches and bends act on the plane mode alone.
    /// </summary>
    Multimodal,

    /// <summary>
    /// <see cref="Curved"/> where its estimated error is below half a cent, <see cref="Multimodal"/> elsewhere: where corners, steps and mouths
    /// influence each other, or slopes are steep. The estimate covers the whole bore and takes microseconds.
    /// <see cref="Column.Wavefronts"/> names the model chosen. The default everywhere. A column with other fronts warns if this choice would have
    /// taken modes.
    /// </summary>
    Automatic,
}
