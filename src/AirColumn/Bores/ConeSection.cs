using UnitsNet;

namespace AirColumn;

/// <summary>A frustum: the diameter changes in proportion to the distance along the axis.</summary>
public sealed record ConeSection : Section
{
    private readonly double inlet;
    private readonly double outlet;

    /// <summary>Makes a frustum of a cone, opening or narrowing; equal diameters make a cylinder.</summary>
    /// <param name="from">Inside diameter nearer the blown end: 0.01 mm to 10 m. A cone cannot reach its apex.</param>
    /// <param name="to">Inside diameter nearer the far end: 0.01 mm to 10 m.</param>
    /// <param name="length">Axial length: 1 µm to 1 km.</param>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is outside its range or not a number.</exception>
    public ConeSection(Length from, Length to, Length length)
        : base(Dimension.AxialLength(length))
    {
        inlet = Dimension.RadiusOf(from);
        outlet = Dimension.RadiusOf(to);
    }

    private ConeSection(double inlet, double outlet, double length)
        : base(length) => (this.inlet, this.outlet) = (inlet, outlet);

    internal override double LargestRadius => Math.Max(inlet, outlet);

    /// <inheritdoc/>
    public override ConeSection WithLength(Length length) =>
        new(Length.FromMeters(2 * inlet), Length.FromMeters(2 * outlet), length);

    internal override ConeSection WithEnds(double inlet, double outlet) =>
        new(Length.FromMeters(2 * inlet), Length.FromMeters(2 * outlet), Length.FromMeters(LengthMetres));

    internal override ConeSection Slice(double from, double to) =>
        new(WallAt(from).Radius, WallAt(to).Radius, to - from);

    internal override Wall WallAt(double x)
    {
        var slope = (outlet - inlet) / LengthMetres;
        // From the nearer end, so that both ends come out exactly.
        var radius = 2 * x < LengthMetres ? inlet + slope * x : outlet - slope * (LengthMetres - x);
        return new Wall(radius, slope, 0);
    }
}
