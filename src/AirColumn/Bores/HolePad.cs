using UnitsNet;

namespace AirColumn;

/// <summary>A flat round pad above an open tone hole. Immutable, equal by its dimensions.</summary>
public sealed record HolePad
{
    /// <summary>Makes a pad.</summary>
    /// <param name="height">The distance between the pad and the rim of the open hole: 0.01 mm to 1 km.</param>
    /// <param name="diameter">Its diameter: 0.01 mm to 10 m.</param>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is outside its range or not a number.</exception>
    public HolePad(Length height, Length diameter)
    {
        Require.InRange(height.Millimeters, 0.01, 1e6, "mm", nameof(height));
        HeightMetres = height.Meters;
        Radius = Dimension.RadiusOf(diameter);
    }

    /// <summary>The height of the pad above the rim of the open hole.</summary>
    public Length Height => Dimension.InMillimeters(HeightMetres);

    /// <summary>Its diameter.</summary>
    public Length Diameter => Dimension.InMillimeters(2 * Radius);

    internal double HeightMetres { get; }

    internal double Radius { get; }

    /// <summary>The dimensions, in the invariant culture.</summary>
    /// <returns>The dimensions, as text.</returns>
    public override string ToString() => $"pad {Dimension.Text(Diameter)} {Dimension.Text(Height)} above it";
}
