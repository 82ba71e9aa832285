namespace AirColumn.Tables;

/// <summary>
/// How finely a plane is divided near its edges: elements that shrink towards an edge by a ratio, and in order by one each, meet the
/// fractional powers of the distance there exponentially well (schwab1998).
/// </summary>
/// <param name="Order">Of the polynomials in the longest elements.</param>
/// <param name="Ratio">Of the lengths of neighbouring elements, 0 to 1.</param>
/// <param name="Smallest">About the length of those at an edge. Where it is far smaller than 1e-6, rounding takes over.</param>
internal sealed record Fineness(int Order, double Ratio, double Smallest)
{
    /// <summary>How often a stretch of some length is divided.</summary>
    public int Layers(double length) =>
        Math.Max(1, (int)Math.Ceiling(Math.Log(Smallest / length) / Math.Log(Ratio)));

    /// <summary>The order after so many divisions.</summary>
    public int OrderOf(int layer) => Math.Max(2, Order - layer);
}
