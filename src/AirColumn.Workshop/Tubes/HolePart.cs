using UnitsNet;

namespace AirColumn.Workshop.Tubes;

/// <summary>
/// A finger hole, drilled through the wall of the pipe before it in the list. A bell or a bend formed from that pipe may stand between the
/// pipe and the hole. The height of the hole is the thickness of the pipe's wall. Immutable.
/// </summary>
public sealed record HolePart : TubePart
{
    /// <summary>Describes a hole.</summary>
    /// <param name="name">The maker's name for it; not empty.</param>
    /// <param name="diameter">Its diameter: 1 mm to 100 mm.</param>
    /// <param name="at">
    /// Distance from an end of the sawn pipe to the middle of the hole, along the wall before anything is formed: 0.1 mm to 10 m.
    /// </param>
    /// <param name="from">The end of the pipe from which the hole is measured.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range, or the end is not defined.</exception>
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

    /// <summary>Distance from the end named by <see cref="From"/> to the middle of the hole, along the sawn pipe.</summary>
    public Length At { get; }

    /// <summary>The end of the pipe from which the hole keeps its distance, whatever the length of the pipe.</summary>
    public PipeEnd From { get; }

    /// <summary>True if the hole stays open while the drone sounds, as a vent does. False, the default: a finger closes it.</summary>
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
