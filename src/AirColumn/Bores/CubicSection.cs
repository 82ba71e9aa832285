using UnitsNet;

namespace AirColumn;

/// <summary>One piece of a smooth profile: the cubic with given radii and slopes at its ends; monotonic.</summary>
internal sealed record CubicSection : Section
{
    private readonly double inlet;
    private readonly double outlet;
    private readonly double inletSlope;
    private readonly double outletSlope;

    public CubicSection(double inlet, double outlet, double inletSlope, double outletSlope, double length)
        : base(length)
    {
        (this.inlet, this.outlet) = (inlet, outlet);
        (this.inletSlope, this.outletSlope) = (inletSlope, outletSlope);
    }

    internal override double LargestRadius => Math.Max(inlet, outlet);

    /// <inheritdoc/>
    public override Section WithLength(Length length) =>
        throw new NotSupportedException("A piece of a profile is as long as its points say.");

    internal override Section WithEnds(double inlet, double outlet) =>
        throw new NotSupportedException("A piece of a profile ends where its points say.");

    internal override Wall WallAt(double x)
    {
        // From the nearer end, so that both ends come out exactly.
        var t = x / LengthMetres;
        return t < 0.5
            ? From(inlet, outlet, inletSlope, outletSlope, t)
            : Mirrored(From(outlet, inlet, -outletSlope, -inletSlope, 1 - t));
    }

    private static Wall Mirrored(Wall wall) => wall with { Slope = -wall.Slope };

    // Hermite's cubic.
    private Wall From(double a, double b, double slope, double farSlope, double t)
    {
        var mean = (b - a) / LengthMetres;
        var square = 3 * mean - 2 * slope - farSlope;
        var cube = slope + farSlope - 2 * mean;
        return new Wall(
            a + LengthMetres * t * (slope + t * (square + t * cube)),
            slope + t * (2 * square + 3 * t * cube),
            (2 * square + 6 * t * cube) / LengthMetres
        );
    }
}
