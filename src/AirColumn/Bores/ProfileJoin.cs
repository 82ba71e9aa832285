namespace AirColumn.Bores;

/// <summary>The course of the wall of a measured profile between its points.</summary>
public enum ProfileJoin
{
    /// <summary>Straight from point to point.</summary>
    Straight,

    /// <summary>
    /// A cubic between each two points with a common slope where they meet, which widens or narrows only where the points do
    /// and so never overshoots them (source: fritsch1984).
    /// </summary>
    Smooth,
}
