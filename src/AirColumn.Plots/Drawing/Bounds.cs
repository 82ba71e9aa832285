using ScottPlot;

namespace AirColumn.Plots.Drawing;

/// <summary>A rectangle on a page, y downwards, CSS pixels.</summary>
internal readonly record struct Bounds(float Left, float Top, float Right, float Bottom)
{
    public float Width => Right - Left;

    public float Height => Bottom - Top;

    public PixelRect Pixels => new(Left, Right, Bottom, Top);

    /// <summary>The same, never turned inside out on a page too small for what is around it.</summary>
    public Bounds AtLeast(float side) =>
        this with
        {
            Right = Math.Max(Right, Left + side),
            Bottom = Math.Max(Bottom, Top + side),
        };
}
