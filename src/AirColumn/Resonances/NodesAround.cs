using System.Numerics;

namespace AirColumn;

/// <summary>Frequencies around another, and the polynomial through what is smooth there: its value, slope and curvature in the middle.</summary>
internal sealed class NodesAround
{
    private readonly double[] places; // −1 to 1
    private readonly double[][] atZero; // [order][node], of the polynomial in the place

    /// <summary>Chebyshev nodes.</summary>
    /// <param name="count">How many.</param>
    /// <param name="reach">Half their span over the spacing of modes.</param>
    public NodesAround(int count, double reach)
    {
        Reach = reach;
        places = [.. Enumerable.Range(0, count).Select(i => Math.Cos(Math.PI * (i + 0.5) / count))];
        atZero = [new double[count], new double[count], new double[count]];
        for (var i = 0; i < count; i++)
        {
            // The Lagrange polynomial of node i in powers of t, as far as the square.
            var (value, slope, bend, scale) = (1.0, 0.0, 0.0, 1.0);
            for (var j = 0; j < count; j++)
            {
                if (j != i)
                {
                    (value, slope, bend) = (
                        -places[j] * value,
                        value - places[j] * slope,
                        slope - places[j] * bend
                    );
                    scale *= places[i] - places[j];
                }
            }

            (atZero[0][i], atZero[1][i], atZero[2][i]) = (value / scale, slope / scale, 2 * bend / scale);
        }
    }

    /// <summary>The number of items.</summary>
    public int Count => places.Length;

    /// <summary>Half their span over the spacing of modes.</summary>
    public double Reach { get; }

    /// <summary>The frequencies, Hz, around one at half a span.</summary>
    public void Put(double centre, double width, Span<double> hertz)
    {
        for (var i = 0; i < places.Length; i++)
        {
            hertz[i] = centre + width * places[i];
        }
    }

    /// <summary>The derivative of an order, 0 to 2, with the frequency in the middle of values at the nodes; width is half the span, Hz.</summary>
    public Complex Derivative(int order, ReadOnlySpan<Complex> values, double width)
    {
        var sum = Complex.Zero;
        for (var i = 0; i < places.Length; i++)
        {
            sum += atZero[order][i] * values[i];
        }

        return sum / Math.Pow(width, order);
    }
}
