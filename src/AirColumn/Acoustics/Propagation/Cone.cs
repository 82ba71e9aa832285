namespace AirColumn.Acoustics.Propagation;

/// <summary>A cone on the way from the far end.</summary>
/// <param name="Far">Radius at its far end, m.</param>
/// <param name="Near">Radius at its near end, m.</param>
/// <param name="Length">m.</param>
/// <param name="Front">m, what the fronts multiply the inertia by.</param>
internal readonly record struct Cone(double Far, double Near, double Length, double Front)
{
    /// <summary>da/dy, y growing towards the blown end.</summary>
    public double Slope => (Near - Far) / Length;
}

/// <summary>An end of a run: radius, what the fronts multiply the inertia by, slope towards the blown end.</summary>
internal readonly record struct Port(double Radius, double Front, double Slope);
