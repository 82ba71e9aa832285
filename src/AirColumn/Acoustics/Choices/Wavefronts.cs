namespace AirColumn;

/// <summary>The model of the wave fronts where the bore widens or narrows.</summary>
public enum Wavefronts
{
    /// <summary>
    /// Fronts that bulge as the wall slopes and turns. Air that moves along the axis then moves across it too. The kinetic energy of both
    /// motions multiplies the series impedance by 1 + a'²/2 − d²/(24(2 + a'²) + 1.25d²), where a' = da/dx and d = a·a'' − 3a'². This energy
    /// is the least among flows that crowd more or less towards the axis (second order of the slender-duct expansion; after rayleigh1916). At
    /// an open end the taper behind the mouth counts too. Not valid for wall slopes above 45°.
    /// </summary>
    Curved,

    /// <summary>Only the first order of the expansion for curved fronts, 1 + a'²/2 (rayleigh1916); for comparison.</summary>
    Sloped,

    /// <summary>Plane fronts, the textbook one-dimensional horn equation; for comparison.</summary>
    Plane,

    /// <summary>
    /// Several radial modes of the bore are carried along it and radiate together (pagneux1996, amir1997);
    /// <see cref="ColumnOptions.Modes"/> sets their number. Use them for steep flares, for walls that undulate within a radius, and for
    /// steps near each other. Holes, branches and bends act on the plane mode alone.
    /// </summary>
    Multimodal,

    /// <summary>
    /// <see cref="Curved"/> if its estimated error is below half a cent. Otherwise, where corners, steps and mouths influence each other or
    /// slopes are steep, <see cref="Multimodal"/>. The estimate covers the whole bore and takes microseconds. Modes leave out that open holes
    /// hear each other (<see cref="ColumnOptions.MutualRadiation"/>). <see cref="Column.Wavefronts"/> names the model chosen. The default
    /// everywhere. A column with other fronts warns if the automatic choice would have been modes.
    /// </summary>
    Automatic,
}
