namespace AirColumn;

/// <summary>The course of the wall of a measured profile between its points.</summary>
public enum ProfileJoin
{
    /// <summary>Straight from point to point.</summary>
    Straight,

    /// <summary>
    /// A cubic between neighbouring points, with a common slope where they meet. The wall widens or narrows only where the points do, so it
    /// never overshoots them (source: fritsch1984).
    /// </summary>
    Smooth,
}
