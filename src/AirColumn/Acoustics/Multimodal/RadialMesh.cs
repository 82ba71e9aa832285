using System.Numerics;

namespace AirColumn.Acoustics.Multimodal;

/// <summary>
/// Finite elements along r in the plane of a mouth of radius 1: stiffness ∫p'q'·2πr dr and mass ∫pq·2πr dr of a stretch, put
/// together unknown by unknown.
/// </summary>
/// <remarks>
/// Next to an edge the pressure is a series in powers of d^(1/3) without the first, d the distance from the edge (a wedge of 270° of
/// air): there the elements are polynomials in τ, d = l·τ³, without τ. Far out r is turned into the complex plane, where what goes
/// outwards dies away.
/// </remarks>
internal sealed class RadialMesh
{
    private readonly List<Element> elements = [];

    /// <summary>How many unknowns there are.</summary>
    public int Count { get; private set; }

    /// <summary>An element from an edge to another place, of a number of inner functions; the unknowns at its ends are given.</summary>
    public int FromEdge(double edge, double other, int inner, int atEdge, int atOther)
    {
        var first = Reserve(inner, atEdge, atOther);
        elements.Add(new Element(edge, other - edge, true, inner, atEdge, atOther, first));
        return first;
    }

    /// <summary>An element between two places.</summary>
    public int Between(Complex from, Complex to, int inner, int atFrom, int atTo)
    {
        var first = Reserve(inner, atFrom, atTo);
        elements.Add(new Element(from, to - from, false, inner, atFrom, atTo, first));
        return first;
    }

    /// <summary>A new unknown.</summary>
    public int Place() => Count++;

    /// <summary>The matrices over the unknowns from one on, row-major, from the elements of a range.</summary>
    public (Complex[] Stiffness, Complex[] Mass) Matrices(int firstElement, int lastElement, int from, int to)
    {
        var n = to - from;
        var (stiffness, mass) = (new Complex[n * n], new Complex[n * n]);
        for (var e = firstElement; e <= lastElement; e++)
        {
            elements[e]
                .Integrate(
                    (r, jacobian, weight, value, slope, index) =>
                    {
                        var (k, m) = (
                            2 * Math.PI * weight * r / jacobian,
                            2 * Math.PI * weight * r * jacobian
                        );
                        for (var i = 0; i < index.Length; i++)
                        {
                            for (var j = 0; j < index.Length; j++)
                            {
                                var at = (index[i] - from) * n + index[j] - from;
                                stiffness[at] += k * slope[i] * slope[j];
                                mass[at] += m * value[i] * value[j];
                            }
                        }
                    }
                );
        }

        return (stiffness, mass);
    }

    /// <summary>
    /// One element by itself with its first end elsewhere and moving, over its own unknowns: ∫pq, ∫m·p'q, ∫m²p'q' and ∫p'q', each
    /// times 2πr dr, m what the place of a given τ moves by.
    /// </summary>
    public (int[] Index, Complex[] Mass, Complex[] Drift, Complex[] Stiffness) Moved(
        int element,
        double from,
        double rate
    )
    {
        var old = elements[element];
        var moved = old with { From = from, Extent = old.From + old.Extent - from };
        var n = old.Inner + 2;
        var (mass, drift, stiffness) = (new Complex[n * n], new Complex[n * n], new Complex[n * n]);
        int[] unknowns = [];
        moved.Integrate(
            (r, jacobian, weight, value, slope, index) =>
            {
                unknowns = index;
                var speed = rate * (1 - (r - moved.From) / moved.Extent);
                for (var i = 0; i < n; i++)
                {
                    for (var j = 0; j < n; j++)
                    {
                        var unit = 2 * Math.PI * weight * r;
                        mass[i * n + j] += unit * jacobian * value[i] * value[j];
                        drift[i * n + j] += unit * speed * value[i] * slope[j];
                        stiffness[i * n + j] += unit / jacobian * (1 + speed * speed) * slope[i] * slope[j];
                    }
                }
            }
        );
        return (unknowns, mass, drift, stiffness);
    }

    /// <summary>
    /// The mean over the disc of each of the polynomials that radial modes are made of times each unknown's function; of the first element.
    /// </summary>
    public double[] Projection(int polynomials)
    {
        var result = new double[polynomials * Count];
        var (values, slopes) = (new double[polynomials], new double[polynomials]);
        elements[0]
            .Integrate(
                (r, jacobian, weight, value, _, index) =>
                {
                    RadialBasis.Legendre(r.Real * r.Real, values, slopes);
                    for (var n = 0; n < values.Length; n++)
                    {
                        for (var i = 0; i < index.Length; i++)
                        {
                            result[n * Count + index[i]] +=
                                2 * weight * r.Real * jacobian.Real * values[n] * value[i];
                        }
                    }
                }
            );
        return result;
    }

    private int Reserve(int inner, int atFrom, int atTo)
    {
        if (Math.Max(atFrom, atTo) >= Count)
        {
            throw new InvalidOperationException("An end of an element has no unknown.");
        }

        var first = Count;
        Count += inner;
        return first;
    }

    private delegate void AtPlace(
        Complex r,
        Complex jacobian,
        double weight,
        double[] value,
        double[] slope,
        int[] index
    );

    private sealed record Element(
        Complex From,
        Complex Extent,
        bool IsEdge,
        int Inner,
        int AtFrom,
        int AtTo,
        int FirstInner
    )
    {
        public void Integrate(AtPlace add)
        {
            var (places, weights) = GaussRule.OnUnit(Inner + 8);
            var (value, slope) = (new double[Inner + 2], new double[Inner + 2]);
            int[] index = [.. Enumerable.Range(FirstInner, Inner), AtTo, AtFrom];
            // An element that runs inwards is integrated outwards.
            var sign = Extent.Real < 0 ? -1 : 1;
            for (var g = 0; g < places.Length; g++)
            {
                var t = places[g];
                AxialFunctions.At(t, value, slope);
                if (IsEdge)
                {
                    // Inner ones times τ²; the ends' τ² and 1 − τ².
                    for (var i = 0; i < Inner; i++)
                    {
                        // (1 − τ)·τ·polynomial, by τ.
                        slope[i] = slope[i] * t + value[i];
                        value[i] *= t;
                    }

                    (value[Inner], slope[Inner]) = (t * t, 2 * t);
                    (value[Inner + 1], slope[Inner + 1]) = (1 - t * t, -2 * t);
                }

                var r = From + Extent * (IsEdge ? t * t * t : t);
                var jacobian = sign * Extent * (IsEdge ? 3 * t * t : 1);
                add(r, jacobian, weights[g], value, slope, index);
            }
        }
    }
}
