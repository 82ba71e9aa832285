using MathNet.Numerics.Integration;
using Complex = System.Numerics.Complex;

namespace AirColumn.Tables;

/// <summary>
/// Finite elements along the radius of a plane with rotational symmetry, from the axis outwards: stiffness ∫p'q'·2πr dr and mass
/// ∫pq·2πr dr. The unknowns are the pressures at the ends of the elements and, between these, the shares of integrated Legendre
/// polynomials. Radii may be complex.
/// </summary>
internal sealed class RadialElements
{
    private readonly List<Complex> radii = [0];
    private readonly List<int> orders = [];

    /// <summary>The unknown at the outer end of the last element so far.</summary>
    public int Last => orders.Sum();

    /// <summary>Adds an element from the last one outwards, with polynomials up to an order of at least 1.</summary>
    public void Add(Complex to, int order)
    {
        radii.Add(to);
        orders.Add(order);
    }

    /// <summary>Adds elements up to a radius that shrink towards an edge there.</summary>
    public void AddToEdge(double edge, Fineness fineness)
    {
        var length = edge - radii[^1].Real;
        var layers = fineness.Layers(length);
        for (var layer = 0; layer < layers; layer++)
        {
            Add(edge - length * Math.Pow(fineness.Ratio, layer + 1), fineness.OrderOf(layer));
        }

        Add(edge, fineness.OrderOf(layers));
    }

    /// <summary>Adds elements up to a radius that grow from an edge, which the last one ended at.</summary>
    public void AddFromEdge(double to, Fineness fineness)
    {
        var edge = radii[^1].Real;
        for (var layer = fineness.Layers(to - edge); layer >= 0; layer--)
        {
            Add(edge + (to - edge) * Math.Pow(fineness.Ratio, layer), fineness.OrderOf(layer));
        }
    }

    /// <summary>Stiffness and mass over the unknowns from one end of an element to another.</summary>
    public (BandMatrix Stiffness, BandMatrix Mass) Matrices(int from, int to)
    {
        var stiffness = new BandMatrix(to - from + 1, orders.Max());
        var mass = new BandMatrix(to - from + 1, orders.Max());
        for (var (element, first) = (0, 0); first < to; first += orders[element++])
        {
            if (first >= from)
            {
                Integrate(radii[element], radii[element + 1], orders[element], first - from, stiffness, mass);
            }
        }

        return (stiffness, mass);
    }

    private static void Integrate(
        Complex from,
        Complex to,
        int order,
        int first,
        BandMatrix stiffness,
        BandMatrix mass
    )
    {
        var rule = new GaussLegendreRule(0, 1, order + 2);
        var (value, slope) = (new double[order + 1], new double[order + 1]);
        var length = to - from;
        for (var g = 0; g < rule.Order; g++)
        {
            var t = rule.GetAbscissa(g);
            Functions(t, value, slope);
            var ring = 2 * Math.PI * rule.GetWeight(g) * (from + t * length);
            for (var i = 0; i <= order; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    stiffness.Add(first + i, first + j, ring / length * (slope[i] * slope[j]));
                    mass.Add(first + i, first + j, ring * length * (value[i] * value[j]));
                }
            }
        }
    }

    // 1 − t first, t last; between them (P(k+2) − P(k))/√(4k + 6), which vanish at both ends.
    private static void Functions(double t, double[] value, double[] slope)
    {
        (value[0], slope[0], value[^1], slope[^1]) = (1 - t, -1, t, 1);
        var x = 2 * t - 1;
        var (before, p) = (1.0, x);
        for (var k = 0; k < value.Length - 2; k++)
        {
            var next = ((2 * k + 3) * x * p - (k + 1) * before) / (k + 2);
            var norm = Math.Sqrt(4 * k + 6);
            (value[k + 1], slope[k + 1]) = ((next - before) / norm, 2 * (2 * k + 3) * p / norm);
            (before, p) = (p, next);
        }
    }
}
