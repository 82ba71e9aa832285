using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>
/// A hole for a finger, drilled through the wall of the pipe before it; what is formed from that pipe may lie between. Its height is the pipe's wall. Immutable.
/// </summary>
public sealed record HolePart : TubePart
{
    /// <summary>Describes a hole.</summary>
    /// <param name="name">What the maker calls it; not empty.</param>
    /// <param name="diameter">Its diameter: 1 mm to 100 mm.</param>
    /// <param name="at">From an end of the sawn pipe to the middle of the hole, along the wall before anything is formed: 0.1 mm to 10 m.</param>
    /// <param name="from">From which end that is measured.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range, or the end not among the named ones.</exception>
    public HolePart(string name, Length diameter, Length at, PipeEnd from)
        : base(name)
    {
        Diameter = Length.FromMillimeters(
            Require.InRange(diameter.Millimeters, 1, 100, "mm", nameof(diameter))
        );
        At = Caliper.AxialLength(at);
        From = Require.Named(from);
    }

    /// <summary>Its diameter.</summary>
    public Length Diameter { get; }

    /// <summary>From that end of the sawn pipe to its middle.</summary>
    public Length At { get; }

    /// <summary>The end of the pipe that it keeps its distance from, whatever the pipe's length.</summary>
    public PipeEnd From { get; }

    /// <summary>Whether it is left open for the drone, as a vent is; closed by a finger if left out.</summary>
    public bool IsOpenInDrone { get; init; }

    internal double RadiusMillimetres => Diameter.Millimeters / 2;
}

/// <summary>An end of a pipe.</summary>
public enum PipeEnd
{
    /// <summary>The end towards the lips.</summary>
    Lips,

    /// <summary>The end towards the open end of the tube.</summary>
    Open,
}
